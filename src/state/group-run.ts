/** Few parts instead of many, for a schedule that is done: looked for in slices when it is asked for. */
import { type ReadonlySignal, signal } from '@preact/signals'
import { type GroupAnswer, type GroupProgress, groupOf } from '../calc/connector/group.ts'
import type { Schedule } from '../calc/connector/schedule.ts'
import type { Connector } from '../calc/connector/types.ts'
import { numbersIn } from '../calc/line/fields.ts'
import type { Progress } from '../calc/types.ts'
import { inSlices } from './in-slices.ts'

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
