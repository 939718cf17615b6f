/**
 * Fewest ceramics for a whole connector. One ceramic is one plane: one dielectric class, and values whose largest is at
 * most `ratio` times the smallest, as its maker states. A Pi takes two planes with its inductors between, which no other
 * contact shares. Practice of planar arrays, to be confirmed by the maker.
 *
 * Smallest cover of the contacts by planes (cover.ts), then the fewest values inside those planes. Farads > 0, ratio ≥ 1.
 * Source: derived; held against brute force.
 */
import { type Candidate, type CoverProgress, leastCover } from './cover.ts'
import { type ContactOption, EVEN, fewestParts, type Grouping, isFor, marginRatio } from './grouping.ts'

export type DielectricClass = 'class-1' | 'class-2'

export type PlaneChoice = {
  readonly id: string
  readonly options: readonly ContactOption[]
  /** the class its window was worked out with */
  readonly dielectric: DielectricClass
}

export type Plane = {
  readonly dielectric: DielectricClass
  /** two ceramics with inductors between */
  readonly isPi: boolean
  readonly fromF: number
  readonly toF: number
}

export type PlanePlan = {
  readonly planes: readonly Plane[]
  /** place in `planes` of each contact; −1 where none serves it */
  readonly planeOf: readonly number[]
  readonly ceramics: number
  /** no plan has fewer ceramics; equal when proved */
  readonly lowerBound: number
  /** the fewest values in these planes */
  readonly grouping: Grouping
}

type PlaneCandidate = Candidate & { readonly plane: Plane }

/** A value of the series this plane could give a contact through one of its options. */
function serves(plane: Plane, { options, dielectric }: PlaneChoice, valuesF: readonly number[]): boolean {
  if (dielectric !== plane.dielectric) return false
  return options.some(
    (option) =>
      (option.topology === 'PI') === plane.isPi &&
      valuesF.some(
        (valueF) => isInside(valueF, plane) && isFor(valueF, option) && marginRatio(valueF, option) * EVEN >= 1,
      ),
  )
}

const isInside = (valueF: number, { fromF, toF }: Plane): boolean => valueF * EVEN >= fromF && valueF <= toF * EVEN

function candidatesOf(contacts: readonly PlaneChoice[], valuesF: readonly number[], ratio: number): PlaneCandidate[] {
  const all: PlaneCandidate[] = []
  for (const dielectric of ['class-1', 'class-2'] as const)
    for (const isPi of [false, true])
      for (const fromF of valuesF) {
        const plane: Plane = { dielectric, isPi, fromF, toF: fromF * ratio }
        const covers = contacts.flatMap((contact, i) => (serves(plane, contact, valuesF) ? [i] : []))
        if (covers.length > 0) all.push({ plane, covers, cost: isPi ? 2 : 1 })
      }
  all.sort((a, b) => b.covers.length - a.covers.length || a.cost - b.cost)
  const kept: { candidate: PlaneCandidate; set: Set<number> }[] = []
  for (const candidate of all) {
    const isBeaten = kept.some(
      ({ candidate: other, set }) =>
        other.cost <= candidate.cost && candidate.covers.every((contact) => set.has(contact)),
    )
    if (!isBeaten) kept.push({ candidate, set: new Set(candidate.covers) })
  }
  return kept.map(({ candidate }) => candidate)
}

export function* fewestPlanes(
  contacts: readonly PlaneChoice[],
  valuesF: readonly number[],
  ratio: number,
): Generator<CoverProgress, PlanePlan> {
  const candidates = candidatesOf(contacts, valuesF, ratio)
  const cover = yield* leastCover(contacts.length, candidates)
  const planes = (cover?.chosen ?? []).map((one) => (candidates[one] as PlaneCandidate).plane)
  const inside = contacts.map(({ id, options, dielectric }) => ({
    id,
    options: options.flatMap((option): readonly ContactOption[] => {
      const spans = planes
        .filter((plane) => plane.dielectric === dielectric && plane.isPi === (option.topology === 'PI'))
        .map(({ fromF, toF }) => [fromF, toF] as const)
      const only = option.only === undefined ? spans : common(option.only, spans)
      return only.length === 0 ? [] : [{ ...option, only }]
    }),
  }))
  const grouping = yield* fewestParts(inside, valuesF)
  const parts = grouping?.parts ?? []
  const partOf = grouping?.partOf ?? contacts.map(() => -1)
  const planeOf = contacts.map(({ dielectric }, i) => {
    const part = parts[partOf[i] ?? -1]
    if (part === undefined) return -1
    return planes.findIndex(
      (plane) =>
        plane.dielectric === dielectric && plane.isPi === (part.topology === 'PI') && isInside(part.valueF, plane),
    )
  })
  return {
    planes,
    planeOf,
    ceramics: cover?.cost ?? 0,
    lowerBound: cover?.lowerBound ?? 0,
    grouping: grouping ?? { parts: [], partOf, leastMarginRatio: 1, lowerBound: 0 },
  }
}

type Spans = NonNullable<ContactOption['only']>

/** What two lists of spans have in common; a single value inside the other counts. */
function common(one: Spans, other: Spans): Spans {
  return one.flatMap(([a, b]) =>
    other.flatMap(
      ([c, d]): Spans => (Math.max(a, c) <= Math.min(b, d) * EVEN ? [[Math.max(a, c), Math.min(b, d)]] : []),
    ),
  )
}
