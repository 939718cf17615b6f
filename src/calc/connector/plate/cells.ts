/**
 * The box of tolerances of one contact, cut into cells until the corners of each stand for all of it.
 *
 * Every ratio f of a contact is P/Δ with P and Δ affine in each part by itself. With the weights λ ≥ 0 of the corners v
 * of a cell, Σλ = 1: f = Σ λ·Δv·fv / Σ λ·Δv. Let all Δv lie in a sector of half-angle φ < 90°; w = λ·|Δv|/Σλ·|Δv|,
 * u = Δv/|Δv|, M = Σ w·u, |M| ≥ cos φ. Then f = Σ w·fv + Σ w·(u/M − 1)·(fv − c) for any c, since Σ w·(u/M − 1) = 0, and
 * Σ w·|u/M − 1|² = 1/|M|² − 1 ≤ tan²φ, so that
 *   f lies within r·tan φ of the hull of its corners, r the largest |fv − c|  (Cauchy–Schwarz);
 *   |f| ≤ max |fv|/cos φ  (triangle inequality).
 * Both close with the square of the size of a cell, and neither rests on how often the box was looked at.
 * Source: derived; the tests hold it against points inside.
 */
import { demandsOf } from '../../bounds/demand.ts'
import type { Span, Surroundings } from '../../bounds/surroundings.ts'
import { beadOhms } from '../../network/bead.ts'
import { hasInductor } from '../../network/circuit.ts'
import { DELTA, type OnPlate, SHARE, shareInto } from './share.ts'

/** A contact that returns current through the plate: its surroundings wherever what stands at its ends may be. */
export type Plated = {
  readonly placed: readonly Surroundings[]
  /** shares of its mark that the part can have */
  readonly shares: Span
  /** farads, or henries of a single inductor, as marked */
  readonly marked: number
  /** nothing is fitted: what stands at the ends is all there is */
  readonly isBare?: boolean
}

type Axis = { readonly part: number; readonly low: number; readonly high: number }

/** Every point of a contact that was looked at with one source and one thing at its ends: SHARE numbers each. */
export type Box = {
  readonly on: OnPlate
  readonly values: Float64Array
  readonly axes: readonly Axis[]
  shares: Float64Array
  count: number
}

export type Cell = {
  readonly box: Box
  /** points of its corners; bit k of the place = part k at its most */
  readonly corners: readonly number[]
  /** 0 to 1 along each part that varies */
  readonly from: readonly number[]
  readonly to: readonly number[]
  /** half the angle its Δ turn, π/2 where that is too far to say anything */
  readonly turn: number
  halves: readonly [Cell, Cell] | undefined
}

/** A point of a contact. */
export type At = { readonly shares: Float64Array; readonly point: number }

const known = new WeakMap<Plated, Map<number, readonly Cell[] | undefined>>()

/** The boxes of a contact at a frequency, uncut; undefined where its bead is not known. */
export function boxesAt(plated: Plated, hz: number): readonly Cell[] | undefined {
  const ofPlated = known.get(plated) ?? new Map<number, readonly Cell[] | undefined>()
  known.set(plated, ofPlated)
  if (ofPlated.has(hz)) return ofPlated.get(hz)
  const found = plated.placed.some((around) => isUnknown(around, hz)) ? undefined : boxesOf(plated, hz)
  ofPlated.set(hz, found)
  return found
}

const isUnknown = ({ bead, topology }: Surroundings, hz: number): boolean =>
  bead !== undefined && hasInductor(topology) && beadOhms(bead, hz) === undefined

const boxesOf = ({ placed, shares, marked, isBare }: Plated, hz: number): readonly Cell[] =>
  placed.flatMap((around) =>
    demandsOf({ ...around, needs: [{ hz, db: 0 }] }, shares).flatMap((demand) =>
      waysOf(isBare ? { ...demand, wiring: { ...demand.wiring, stages: [] } } : demand).map((on) => {
        const low = demand.ranges.map(({ scale, fixed }) => marked * scale.least + fixed.least)
        const high = demand.ranges.map(({ scale, fixed }) => marked * scale.most + fixed.most)
        return rootOf(on, low, high)
      }),
    ),
  )

/** What stands at an end may return to the plate as well as past it: nobody says, so that both count. */
function waysOf(on: OnPlate): readonly OnPlate[] {
  const { stages, sourceNode, loadNode, sourceNodeInBare, loadNodeInBare } = on.wiring
  const toPlate = (part: number) => ({ isSeries: false, part, of: 'bare', ohmPart: -1, leadPart: -1 }) as const
  const isSource = sourceNode >= 0 && !sourceNodeInBare
  const isLoad = loadNode >= 0 && !loadNodeInBare
  if (!isSource && !isLoad) return [on]
  const wiring = {
    ...on.wiring,
    stages: [...(isSource ? [toPlate(sourceNode)] : []), ...stages, ...(isLoad ? [toPlate(loadNode)] : [])],
    sourceNode: isSource ? -1 : sourceNode,
    loadNode: isLoad ? -1 : loadNode,
  }
  return [on, { ...on, wiring }]
}

function rootOf(on: OnPlate, low: readonly number[], high: readonly number[]): Cell {
  const axes = low.flatMap((least, part) => {
    const most = high[part] as number
    return most > least ? [{ part, low: least, high: most }] : []
  })
  const corners = Array.from({ length: 1 << axes.length }, (_, corner) => corner)
  const box: Box = {
    on,
    values: Float64Array.from(low),
    axes,
    shares: new Float64Array(2 * SHARE * corners.length),
    count: 0,
  }
  for (const corner of corners) pointInto(box, (k) => (corner >> k) & 1)
  return cellOf(
    box,
    corners,
    axes.map(() => 0),
    axes.map(() => 1),
  )
}

/** SHARE numbers of a contact with its part as marked, from its first source, everything else at its least. */
export function markedAt({ placed, shares, marked }: Plated, hz: number): At | undefined {
  const [around] = placed
  const [demand] = around === undefined ? [] : demandsOf({ ...around, needs: [{ hz, db: 0 }] }, shares)
  if (demand === undefined) return undefined
  const values = demand.ranges.map(({ scale, fixed }) => (marked * scale.least) / shares.least + fixed.least)
  const found = new Float64Array(SHARE)
  shareInto(demand, values, found, 0)
  return { shares: found, point: 0 }
}

/** One more point, `along` 0 to 1 of each part that varies; its number. */
function pointInto(box: Box, along: (k: number) => number): number {
  const { on, values, axes } = box
  const point = box.count
  if (SHARE * (point + 1) > box.shares.length) {
    const more = new Float64Array(2 * box.shares.length)
    more.set(box.shares)
    box.shares = more
  }
  axes.forEach(({ part, low, high }, k) => {
    values[part] = low + along(k) * (high - low)
  })
  shareInto(on, values, box.shares, SHARE * point)
  box.count += 1
  return point
}

const cellOf = (box: Box, corners: readonly number[], from: readonly number[], to: readonly number[]): Cell => ({
  box,
  corners,
  from,
  to,
  turn: turnOf(box, corners),
  halves: undefined,
})

/** Half the angle of the sector that holds Δ of every corner. */
function turnOf({ shares }: Box, corners: readonly number[]): number {
  let [sumRe, sumIm] = [0, 0]
  for (const point of corners) {
    const re = shares[SHARE * point + DELTA] as number
    const im = shares[SHARE * point + DELTA + 1] as number
    const size = Math.hypot(re, im)
    sumRe += re / size
    sumIm += im / size
  }
  let [least, most] = [0, 0]
  for (const point of corners) {
    const re = shares[SHARE * point + DELTA] as number
    const im = shares[SHARE * point + DELTA + 1] as number
    const angle = Math.atan2(sumRe * im - sumIm * re, sumRe * re + sumIm * im)
    least = Math.min(least, angle)
    most = Math.max(most, angle)
  }
  return Math.min((most - least) / 2, Math.PI / 2)
}

/** The cell cut in two along the part that turns it most; cut once for whoever asks. */
export function halvesOf(cell: Cell): readonly [Cell, Cell] {
  if (cell.halves !== undefined) return cell.halves
  const { box, corners, from, to } = cell
  const axis = turningMost(box, corners)
  const middle = ((from[axis] as number) + (to[axis] as number)) / 2
  const bit = 1 << axis
  const lower = [...corners]
  const upper = [...corners]
  for (let corner = 0; corner < corners.length; corner++) {
    if ((corner & bit) !== 0) continue
    const point = pointInto(box, (k) => (k === axis ? middle : (((corner >> k) & 1 ? to[k] : from[k]) as number)))
    lower[corner | bit] = point
    upper[corner] = point
  }
  const at = (ends: readonly number[]) => ends.map((end, k) => (k === axis ? middle : end))
  cell.halves = [cellOf(box, lower, from, at(to)), cellOf(box, upper, at(from), to)]
  return cell.halves
}

function turningMost({ shares, axes }: Box, corners: readonly number[]): number {
  let [axis, most] = [0, -1]
  for (let k = 0; k < axes.length; k++) {
    let turn = 0
    for (let corner = 0; corner < corners.length; corner++) {
      if ((corner >> k) & 1) continue
      const a = SHARE * (corners[corner] as number) + DELTA
      const b = SHARE * (corners[corner | (1 << k)] as number) + DELTA
      const [aRe, aIm] = [shares[a] as number, shares[a + 1] as number]
      const [bRe, bIm] = [shares[b] as number, shares[b + 1] as number]
      turn = Math.max(turn, Math.abs(Math.atan2(aRe * bIm - aIm * bRe, aRe * bRe + aIm * bIm)))
    }
    if (turn > most) [axis, most] = [k, turn]
  }
  return axis
}
