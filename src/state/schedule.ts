/**
 * The schedule of a connector as it is now, for every screen that shows it: worked out in slices, once for all of them,
 * again when the connector or one of its lines changes. The last one stays until the next is there.
 */
import { type ReadonlySignal, signal } from '@preact/signals'
import { type GroupAnswer, type GroupProgress, groupOf } from '../calc/connector/group.ts'
import { type Schedule, scheduleOf } from '../calc/connector/schedule.ts'
import type { Connector } from '../calc/connector/types.ts'
import { numbersIn } from '../calc/line/fields.ts'
import type { Line, Progress } from '../calc/types.ts'
import { inSlices } from './in-slices.ts'
import { withCalculator } from './with-calculator.ts'

/** `shown`: what there is to read, of an older state of things while `working`; with `isAlone` before the contacts met in the bond. */
export type ScheduleState = {
  readonly is: 'working' | 'done' | 'stopped' | 'broken'
  readonly doneFrac: number
  readonly shown?: Schedule
  readonly isAlone: boolean
}

export type ScheduleRun = {
  readonly state: ReadonlySignal<ScheduleState>
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

function createRun(): ScheduleRun {
  const state = signal<ScheduleState>({ is: 'working', doneFrac: 0, isAlone: true })
  let away: AbortController | undefined
  let wanted: Wanted | undefined
  const show = (until: AbortSignal, next: Partial<ScheduleState>) => {
    if (!until.aborted) state.value = { ...state.peek(), ...next }
  }
  const start = (asked: Wanted, until: AbortSignal) => {
    show(until, { is: 'working', doneFrac: 0 })
    const work = withCalculator((express) =>
      inSlices(
        watched(scheduleOf(asked.connector, asked.lines, express), ({ alone }) => {
          if (alone !== undefined && state.peek().shown === undefined) show(until, { shown: alone, isAlone: true })
        }),
        ({ doneFrac }) => show(until, { doneFrac }),
        until,
      ),
    )
    work.then(
      (shown) => show(until, { is: 'done', doneFrac: 1, shown, isAlone: false }),
      () => show(until, { is: 'broken' }),
    )
  }
  return {
    state,
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

function* watched<P extends Progress, R>(running: Generator<P, R>, onStep: (step: P) => void): Generator<P, R> {
  for (;;) {
    const step = running.next()
    if (step.done) return step.value
    onStep(step.value)
    yield step.value
  }
}

export type GroupState =
  | { readonly is: 'idle' | 'stopped' | 'broken' }
  | { readonly is: 'working'; readonly at: GroupProgress }
  | { readonly is: 'done'; readonly answer: GroupAnswer; readonly of: Schedule }

export type GroupRun = {
  readonly state: ReadonlySignal<GroupState>
  readonly start: (schedule: Schedule, connector: Connector) => void
  readonly stop: () => void
}

/** Ratio of values in one plane where the maker has stated none: one value a plane. */
const UNSTATED_RATIO = 1
const MOST_PARTS = 12

/** What a connector's texts say of grouping, read. */
export function groupingAsked({ texts }: Pick<Connector, 'texts'>): {
  readonly ratio: number
  readonly mostParts: number
} {
  const [ratio] = numbersIn(texts.valueRatio ?? '', 'number')
  const [most] = numbersIn(texts.mostParts ?? '', 'number')
  return {
    ratio: ratio !== undefined && ratio >= 1 ? ratio : UNSTATED_RATIO,
    mostParts: most !== undefined && most >= 1 ? Math.min(MOST_PARTS, Math.floor(most)) : MOST_PARTS,
  }
}

/** Grouping is asked for, and may take long: it starts at a tap and can be left at any time. */
export function createGroupRun(): GroupRun {
  const state = signal<GroupState>({ is: 'idle' })
  let away: AbortController | undefined
  return {
    state,
    start: (schedule, connector) => {
      away?.abort()
      away = new AbortController()
      const { signal: until } = away
      const show = (next: GroupState) => {
        if (!until.aborted) state.value = next
      }
      let at: GroupProgress = { of: 'windows' }
      show({ is: 'working', at })
      const { ratio, mostParts } = groupingAsked(connector)
      const told = function* (): Generator<Progress, GroupAnswer> {
        const running = groupOf(schedule.asked, ratio, mostParts)
        for (;;) {
          const step = running.next()
          if (step.done) return step.value
          at = step.value
          yield { doneFrac: 0 }
        }
      }
      inSlices(told(), () => show({ is: 'working', at }), until).then(
        (answer) => show({ is: 'done', answer, of: schedule }),
        () => show({ is: 'broken' }),
      )
    },
    stop: () => {
      away?.abort()
      state.value = { is: 'stopped' }
    },
  }
}
