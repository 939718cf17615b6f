/** Works a connector's sheet out while its screen stays alive, from the schedule that is done. */
import { classCounts, withClass } from '../calc/connector/class-words.ts'
import type { DecidedContact } from '../calc/connector/decided.ts'
import type { ConnectorFinding } from '../calc/connector/finding.ts'
import type { Schedule } from '../calc/connector/schedule.ts'
import { type SheetBody, sheetBody } from '../calc/connector/sheet/body.ts'
import { sheetRow } from '../calc/connector/sheet/rows.ts'
import type { Connector } from '../calc/connector/types.ts'
import { wholeOfRows, worstFirst } from '../calc/connector/whole/whole.ts'
import type { Express } from '../calc/line/fields.ts'
import { within } from '../calc/surge/progress.ts'
import type { Progress } from '../calc/types.ts'
import type { ClassState } from './class-run.ts'
import { expressionReading } from './expression.ts'
import { createSteppedRun } from './stepped-run.ts'
import type { StrikeState } from './whole-run.ts'

/** Where in its time the whole connector is done; the windows in words and the surges take the rest. */
const WHOLE_FRAC = 0.3

export type SheetFound = {
  readonly body: SheetBody
  readonly decided: readonly DecidedContact[]
  readonly schedule: Schedule
}

/** A whole sheet, in steps; without the strike of all contacts together, which is worked out elsewhere. */
export function* sheetSteps(
  express: Express,
  connector: Connector,
  schedule: Schedule,
): Generator<Progress, SheetFound> {
  const decided = schedule.rows.map((row) => row.decided)
  const whole = yield* within(wholeOfRows(connector, schedule.rows, express), 0, WHOLE_FRAC)
  const asked = { connector, schedule, findings: whole.findings, express }
  return { decided, schedule, body: yield* within(sheetBody(asked), WHOLE_FRAC, 1) }
}

export const createSheetRun = () => createSteppedRun(sheetSteps)

/** The sheet with what the strike of all contacts together came to, or why it says nothing of it. */
export function withStrike(body: SheetBody, strike: StrikeState): SheetBody {
  if (strike.is === 'done') return { ...body, findings: worstFirst([...body.findings, ...strike.findings]) }
  const said: ConnectorFinding = { id: 'strike-not-there', sentence: NOT_STRUCK[strike.is], contacts: [] }
  return { ...body, findings: [...body.findings, said] }
}

/** The sheet with the power class of each suppressor it proposes and how many of each, or why it has none. */
export function withClasses(body: SheetBody, { rows }: Schedule, classes: ClassState): SheetBody {
  if (!rows.some(({ suppressor }) => suppressor?.class !== undefined)) return body
  if (classes.is !== 'done') {
    const said: ConnectorFinding = { id: 'classes-not-there', sentence: NOT_CLASSED[classes.is], contacts: [] }
    return { ...body, findings: [...body.findings, said] }
  }
  const classed = rows.map((row) => withClass(row, classes.said.get(row.contact.id)))
  const counts = classCounts(classed)
  return {
    ...body,
    rows: classed.map((row) => sheetRow(row, expressionReading)),
    findings: [...body.findings, ...(counts === undefined ? [] : [counts])],
  }
}

const NOT_CLASSED: Readonly<Record<Exclude<ClassState['is'], 'done'>, string>> = {
  idle: 'Power classes of the suppressors: not worked out when this sheet was made.',
  working: 'Power classes of the suppressors: still being worked out when this sheet was made.',
  stopped: 'Power classes of the suppressors: not worked out, it was stopped.',
  broken: 'Power classes of the suppressors: could not be worked out. That is a fault of the app, not of the inputs.',
}

const NOT_STRUCK: Readonly<Record<Exclude<StrikeState['is'], 'done'>, string>> = {
  idle: 'All contacts struck together: not asked, no waveform was chosen for the connector.',
  missing: 'All contacts struck together: not computed, facts of the strike are missing.',
  working: 'All contacts struck together: still being worked out when this sheet was made.',
  stopped: 'All contacts struck together: not computed, it was stopped.',
  broken: 'All contacts struck together: could not be computed. That is a fault of the app, not of the inputs.',
}
