/**
 * The plate at one frequency with every contact on it, and what all but one of them can do there.
 *
 *   Vp = Zb·Σα/(1 + Zb·Σβ).  With c the plate volts in the middle of all reaches: Vp − c = E/D,
 *   E = Σ Zb·(α − c·β) − c,  D = 1 + Zb·Σβ: sums of one term a contact, known by their reach.
 * Source: superposition, support functions of sums of sets (derived).
 */
import type { Progress } from '../../types.ts'
import { add, type Complex, divide, magnitude, multiply, ONE, ZERO } from '../complex.ts'
import { boxesAt, type Cell, type Plated } from './cells.ts'
import {
  addReach,
  cornerIm,
  cornerRe,
  DIRECTIONS,
  emptyReach,
  makeTurn,
  type Reach,
  reachOf,
  turnBy,
  turnedReach,
} from './reach.ts'

type Sums = { readonly alpha: Reach; readonly beta: Reach; readonly moved: Reach }

export type Plate = {
  readonly hz: number
  readonly bondOhm: Complex
  readonly centre: Complex
  readonly all: Sums
  readonly each: readonly Sums[]
  /** the boxes of every contact; none where what it does is not known */
  readonly boxes: readonly (readonly Cell[])[]
  /** what one of the contacts does at this frequency is not known */
  readonly isUnknown: boolean
  /** places of the contacts whose bead is not known at this frequency */
  readonly unknownBeads: readonly number[]
}

const reaches = new WeakMap<readonly Cell[], { readonly alpha: Reach; readonly beta: Reach }>()

/** Points looked at between two pauses. */
const SLICE = 400
const pointsOf = (boxes: readonly Cell[]): number => boxes.reduce((sum, { box }) => sum + box.count, 0)

/** Reach of α and of β of one contact: whatever the bond. */
function* ownReach(boxes: readonly Cell[]): Generator<Progress, { readonly alpha: Reach; readonly beta: Reach }> {
  const before = reaches.get(boxes)
  if (before !== undefined) return before
  const alpha = reachOf(boxes, { of: ONE, by: ZERO })
  if (pointsOf(boxes) > SLICE) yield { doneFrac: 0 }
  const now = { alpha, beta: reachOf(boxes, { of: ZERO, by: ONE }) }
  reaches.set(boxes, now)
  return now
}

export function* plateOf(contacts: readonly Plated[], hz: number, bondOhm: Complex): Generator<Progress, Plate> {
  const alphas = emptyReach()
  const betas = emptyReach()
  const own: { readonly alpha: Reach; readonly beta: Reach }[] = []
  const known = contacts.map((plated) => boxesAt(plated, hz))
  const boxes = known.map((one) => one ?? [])
  let looked = 0
  for (let i = 0; i < boxes.length; i++) {
    const one = known[i] === undefined ? NOTHING : yield* ownReach(boxes[i] as readonly Cell[])
    own.push(one)
    addReach(alphas, one.alpha)
    addReach(betas, one.beta)
    looked += pointsOf(boxes[i] as readonly Cell[])
    if (looked < SLICE) continue
    looked = 0
    yield { doneFrac: 0 }
  }
  const centre = divide(multiply(bondOhm, middleOf(alphas)), add(ONE, multiply(bondOhm, middleOf(betas))))
  const mixture = { of: bondOhm, by: multiply(bondOhm, [-centre[0], -centre[1]]) }
  const moved = emptyReach()
  const each: Sums[] = []
  for (let i = 0; i < boxes.length; i++) {
    const one = known[i] === undefined ? NOTHING.alpha : reachOf(boxes[i] as readonly Cell[], mixture)
    each.push({ ...(own[i] as (typeof own)[number]), moved: one })
    addReach(moved, one)
    looked += pointsOf(boxes[i] as readonly Cell[])
    if (looked < SLICE) continue
    looked = 0
    yield { doneFrac: 0 }
  }
  const all = { alpha: alphas, beta: betas, moved }
  const isBounded = [alphas, betas, moved].every((reach) => reach.every(Number.isFinite))
  const unknownBeads = known.flatMap((one, i) => (one === undefined ? [i] : []))
  const isUnknown = unknownBeads.length > 0 || !isBounded
  return { hz, bondOhm, centre, all, each, boxes, isUnknown, unknownBeads }
}

const NOTHING = { alpha: emptyReach(), beta: emptyReach() }

const middleOf = (reach: Reach): Complex => {
  const [east, north, west, south] = [0, 1, 2, 3].map((k) => reach[(k * DIRECTIONS) / 4] as number) as [
    number,
    number,
    number,
    number,
  ]
  return [(east - west) / 2, (north - south) / 2]
}

/** All but one, or a few alike, ready for the points of the one. */
export type Others = {
  readonly bondOhm: Complex
  readonly centre: Complex
  readonly alpha: Reach
  readonly beta: Reach
  readonly moved: Reach
  /** reach of Zb·Σβ */
  readonly fall: Reach
  /** a disc that holds Zb·Σβ */
  readonly fallCentre: Complex
  readonly fallRadius: number
  readonly isUnknown: boolean
}

const others = new WeakMap<Sums, Others>()

/** All but the contact at this place. */
export function othersThan(plate: Plate, i: number): Others {
  const own = plate.each[i] as Sums
  const found = others.get(own) ?? othersOf(plate, [plate.all, own], [1, -1])
  others.set(own, found)
  return found
}

/** Those of the same line alone. */
export const onlyThese = (plate: Plate, these: readonly number[]): Others =>
  othersOf(
    plate,
    these.map((i) => plate.each[i] as Sums),
    these.map(() => 1),
  )

/** Nobody, and a plate at rest. */
export const RESTING: Others = othersOf({ bondOhm: ZERO, centre: ZERO, isUnknown: false }, [], [])

function othersOf(
  plate: Pick<Plate, 'bondOhm' | 'centre' | 'isUnknown'>,
  sums: readonly Sums[],
  times: readonly (1 | -1)[],
): Others {
  const { bondOhm, centre, isUnknown } = plate
  const [alpha, beta, moved] = [emptyReach(), emptyReach(), emptyReach()]
  sums.forEach((one, i) => {
    addReach(alpha, one.alpha, times[i])
    addReach(beta, one.beta, times[i])
    addReach(moved, one.moved, times[i])
  })
  const size = magnitude(bondOhm)
  const turn = makeTurn()
  turnBy(-Math.atan2(bondOhm[1], bondOhm[0]), turn)
  const fall = emptyReach()
  for (let k = 0; k < DIRECTIONS; k++) fall[k] = size * turnedReach(beta, turn, k)
  const fallCentre = middleOf(fall)
  let fallRadius = 0
  for (let k = 0; k < DIRECTIONS; k++)
    fallRadius = Math.max(fallRadius, Math.hypot(cornerRe(fall, k) - fallCentre[0], cornerIm(fall, k) - fallCentre[1]))
  return { bondOhm, centre, alpha, beta, moved, fall, fallCentre, fallRadius, isUnknown }
}
