/**
 * Fewest distinct parts for a whole connector: every contact takes one of its options (a topology with the window of one
 * capacitor), contacts that share topology and value share a part.
 *
 * Smallest cover of the contacts by parts (cover.ts); with one topology the parts stab intervals on a line and the lower
 * bound meets the greedy cover at once. Exact for both.
 * Farads > 0. Source: derived; held against brute force.
 */
import type { Topology } from '../terms.ts'
import { type Candidate, type CoverProgress, leastCover } from './cover.ts'

/** What one contact could carry: values from least to most of one topology, as marked. */
export type ContactOption = {
  readonly topology: Topology
  readonly leastF: number
  readonly mostF: number
  /** values it may have, from … to; absent = any inside its window. One that was chosen has that value alone, and no ends. */
  readonly only?: readonly (readonly [fromF: number, toF: number])[]
}

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

export type GroupingProgress = CoverProgress

/** Distance of a value to the nearer end of its window, as a ratio; below 1 outside. Both ends count alike. */
export const marginRatio = (valueF: number, { leastF, mostF }: ContactOption): number =>
  Math.min(leastF > 0 ? valueF / leastF : Number.POSITIVE_INFINITY, mostF / valueF)

/** A little slack for windows whose end is a preferred value. */
export const EVEN = 1 + 1e-9

/** Whether an option may have this value at all; its window says how well. */
export const isFor = (valueF: number, { only }: ContactOption): boolean =>
  only === undefined || only.some(([from, to]) => valueF * EVEN >= from && valueF <= to * EVEN)

type PartCandidate = Candidate & { readonly part: GroupPart }

/** Parts that fit at least one contact with this margin, each with the contacts it fits; none that another one beats. */
function candidatesOf(
  contacts: readonly ContactChoice[],
  valuesF: readonly number[],
  ratio: number,
): readonly PartCandidate[] {
  const byPart = new Map<string, { part: GroupPart; covers: number[] }>()
  contacts.forEach(({ options }, contact) => {
    for (const option of options) {
      for (const valueF of valuesF) {
        if (!isFor(valueF, option) || marginRatio(valueF, option) * EVEN < ratio) continue
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
    if (kept.some(({ set }) => one.covers.every((contact) => set.has(contact)) && set.size >= one.covers.length))
      continue
    kept.push({ ...one, set: new Set(one.covers) })
  }
  return kept.map(({ part, covers }) => ({ part, covers, cost: 1 }))
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
  const cover = yield* leastCover(contacts.length, candidates, atMost)
  if (cover === undefined) return undefined
  const parts = cover.chosen.map((one) => (candidates[one] as PartCandidate).part)
  return finished(contacts, parts, cover.lowerBound)
}

/** Every contact takes the part that leaves it the most margin. */
function finished(contacts: readonly ContactChoice[], parts: readonly GroupPart[], lowerBound: number): Grouping {
  let leastMarginRatio = Number.POSITIVE_INFINITY
  const partOf = contacts.map(({ options }) => {
    let chosen = -1
    let most = 0
    parts.forEach((part, i) => {
      for (const option of options) {
        if (option.topology !== part.topology || !isFor(part.valueF, option)) continue
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
    lowerBound,
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
        if (isFor(valueF, option) && ratio >= 1 && Number.isFinite(ratio)) found.add(ratio)
      }
  return [...found].sort((a, b) => a - b)
}
