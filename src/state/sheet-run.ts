/** Works a connector's sheet out while its screen stays alive: the schedule first, then what it rests on. */
import { scheduleOf } from '../calc/connector/schedule.ts'
import { type SheetBody, sheetBody } from '../calc/connector/sheet/body.ts'
import type { Connector } from '../calc/connector/types.ts'
import { wholeOf } from '../calc/connector/whole/whole.ts'
import type { Express } from '../calc/line/fields.ts'
import { within } from '../calc/surge/progress.ts'
import type { Line, Progress } from '../calc/types.ts'
import { createSteppedRun } from './stepped-run.ts'

/** Where in its time the schedule is done, and the whole connector; the windows in words and the surges take the rest. */
const SCHEDULE_FRAC = 0.3
const WHOLE_FRAC = 0.5

/** A whole sheet, in steps. */
export function* sheetSteps(
  express: Express,
  connector: Connector,
  lines: readonly Line[],
): Generator<Progress, SheetBody> {
  const schedule = yield* within(scheduleOf(connector, lines, express), 0, SCHEDULE_FRAC)
  const decided = schedule.rows.map((row) => row.decided)
  const whole = yield* within(wholeOf(connector, decided, express), SCHEDULE_FRAC, WHOLE_FRAC)
  return yield* within(sheetBody({ connector, schedule, findings: whole.findings, express }), WHOLE_FRAC, 1)
}

export const createSheetRun = () => createSteppedRun(sheetSteps)
export type SheetRun = ReturnType<typeof createSheetRun>
