/**
 * The least loss of one contact while all contacts of the plate are driven alike, over the boxes of all of them at once.
 *
 *   V = [own·(1 + Zb·Σβ) + plate·Zb·Σα]/(1 + Zb·Σβ), Σ over every contact, its own point included
 * The sums of the others are known by their reach: the numerator is affine in them, so that its farthest point is that of
 * a sum of sets; the denominator keeps its nearest. Both are taken apart, which makes the loss a bound from below.
 * ω > 0. Source: superposition, support functions of sums of convex sets (derived).
 */
import type { Complex } from '../complex.ts'
import type { Points } from './box.ts'
import { angleOf, BETWEEN, DIRECTIONS, makeTurn, type Reach, reachOfPoint, turnBy, turnedReach } from './reach.ts'
import { ALPHA, BARE, BETA, OWN, PLATE, SHARE } from './share.ts'

const FLOOR_DB = -400

export type Bounded = {
  /** no point of all boxes loses less, dB */
  readonly leastDb: number
  /** the same with this contact's own current alone in the bond, dB */
  readonly aloneDb: number
  /** the point of its own box where that is, in these points */
  readonly own: Points
  readonly point: number
  /** the direction in which its numerator reaches farthest there */
  readonly angle: number
}

type Numbers = {
  readonly ownRe: number
  readonly ownIm: number
  /** own·Zb and plate·Zb: size and angle */
  readonly ownZb: number
  readonly ownAngle: number
  readonly plateZb: number
  readonly plateAngle: number
  /** numerator and denominator with its own current alone */
  readonly nRe: number
  readonly nIm: number
  readonly dRe: number
  readonly dIm: number
  readonly bare: number
}

function numbersAt({ shares }: Points, i: number, [zRe, zIm]: Complex): Numbers {
  const at = SHARE * i
  const get = (of: number) => shares[at + of] as number
  const [ownRe, ownIm, plateRe, plateIm] = [get(OWN), get(OWN + 1), get(PLATE), get(PLATE + 1)]
  const [aRe, aIm, bRe, bIm] = [get(ALPHA), get(ALPHA + 1), get(BETA), get(BETA + 1)]
  const dRe = 1 + zRe * bRe - zIm * bIm
  const dIm = zRe * bIm + zIm * bRe
  const pRe = plateRe * zRe - plateIm * zIm
  const pIm = plateRe * zIm + plateIm * zRe
  return {
    ownRe,
    ownIm,
    ownZb: Math.hypot(ownRe, ownIm) * Math.hypot(zRe, zIm),
    ownAngle: Math.atan2(ownIm, ownRe) + Math.atan2(zIm, zRe),
    plateZb: Math.hypot(pRe, pIm),
    plateAngle: Math.atan2(pIm, pRe),
    nRe: ownRe * dRe - ownIm * dIm + pRe * aRe - pIm * aIm,
    nIm: ownRe * dIm + ownIm * dRe + pRe * aIm + pIm * aRe,
    dRe,
    dIm,
    bare: Math.hypot(get(BARE), get(BARE + 1)),
  }
}

const ownTurn = makeTurn()
const plateTurn = makeTurn()
const bondTurn = makeTurn()

/**
 * Least loss over the points given, and where. The farthest of the numerator is its largest reach; the denominator is no
 * nearer to 0 than the most it keeps to one side.
 */
function leastOver(own: Points, others: Reach, bondOhm: Complex): Bounded {
  const bond = Math.hypot(bondOhm[0], bondOhm[1])
  turnBy(-Math.atan2(bondOhm[1], bondOhm[0]), bondTurn)
  let [leastDb, aloneDb, point, angle] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 0, 0]
  for (let i = 0; i < own.count; i++) {
    const n = numbersAt(own, i, bondOhm)
    aloneDb = Math.min(aloneDb, lossDb(Math.hypot(n.nRe, n.nIm) / Math.hypot(n.dRe, n.dIm), n.bare))
    turnBy(-n.ownAngle, ownTurn)
    turnBy(-n.plateAngle, plateTurn)
    let [far, near, farAt] = [0, 0, 0]
    for (let k = 0; k < DIRECTIONS; k++) {
      const above =
        reachOfPoint(n.nRe, n.nIm, k) +
        n.ownZb * turnedReach(others.beta, ownTurn, k) +
        n.plateZb * turnedReach(others.alpha, plateTurn, k)
      if (above > far) {
        far = above
        farAt = k
      }
      const below = reachOfPoint(n.dRe, n.dIm, k) + bond * turnedReach(others.beta, bondTurn, k)
      if (-below > near) near = -below
    }
    const db = lossDb(near > 0 ? (far * BETWEEN) / near : Number.POSITIVE_INFINITY, n.bare)
    if (db >= leastDb) continue
    leastDb = db
    point = i
    angle = angleOf(farAt)
  }
  return { leastDb, aloneDb, point, angle, own }
}

/** Its least loss over all boxes: on the points given, then closer and closer around the worst of them where asked. */
export function boundTogether(
  own: Points,
  others: Reach,
  bondOhm: Complex,
  closer?: (point: number) => Generator<Points, void, number>,
): Bounded {
  let worst = leastOver(own, others, bondOhm)
  if (closer === undefined) return worst
  let aloneDb = worst.aloneDb
  const boxes = closer(worst.point)
  let step = boxes.next()
  while (!step.done) {
    const found = leastOver(step.value, others, bondOhm)
    aloneDb = Math.min(aloneDb, found.aloneDb)
    const gainDb = worst.leastDb - found.leastDb
    if (gainDb > 0) worst = found
    if (gainDb < SETTLED_DB) break
    step = boxes.next(found.point)
  }
  return { ...worst, aloneDb }
}

/** Nothing more is gained by looking closer. */
const SETTLED_DB = 1e-3

const lossDb = (volts: number, bare: number): number =>
  volts > 0 ? Math.max(FLOOR_DB, 20 * Math.log10(bare / volts)) : Number.POSITIVE_INFINITY

/**
 * A loss that really occurs: its own worst point, every other contact at the point of its box that takes the numerator
 * farthest that way. A bound from above on the least loss.
 */
export function metTogether(
  at: Pick<Bounded, 'own' | 'point' | 'angle'>,
  others: readonly Points[],
  bondOhm: Complex,
): number {
  const n = numbersAt(at.own, at.point, bondOhm)
  const [zRe, zIm] = bondOhm
  let [nRe, nIm, dRe, dIm] = [n.nRe, n.nIm, n.dRe, n.dIm]
  const pRe = n.plateZb * Math.cos(n.plateAngle)
  const pIm = n.plateZb * Math.sin(n.plateAngle)
  const oRe = n.ownZb * Math.cos(n.ownAngle)
  const oIm = n.ownZb * Math.sin(n.ownAngle)
  const [cos, sin] = [Math.cos(at.angle), Math.sin(at.angle)]
  for (const { count, shares } of others) {
    let [best, bestRe, bestIm, bRe, bIm] = [Number.NEGATIVE_INFINITY, 0, 0, 0, 0]
    for (let i = 0; i < count; i++) {
      const from = SHARE * i
      const [aRe, aIm] = [shares[from + ALPHA] as number, shares[from + ALPHA + 1] as number]
      const [eRe, eIm] = [shares[from + BETA] as number, shares[from + BETA + 1] as number]
      const re = pRe * aRe - pIm * aIm + oRe * eRe - oIm * eIm
      const im = pRe * aIm + pIm * aRe + oRe * eIm + oIm * eRe
      if (re * cos + im * sin > best) [best, bestRe, bestIm, bRe, bIm] = [re * cos + im * sin, re, im, eRe, eIm]
    }
    nRe += bestRe
    nIm += bestIm
    dRe += zRe * bRe - zIm * bIm
    dIm += zRe * bIm + zIm * bRe
  }
  return lossDb(Math.hypot(nRe, nIm) / Math.hypot(dRe, dIm), n.bare)
}
