/**
 * Fewest distinct parts for a whole connector: every contact takes one of its options (a topology with the window of one
 * capacitor), contacts that share topology and value share a part.
 *
 * One topology: intervals on a line, stabbed from the left; exact (greedy, textbook). Several: smallest cover of the
 * contacts by parts, branch and bound; the lower bound counts contacts of which no two share a part. Both exact.
 * Farads > 0. Source: derived; held against brute force.
 */
import type { Topology } from '../terms.ts'

/** What one contact could carry: values from least to most of one topology, as marked. */
export type ContactOption = { readonly topology: Topology; readonly leastF: number; readonly mostF: number }

export type ContactChoice = { readonly id: string; readonly options: readonly ContactOption[] }

export type GroupPart = { readonly topology: Topology; readonly valueF: number }

export type Grouping = {
  readonly parts: readonly GroupPart[]
  /** place in `parts` of each contact; −1 where no value of the series fits any option */
  readonly partOf: readonly number[]
  /** least over the contacts of the distance to the nearer end of its window, as a ratio ≥ 1 */
  readonly leastMarginRatio: number
  /** no grouping has fewer parts than this; equal to the number of parts when proved */
  readonly lowerBound: number
}

export type GroupingProgress = { readonly tried: number; readonly best: number; readonly lowerBound: number }

/** Distance of a value to the nearer end of its window, as a ratio; below 1 outside. Both ends count alike. */
export const marginRatio = (valueF: number, { leastF, mostF }: ContactOption): number =>
  Math.min(leastF > 0 ? valueF / leastF : Number.POSITIVE_INFINITY, mostF / valueF)

/** A little slack for windows whose end is a preferred value. */
const EVEN = 1 + 1e-9

type Candidate = GroupPart & { readonly covers: readonly number[] }

/** Parts that fit at least one contact with this margin, each with the contacts it fits; none that another one beats. */
function candidatesOf(
  contacts: readonly ContactChoice[],
  valuesF: readonly number[],
  ratio: number,
): readonly Candidate[] {
  const byPart = new Map<string, { part: GroupPart; covers: number[] }>()
  contacts.forEach(({ options }, contact) => {
    for (const option of options) {
      for (const valueF of valuesF) {
        if (marginRatio(valueF, option) * EVEN < ratio) continue
        const key = `${option.topology} ${valueF}`
        const found = byPart.get(key) ?? { part: { topology: option.topology, valueF }, covers: [] }
        if (found.covers.at(-1) !== contact) found.covers.push(contact)
        byPart.set(key, found)
      }
    }
  })
  const all = [...byPart.values()].sort((a, b) => b.covers.length - a.covers.length)
  const kept: { part: GroupPart; covers: number[]; set: Set<number> }[] = []
  for (const one of all) {
    if (kept.some(({ set }) => one.covers.every((contact) => set.has(contact)) && set.size > one.covers.length))
      continue
    kept.push({ ...one, set: new Set(one.covers) })
  }
  return kept.map(({ part, covers }) => ({ ...part, covers }))
}

/** Contacts of which no two can share a part: as many parts are needed at least. Greedy, rarest first. */
function apartBound(open: readonly number[], partsOf: readonly (readonly number[])[]): number {
  const taken = new Set<number>()
  let count = 0
  for (const contact of [...open].sort((a, b) => (partsOf[a]?.length ?? 0) - (partsOf[b]?.length ?? 0))) {
    const parts = partsOf[contact] as readonly number[]
    if (parts.some((part) => taken.has(part))) continue
    for (const part of parts) taken.add(part)
    count += 1
  }
  return count
}

/**
 * The fewest parts that fit every contact with at least `ratio` to both ends of its window; a generator that tells how
 * far it is and may be left at any time. Contacts that no value fits are left out (partOf −1).
 */
export function* fewestParts(
  contacts: readonly ContactChoice[],
  valuesF: readonly number[],
  ratio = 1,
  atMost = Number.POSITIVE_INFINITY,
): Generator<GroupingProgress, Grouping | undefined> {
  const candidates = candidatesOf(contacts, valuesF, ratio)
  const partsOf: number[][] = contacts.map(() => [])
  candidates.forEach(({ covers }, part) => {
    for (const contact of covers) (partsOf[contact] as number[]).push(part)
  })
  const all = contacts.map((_, i) => i).filter((contact) => (partsOf[contact] as number[]).length > 0)
  const rootBound = apartBound(all, partsOf)
  let best: readonly number[] | undefined = greedy(all, candidates)
  if (best.length > atMost) best = undefined
  let tried = 0
  const stack: { chosen: readonly number[]; open: readonly number[] }[] = [{ chosen: [], open: all }]
  while (stack.length > 0 && (best === undefined || best.length > rootBound)) {
    const { chosen, open } = stack.pop() as { chosen: readonly number[]; open: readonly number[] }
    const limit = Math.min(best?.length ?? Number.POSITIVE_INFINITY, atMost + 1)
    if (open.length === 0) {
      if (chosen.length < limit) best = chosen
      continue
    }
    if (chosen.length + apartBound(open, partsOf) >= limit) continue
    const rarest = open.reduce((a, b) => ((partsOf[b] as number[]).length < (partsOf[a] as number[]).length ? b : a))
    const next = [...(partsOf[rarest] as number[])].sort(
      (a, b) => gain(candidates, a, open) - gain(candidates, b, open),
    )
    // the widest is taken from the stack first
    for (const part of next) {
      const covers = new Set((candidates[part] as Candidate).covers)
      stack.push({ chosen: [...chosen, part], open: open.filter((contact) => !covers.has(contact)) })
    }
    tried += 1
    if (tried % 64 === 0) yield { tried, best: best?.length ?? 0, lowerBound: rootBound }
  }
  if (!best) return undefined
  return finished(
    contacts,
    best.map((part) => candidates[part] as Candidate),
    rootBound,
    stack.length === 0,
  )
}

const gain = (candidates: readonly Candidate[], part: number, open: readonly number[]): number => {
  const covers = new Set((candidates[part] as Candidate).covers)
  return open.reduce((count, contact) => count + (covers.has(contact) ? 1 : 0), 0)
}

function greedy(all: readonly number[], candidates: readonly Candidate[]): readonly number[] {
  const chosen: number[] = []
  let open = all
  while (open.length > 0) {
    let widest = 0
    for (let part = 1; part < candidates.length; part++)
      if (gain(candidates, part, open) > gain(candidates, widest, open)) widest = part
    chosen.push(widest)
    const covers = new Set((candidates[widest] as Candidate).covers)
    open = open.filter((contact) => !covers.has(contact))
  }
  return chosen
}

/** Every contact takes the part that leaves it the most margin. */
function finished(
  contacts: readonly ContactChoice[],
  parts: readonly GroupPart[],
  rootBound: number,
  searchedAll: boolean,
): Grouping {
  let leastMarginRatio = Number.POSITIVE_INFINITY
  const partOf = contacts.map(({ options }) => {
    let chosen = -1
    let most = 0
    parts.forEach((part, i) => {
      for (const option of options) {
        if (option.topology !== part.topology) continue
        const ratio = marginRatio(part.valueF, option)
        if (ratio * EVEN >= 1 && ratio > most) {
          most = ratio
          chosen = i
        }
      }
    })
    if (chosen >= 0) leastMarginRatio = Math.min(leastMarginRatio, most)
    return chosen
  })
  return {
    parts: parts.map(({ topology, valueF }) => ({ topology, valueF })),
    partOf,
    leastMarginRatio,
    lowerBound: searchedAll ? parts.length : Math.min(rootBound, parts.length),
  }
}

export type CurvePoint = { readonly parts: number; readonly leastMarginRatio: number; readonly grouping: Grouping }

/**
 * "Number of values against least margin": for each number of parts from the fewest on, the grouping with the largest
 * least margin, until more parts bring nothing. The margins that can occur are those of single values: searched by halving.
 */
export function* marginCurve(
  contacts: readonly ContactChoice[],
  valuesF: readonly number[],
  mostParts = 12,
): Generator<GroupingProgress, readonly CurvePoint[]> {
  const fewest = yield* fewestParts(contacts, valuesF)
  if (!fewest || fewest.parts.length === 0) return []
  const ratios = marginsOf(contacts, valuesF)
  const points: CurvePoint[] = []
  const served = contacts.filter((_, i) => (fewest.partOf[i] ?? -1) >= 0)
  for (let parts = fewest.parts.length; parts <= Math.min(mostParts, served.length); parts++) {
    let [low, high] = [0, ratios.length - 1]
    let best = fewest
    while (low <= high) {
      const middle = (low + high) >> 1
      const ratio = ratios[middle] as number
      const found = yield* fewestParts(served, valuesF, ratio, parts)
      // a contact that no value fits with this margin is left out of the search, and fitted with less
      if (found?.partOf.every((part) => part >= 0) && found.leastMarginRatio * EVEN >= ratio) {
        best = { ...found, partOf: spreadOver(fewest.partOf, found.partOf) }
        low = middle + 1
      } else high = middle - 1
    }
    const last = points.at(-1)
    if (last && best.leastMarginRatio <= last.leastMarginRatio * EVEN) continue
    points.push({ parts: best.parts.length, leastMarginRatio: best.leastMarginRatio, grouping: best })
  }
  return points
}

/** Places of the served contacts among all. */
function spreadOver(all: readonly number[], served: readonly number[]): readonly number[] {
  let next = 0
  return all.map((part) => (part >= 0 ? (served[next++] as number) : -1))
}

/** Every margin a contact can have with a value of the series, ascending, from 1 on. */
function marginsOf(contacts: readonly ContactChoice[], valuesF: readonly number[]): readonly number[] {
  const found = new Set<number>([1])
  for (const { options } of contacts)
    for (const option of options)
      for (const valueF of valuesF) {
        const ratio = marginRatio(valueF, option)
        if (ratio >= 1 && Number.isFinite(ratio)) found.add(ratio)
      }
  return [...found].sort((a, b) => a - b)
}

/** Planes that ceramics of these values need when one plane holds values within `ratio`; a Pi needs every plane twice. */
export function planeCount(parts: readonly GroupPart[], ratio: number): number {
  let planes = 0
  for (const isPi of [false, true]) {
    const values = parts.filter(({ topology }) => (topology === 'PI') === isPi).map(({ valueF }) => valueF)
    let startF: number | undefined
    for (const valueF of values.sort((a, b) => a - b)) {
      if (startF !== undefined && valueF <= startF * ratio * EVEN) continue
      startF = valueF
      planes += isPi ? 2 : 1
    }
  }
  return planes
}
