/** How far what trials say of a circuit may be off when every reading may be: spans over the whole box of the readings. */
import { type CapacitorTrial, parallelFromOne, parallelFromTwo } from './capacitor-trial.ts'
import type { OhmSpan } from './clamp.ts'

/** Steps over the error of one reading; between them the extreme is closed form. */
const STEPS = 32

/** Rs ∥ Rl from one capacitor whose drop may be off by ±offDb; `most` grows with the drop, `least` is 0 where it may be none. */
export function spanFromOne(trial: CapacitorTrial, hz: number, offDb: number): OhmSpan {
  const at = (off: number) => parallelFromOne({ ...trial, dropDb: trial.dropDb + off }, hz)
  return { least: at(-offDb) ?? 0, most: at(offDb) ?? 0 }
}

/**
 * Rs ∥ Rl from two capacitors, each drop anywhere within ±offDb. With e = (a − 1)/b of each reading, y = (b2 − b1)/(e2 − e1)
 * and G² = y − ((e1·y − b1)/2)²: for each e1 the ends of y and the top of that parabola, y = (2/e1 + b1)/e1. `most` is
 * infinite and `least` 0 where the readings leave it open; undefined where no reading inside its error has a passive circuit.
 */
export function spanFromTwo(one: CapacitorTrial, two: CapacitorTrial, hz: number, offDb: number): OhmSpan | undefined {
  const [small, large] = one.farad <= two.farad ? [one, two] : [two, one]
  const [b1, b2] = [2 * Math.PI * hz * small.farad, 2 * Math.PI * hz * large.farad]
  if (!(b2 > b1)) return undefined
  const excess = ({ dropDb }: CapacitorTrial, off: number, b: number) => (10 ** ((dropDb + off) / 10) - 1) / b
  const [low2, high2] = [excess(large, -offDb, b2), excess(large, offDb, b2)]
  let [leastSquare, mostSquare] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (let i = 0; i <= STEPS; i++) {
    const e1 = excess(small, offDb * ((2 * i) / STEPS - 1), b1)
    if (high2 <= e1) continue
    const from = (b2 - b1) / (high2 - e1)
    // the second reading may be no more than the first: then the admittance has no upper end
    const to = low2 > e1 ? (b2 - b1) / (low2 - e1) : Number.POSITIVE_INFINITY
    const top = e1 > 0 ? (2 / e1 + b1) / e1 : Number.POSITIVE_INFINITY
    const square = (y: number) => (Number.isFinite(y) ? y - ((e1 * y - b1) / 2) ** 2 : openEnd(e1))
    for (const y of [from, to, Math.min(Math.max(top, from), to)]) {
      leastSquare = Math.min(leastSquare, square(y))
      mostSquare = Math.max(mostSquare, square(y))
    }
  }
  if (!(mostSquare > 0)) return undefined
  return {
    least: Number.isFinite(mostSquare) ? 1 / Math.sqrt(mostSquare) : 0,
    most: leastSquare > 0 ? 1 / Math.sqrt(leastSquare) : Number.POSITIVE_INFINITY,
  }
}

/** G² for a y without end: falls without end, unless the first capacitor did nothing. */
const openEnd = (e1: number): number => (e1 === 0 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY)

/**
 * Largest |B|·R, the susceptance over the conductance, of two capacitors with each drop anywhere within ±offDb. It stands at
 * a corner: B/Y = (e1·√y − b1/√y)/2 grows with the first drop and falls with the second. Infinite where a corner has no
 * passive circuit: on the way there the conductance comes to 0.
 */
export function mostReactive(one: CapacitorTrial, two: CapacitorTrial, hz: number, offDb: number): number {
  const off = (trial: CapacitorTrial, db: number): CapacitorTrial => ({ ...trial, dropDb: trial.dropDb + db })
  const corners = [-offDb, offDb].flatMap((first) =>
    [-offDb, offDb].map((second) => parallelFromTwo(off(one, first), off(two, second), hz)),
  )
  return Math.max(
    ...corners.map((corner) =>
      corner === undefined ? Number.POSITIVE_INFINITY : Math.abs(corner.siemens) * corner.ohm,
    ),
  )
}

export type EndSpans = { readonly higher: OhmSpan; readonly lower: OhmSpan }

/**
 * Both ends from a span of their sum S and a span of their parallel value P, real parts only:
 * (S ± √(S² − 4·S·P))/2 grows for the higher end with S and falls with P, for the lower the other way; where 4·P may
 * reach S, both may be S/2. Undefined where 4·P is above S over both spans.
 */
export function endSpans(sum: OhmSpan, parallel: OhmSpan): EndSpans | undefined {
  if (!(4 * parallel.least <= sum.most)) return undefined
  const higherOf = (s: number, p: number) => {
    if (!Number.isFinite(s)) return Number.POSITIVE_INFINITY
    return (s + Math.sqrt(Math.max(0, s * s - 4 * s * p))) / 2
  }
  // without the difference of two nearly equal numbers
  const lowerOf = (s: number, p: number) => (Number.isFinite(s) ? (s * p) / higherOf(s, p) : p)
  const mayMeet = 4 * parallel.most >= sum.least
  return {
    higher: {
      least: mayMeet ? Math.max(sum.least, 4 * parallel.least) / 2 : higherOf(sum.least, parallel.most),
      most: higherOf(sum.most, parallel.least),
    },
    lower: {
      least: lowerOf(sum.most, parallel.least),
      most: mayMeet ? 2 * Math.min(parallel.most, sum.most / 4) : lowerOf(sum.least, parallel.most),
    },
  }
}
