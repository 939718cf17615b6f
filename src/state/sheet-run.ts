/** Works a connector's sheet out while its screen stays alive: the schedule first, then what it rests on. */
import { type ReadonlySignal, signal } from '@preact/signals'
import { scheduleOf } from '../calc/connector/schedule.ts'
import { type SheetBody, sheetBody } from '../calc/connector/sheet/body.ts'
import type { Connector } from '../calc/connector/types.ts'
import { wholeOf } from '../calc/connector/whole/whole.ts'
import type { Express } from '../calc/line/fields.ts'
import { within } from '../calc/surge/progress.ts'
import type { Line, Progress } from '../calc/types.ts'
import { inSlices } from './in-slices.ts'
import { withCalculator } from './with-calculator.ts'

export type SheetState =
  | { readonly is: 'working'; readonly doneFrac: number }
  | { readonly is: 'done'; readonly body: SheetBody }
  | { readonly is: 'stopped' }
  | { readonly is: 'broken' }

export type SheetRun = {
  readonly state: ReadonlySignal<SheetState>
  /** begins anew; what was under way is left */
  readonly start: (connector: Connector, lines: readonly Line[]) => void
  readonly stop: () => void
}

/** Where in its time the schedule is done, and the whole connector; the windows in words and the surges take the rest. */
const SCHEDULE_FRAC = 0.3
const WHOLE_FRAC = 0.5

/** A whole sheet, in steps. */
export function* sheetSteps(
  connector: Connector,
  lines: readonly Line[],
  express: Express,
): Generator<Progress, SheetBody> {
  const schedule = yield* within(scheduleOf(connector, lines, express), 0, SCHEDULE_FRAC)
  const decided = schedule.rows.map((row) => row.decided)
  const whole = yield* within(wholeOf(connector, decided, express), SCHEDULE_FRAC, WHOLE_FRAC)
  return yield* within(sheetBody({ connector, schedule, findings: whole.findings, express }), WHOLE_FRAC, 1)
}

export function createSheetRun(): SheetRun {
  const state = signal<SheetState>({ is: 'working', doneFrac: 0 })
  let away: AbortController | undefined
  const work = (connector: Connector, lines: readonly Line[], until: AbortSignal): Promise<SheetBody> =>
    withCalculator((express) =>
      inSlices(sheetSteps(connector, lines, express), (progress) => show(until, { is: 'working', ...progress }), until),
    )
  const show = (until: AbortSignal, next: SheetState) => {
    if (!until.aborted) state.value = next
  }
  return {
    state,
    start: (connector, lines) => {
      away?.abort()
      away = new AbortController()
      const { signal: until } = away
      state.value = { is: 'working', doneFrac: 0 }
      work(connector, lines, until).then(
        (body) => show(until, { is: 'done', body }),
        () => show(until, { is: 'broken' }),
      )
    },
    stop: () => {
      away?.abort()
      state.value = { is: 'stopped' }
    },
  }
}
