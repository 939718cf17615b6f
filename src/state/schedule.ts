/**
 * The schedule of a connector as it is now, for every screen that shows it: worked out in the worker, once for all of
 * them, again when the connector or one of its lines changes. The last one stays until the next is there.
 */
import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { Schedule } from '../calc/connector/schedule.ts'
import { createReceiver } from '../calc/connector/sent.ts'
import type { Connector } from '../calc/connector/types.ts'
import type { Line } from '../calc/types.ts'
import type { Calculation } from '../worker/schedule.ts'
import { nextTurn } from './next-turn.ts'
import { runInWorker } from './work.ts'

/**
 * `shown`: what there is to read, of an older state of things while `working`; with `isAlone` before the contacts met in
 * the bond, when there is nothing to group yet.
 */
export type ScheduleState = {
  readonly is: 'working' | 'done' | 'stopped' | 'broken'
  readonly doneFrac: number
  readonly shown?: Schedule
  readonly isAlone: boolean
}

export type ScheduleRun = {
  readonly state: ReadonlySignal<ScheduleState>
  /** what there is to read, for who does not follow how far it is */
  readonly shown: ReadonlySignal<Schedule | undefined>
  /** what it is asked of; the same again costs nothing */
  readonly want: (connector: Connector, lines: readonly Line[]) => void
  readonly stop: () => void
}

const runs = new Map<string, ScheduleRun>()

/** The schedule of a connector, shared by all screens of it. */
export function scheduleRun(connectorId: string): ScheduleRun {
  const run = runs.get(connectorId) ?? createRun()
  runs.set(connectorId, run)
  return run
}

type Wanted = { readonly connector: Connector; readonly lines: readonly Line[] }

/** Whether two questions are the same: the connector, and the lines its contacts carry. */
function isSame(one: Wanted | undefined, other: Wanted): boolean {
  if (one === undefined || one.connector !== other.connector) return false
  return one.lines.length === other.lines.length && one.lines.every((line, i) => line === other.lines[i])
}

const carried = ({ contacts }: Connector, lines: readonly Line[]): readonly Line[] => {
  const ids = new Set(contacts.map(({ lineId }) => lineId))
  return lines.filter(({ id }) => ids.has(id))
}

/** Calculations that were typed into lines or connectors, read here because the calculator is: few, and kept. */
const calculations = new Map<string, Calculation>()

async function readingsNow() {
  if (calculations.size === 0) return []
  const { expressionReading, openCalculator } = await import('./expression.ts')
  await openCalculator()
  return [...calculations.values()].flatMap((one) => {
    const reading = expressionReading(one.text, one.quantity)
    return reading === undefined ? [] : [{ ...one, reading }]
  })
}

/** Notes what could not be read; whether there was anything new in it. */
function noteUnread(unread: readonly Calculation[]): boolean {
  const before = calculations.size
  for (const one of unread) calculations.set(`${one.quantity} ${one.text}`, one)
  return calculations.size > before
}

type Step = { readonly doneFrac: number; readonly alone?: Schedule }

/** As soon as they are there: every contact by itself, then the schedule. */
async function worked({ connector, lines }: Wanted, show: (step: Step) => void, until: AbortSignal): Promise<Schedule> {
  for (;;) {
    const receiver = createReceiver(connector, lines)
    let drawn = Promise.resolve()
    const { rest, unread } = await runInWorker(
      { is: 'schedule', input: { connector, lines, readings: await readingsNow() } },
      ({ doneFrac, found }) => {
        if (found?.is === 'asked') return receiver.take(found)
        if (found?.is === 'alone') {
          const alone = receiver.alone(found)
          // taken up in this turn, drawn in the next: neither takes as long as both
          drawn = nextTurn().then(() => show({ doneFrac, alone }))
          return
        }
        show({ doneFrac })
      },
      until,
    )
    await drawn
    if (!noteUnread(unread)) return receiver.end(rest)
  }
}

function createRun(): ScheduleRun {
  const state = signal<ScheduleState>({ is: 'working', doneFrac: 0, isAlone: true })
  let away: AbortController | undefined
  let wanted: Wanted | undefined
  const start = (asked: Wanted, until: AbortSignal) => {
    const show = (next: Partial<ScheduleState>) => {
      if (!until.aborted) state.value = { ...state.peek(), ...next }
    }
    show({ is: 'working', doneFrac: 0 })
    const onStep = ({ doneFrac, alone }: Step) => {
      // what was worked out before with all in the bond says more than every contact alone
      const isNews = alone !== undefined && state.peek().isAlone
      show({ doneFrac, ...(isNews ? { shown: alone } : {}) })
    }
    worked(asked, onStep, until).then(
      (shown) => show({ is: 'done', doneFrac: 1, shown, isAlone: false }),
      () => show({ is: 'broken' }),
    )
  }
  return {
    state,
    shown: computed(() => state.value.shown),
    want: (connector, lines) => {
      const asked = { connector, lines: carried(connector, lines) }
      const { is } = state.peek()
      if (isSame(wanted, asked) && is !== 'stopped' && is !== 'broken') return
      wanted = asked
      away?.abort()
      away = new AbortController()
      start(asked, away.signal)
    },
    stop: () => {
      away?.abort()
      state.value = { ...state.peek(), is: 'stopped' }
    },
  }
}
