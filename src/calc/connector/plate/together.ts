/**
 * The least loss of one contact while all contacts of the plate are driven alike, over the boxes of all of them at once.
 *
 *   V = own + plate·Vp,  Vp = (Zb·α + Zb·Σα)/(1 + Zb·β + Zb·Σβ), Σ over the others
 * At one point of its own box the others are known by their reach. With Vp = c + E/D: |V| is at most the farthest of
 * own + plate·(c + q·E) over the corners of E, plus |plate·E| times the radius of the disc round q that holds 1/D; and at
 * most the farthest of V·D over the nearest D. Both hold, so that the lesser does. Between the points V is P/Δ' with P and
 * Δ' = Δ·D affine in each of its own parts, whatever the others: cells.ts. Nothing is sampled: no point of the boxes loses
 * less, but for the rounding of the numbers (1e-9 dB). ω > 0. Source: derived; held against a nodal solver.
 */
import type { Complex } from '../complex.ts'
import { type At, type Cell, halvesOf } from './cells.ts'
import { FLOOR_DB, lossDb } from './loss.ts'
import type { Others } from './plate.ts'
import {
  cornerIm,
  cornerRe,
  DIRECTIONS,
  emptyReach,
  farthestOf,
  makeTurn,
  nearestOf,
  reachOfPoint,
  turnBy,
  turnedReach,
} from './reach.ts'
import { ALPHA, BARE, BETA, OWN, PLATE, SHARE } from './share.ts'

export type Bounded = {
  /** no point of all boxes loses less, dB; of a quiet one: below its bare level by no less */
  readonly leastDb: number
  /** the least over the points looked at: no bound */
  readonly promisedDb: number
  /** the point where its own box promises least */
  readonly at: At
}

const ownTurn = makeTurn()
const plateTurn = makeTurn()
const reach = emptyReach()

/** what `look` found: volts at most, and the least |D| */
let volts = 0
let nearest = 0

/** The most volts at one point of its own box over everything the others can do, and the least |D|. */
function look({ shares, point }: At, others: Others, isQuiet: boolean): void {
  const at = SHARE * point
  const [zRe, zIm] = others.bondOhm
  const [cRe, cIm] = others.centre
  const drive = isQuiet ? 0 : 1
  const ownRe = drive * (shares[at + OWN] as number)
  const ownIm = drive * (shares[at + OWN + 1] as number)
  const plateRe = shares[at + PLATE] as number
  const plateIm = shares[at + PLATE + 1] as number
  const aRe = drive * (shares[at + ALPHA] as number)
  const aIm = drive * (shares[at + ALPHA + 1] as number)
  const bRe = shares[at + BETA] as number
  const bIm = shares[at + BETA + 1] as number
  const dRe = 1 + zRe * bRe - zIm * bIm
  const dIm = zRe * bIm + zIm * bRe
  for (let k = 0; k < DIRECTIONS; k++) reach[k] = reachOfPoint(dRe, dIm, k) + (others.fall[k] as number)
  const near = nearestOf(reach)
  nearest = near
  if (!(near > 0)) {
    volts = Number.POSITIVE_INFINITY
    return
  }
  // Zb·α and E with its own part in it
  const iRe = zRe * aRe - zIm * aIm
  const iIm = zRe * aIm + zIm * aRe
  const eRe = iRe - (cRe * dRe - cIm * dIm)
  const eIm = iIm - (cRe * dIm + cIm * dRe)
  const plateSize = Math.hypot(plateRe, plateIm)
  // own + plate·c
  const vRe = ownRe + plateRe * cRe - plateIm * cIm
  const vIm = ownIm + plateRe * cIm + plateIm * cRe
  const byCentre = aroundCentre(others, eRe, eIm, dRe, dIm, near, vRe, vIm, plateRe, plateIm)
  // V·D: own·D + plate·Zb·Σα
  const zb = Math.hypot(zRe, zIm)
  const zAngle = Math.atan2(zIm, zRe)
  const ownZb = zb * Math.hypot(ownRe, ownIm)
  const nRe = ownRe * dRe - ownIm * dIm + plateRe * iRe - plateIm * iIm
  const nIm = ownRe * dIm + ownIm * dRe + plateRe * iIm + plateIm * iRe
  turnBy(-Math.atan2(ownIm, ownRe) - zAngle, ownTurn)
  turnBy(-Math.atan2(plateIm, plateRe) - zAngle, plateTurn)
  const plateZb = zb * plateSize
  for (let k = 0; k < DIRECTIONS; k++)
    reach[k] =
      reachOfPoint(nRe, nIm, k) +
      ownZb * turnedReach(others.beta, ownTurn, k) +
      plateZb * turnedReach(others.alpha, plateTurn, k)
  volts = Math.min(byCentre, farthestOf(reach) / near)
}

/** |own + plate·c + plate·E/D| at most. */
function aroundCentre(
  { moved, fallCentre, fallRadius }: Others,
  eRe: number,
  eIm: number,
  dRe: number,
  dIm: number,
  near: number,
  vRe: number,
  vIm: number,
  plateRe: number,
  plateIm: number,
): number {
  for (let k = 0; k < DIRECTIONS; k++) reach[k] = reachOfPoint(eRe, eIm, k) + (moved[k] as number)
  const plateSize = Math.hypot(plateRe, plateIm)
  const farthest = farthestOf(reach)
  const plain = Math.hypot(vRe, vIm) + (plateSize * farthest) / near
  // D lies in a disc, so that 1/D does
  const fRe = dRe + fallCentre[0]
  const fIm = dIm + fallCentre[1]
  const power = fRe * fRe + fIm * fIm - fallRadius * fallRadius
  if (!(power > 0)) return plain
  const qRe = fRe / power
  const qIm = -fIm / power
  const pqRe = plateRe * qRe - plateIm * qIm
  const pqIm = plateRe * qIm + plateIm * qRe
  let most = 0
  for (let k = 0; k < DIRECTIONS; k++) {
    const x = cornerRe(reach, k)
    const y = cornerIm(reach, k)
    const re = vRe + pqRe * x - pqIm * y
    const im = vIm + pqRe * y + pqIm * x
    most = Math.max(most, re * re + im * im)
  }
  return Math.min(plain, Math.sqrt(most) + (plateSize * farthest * fallRadius) / power)
}

/** A cell is not cut further once it can hold no more than this beyond its corners, dB. */
const SETTLED_DB = 0.01
/** The same where a need lies in between. */
const ROUNDED_DB = 1e-6
/** Points after which what is left is taken as it stands. */
const MOST_POINTS = 6000

type Ask = {
  /** its own source is at rest, and what it hears of the others lies below its bare level by that much */
  readonly isQuiet?: boolean
  /** what is needed, dB: looked at closely where it lies between the corners and what is certain */
  readonly needDb?: number
}

/** Its least loss over all boxes, worst cell first. */
export function boundTogether(boxes: readonly Cell[], others: Others, ask: Ask = {}): Bounded {
  const { needDb } = ask
  return searched(boxes, others, ask.isQuiet ?? false, (db, least) =>
    db < least - (needDb !== undefined && db < needDb && needDb <= least ? ROUNDED_DB : SETTLED_DB) ? 'cut' : 'keep',
  )
}

/** Whether it keeps as much over all boxes: left as soon as a corner does not. */
export const keeps = (boxes: readonly Cell[], others: Others, needDb: number): boolean =>
  searched(boxes, others, false, (db, least) =>
    least < needDb ? 'leave' : db < needDb && db < least - ROUNDED_DB ? 'cut' : 'keep',
  ).leastDb >= needDb

/** On the corners of its boxes alone: no bound. */
export const promisedDb = (boxes: readonly Cell[], others: Others): number =>
  searched(boxes, others, false, () => 'keep').promisedDb

/** `next`: what becomes of a cell that is certain of `db`, the least of all points being `least`. */
function searched(
  boxes: readonly Cell[],
  others: Others,
  isQuiet: boolean,
  nextOf: (db: number, least: number) => 'cut' | 'keep' | 'leave',
): Bounded {
  let at: At = { shares: new Float64Array(SHARE), point: 0 }
  if (boxes.length === 0 || others.isUnknown) return { leastDb: FLOOR_DB, promisedDb: FLOOR_DB, at }
  const found = new Map<Cell['box'], Found[]>()
  let least = Number.POSITIVE_INFINITY
  let boundDb = Number.POSITIVE_INFINITY
  let looks = 0
  const pointAt = (cell: Cell, point: number): Found => {
    const ofBox = found.get(cell.box) ?? []
    if (ofBox.length === 0) found.set(cell.box, ofBox)
    const before = ofBox[point]
    if (before !== undefined) return before
    const { shares } = cell.box
    look({ shares, point }, others, isQuiet)
    looks += 1
    const bare = Math.hypot(shares[SHARE * point + BARE] as number, shares[SHARE * point + BARE + 1] as number)
    const now = { volts, nearest, bare }
    ofBox[point] = now
    const db = lossDb(volts, bare)
    if (db < least || looks === 1) {
      least = Math.min(least, db)
      at = { shares, point }
    }
    return now
  }
  const waiting: { readonly cell: Cell; readonly db: number }[] = boxes
    .map((cell) => ({ cell, db: cellDb(cell, pointAt, others.bondOhm) }))
    .sort((a, b) => b.db - a.db)
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { cell, db } = next
    const what = nextOf(db, least)
    if (what === 'leave') break
    if (what === 'keep' || looks >= MOST_POINTS || cell.corners.length === 1) {
      boundDb = Math.min(boundDb, db)
      continue
    }
    const halves = halvesOf(cell).map((half) => ({ cell: half, db: cellDb(half, pointAt, others.bondOhm) }))
    halves.sort((a, b) => b.db - a.db)
    waiting.push(...halves)
  }
  return { leastDb: Math.min(least, boundDb), promisedDb: least, at }
}

type Found = { readonly volts: number; readonly nearest: number; readonly bare: number }

/** Least loss over one cell, from below. */
function cellDb(cell: Cell, pointAt: (cell: Cell, point: number) => Found, [zRe, zIm]: Complex): number {
  const { corners, box, turn } = cell
  let [most, bare, near, spread] = [0, Number.POSITIVE_INFINITY, 0, 0]
  const first = SHARE * (corners[0] as number) + BETA
  corners.forEach((point, i) => {
    const found = pointAt(cell, point)
    most = Math.max(most, found.volts)
    bare = Math.min(bare, found.bare)
    if (i === 0) near = found.nearest
    const to = SHARE * point + BETA
    const re = (box.shares[to] as number) - (box.shares[first] as number)
    const im = (box.shares[to + 1] as number) - (box.shares[first + 1] as number)
    spread = Math.max(spread, Math.hypot(zRe * re - zIm * im, zRe * im + zIm * re))
  })
  if (corners.length === 1) return lossDb(most, bare)
  // D turns from that of the first corner by no more than this, whatever the others
  const more = spread < near ? Math.asin(spread / near) : Math.PI / 2
  const half = turn + more
  return half < Math.PI / 2 ? lossDb(most / Math.cos(half), bare) : FLOOR_DB
}
