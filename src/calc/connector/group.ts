/**
 * The parts of a whole connector brought down to few: the curve of number of values against least margin, the fewest
 * topologies, the fewest ceramics, and what each contact gives up for it. Works on the windows of the contacts; what
 * was chosen, or moved by the shared bond, stays as it is.
 */
import { marginAtMark } from '../checks/window/row.ts'
import type { Topology } from '../types.ts'
import type { Asked } from './contact-row.ts'
import { type Grouped, groupedOf, groupValues } from './group-options.ts'
import {
  type CurvePoint,
  fewestParts,
  type Grouping,
  type GroupingProgress,
  marginCurve,
  marginRatio,
} from './grouping.ts'
import { fewestPlanes, type PlanePlan } from './planes.ts'

/** What a contact gives up when it takes the part of its group. */
export type Merge = {
  readonly id: string
  readonly from: { readonly topology: Topology; readonly valueF: number }
  readonly to: { readonly topology: Topology; readonly valueF: number }
  /** of its attenuation at its worst need; below 0 = gained; undefined where no need is known */
  readonly lostDb: number | undefined
  /** distance to the nearer end of its window, as a ratio ≥ 1, before and after */
  readonly fromRatio: number
  readonly toRatio: number
}

export type GroupAnswer = {
  readonly contacts: readonly Grouped[]
  readonly curve: readonly CurvePoint[]
  /** the fewest values in the fewest topologies */
  readonly byTopology: Grouping | undefined
  readonly planes: PlanePlan
  /** ratio of values in one ceramic that was used */
  readonly planeRatio: number
}

export type GroupProgress = { readonly of: 'windows' | 'values' | 'topologies' | 'planes' } & Partial<GroupingProgress>

/** More values than this are no grouping any more. */
const MOST_PARTS = 12

export function* groupOf(
  asked: readonly Asked[],
  planeRatio: number,
  mostParts: number = MOST_PARTS,
): Generator<GroupProgress, GroupAnswer> {
  const contacts = yield* told('windows', groupedOf(asked))
  const valuesF = groupValues(contacts)
  const curve = yield* told('values', marginCurve(contacts, valuesF, mostParts))
  const byTopology = yield* told('topologies', fewestTopologies(contacts, valuesF))
  const planes = yield* told('planes', fewestPlanes(contacts, valuesF, planeRatio))
  return { contacts, curve, byTopology, planes, planeRatio }
}

function* told<R>(
  of: GroupProgress['of'],
  running: Generator<GroupingProgress | undefined, R>,
): Generator<GroupProgress, R> {
  let step = running.next()
  while (!step.done) {
    yield { of, ...step.value }
    step = running.next()
  }
  return step.value
}

/** The fewest values with as few topologies as can serve every contact: every set of topologies, smallest first. */
export function* fewestTopologies(
  contacts: readonly Pick<Grouped, 'id' | 'options'>[],
  valuesF: readonly number[],
): Generator<GroupingProgress, Grouping | undefined> {
  const all = [...new Set(contacts.flatMap(({ options }) => options.map(({ topology }) => topology)))]
  const served = (grouping: Grouping | undefined) => grouping?.partOf.filter((part) => part >= 0).length ?? 0
  const free = yield* fewestParts(contacts, valuesF)
  const most = served(free)
  for (let size = 1; size < all.length; size++) {
    let best: Grouping | undefined
    for (const set of setsOf(all, size)) {
      const restricted = contacts.map(({ id, options }) => ({
        id,
        options: options.filter(({ topology }) => set.includes(topology)),
      }))
      const found = yield* fewestParts(restricted, valuesF)
      if (served(found) === most && (best === undefined || (found?.parts.length ?? 0) < best.parts.length)) best = found
    }
    if (best !== undefined) return best
  }
  return free
}

function setsOf<T>(all: readonly T[], size: number): readonly (readonly T[])[] {
  if (size === 0) return [[]]
  return all.flatMap((one, i) => setsOf(all.slice(i + 1), size - 1).map((rest) => [one, ...rest]))
}

/** What each contact gives up under a grouping, those that change first, the dearest of them first. */
export function mergesOf(contacts: readonly Grouped[], { parts, partOf }: Grouping): readonly Merge[] {
  const merges = contacts.flatMap((contact, i): readonly Merge[] => {
    const to = parts[partOf[i] ?? -1]
    if (to === undefined) return []
    const { id, open, topology, valueF } = contact
    const from = { topology, valueF }
    const [before, after] = [from, to].map((part) => marginAtMark(part.topology, open.setup, part.valueF)?.db)
    return [
      {
        id,
        from,
        to,
        lostDb: before === undefined || after === undefined ? undefined : before - after,
        fromRatio: ratioOf(contact, from),
        toRatio: ratioOf(contact, to),
      },
    ]
  })
  const isMoved = ({ from, to }: Merge) => from.valueF !== to.valueF || from.topology !== to.topology
  return merges.sort(
    (a, b) => Number(isMoved(b)) - Number(isMoved(a)) || (b.lostDb ?? 0) - (a.lostDb ?? 0) || a.toRatio - b.toRatio,
  )
}

const ratioOf = ({ options }: Grouped, part: { readonly topology: Topology; readonly valueF: number }): number =>
  Math.max(
    0,
    ...options.filter(({ topology }) => topology === part.topology).map((option) => marginRatio(part.valueF, option)),
  )
