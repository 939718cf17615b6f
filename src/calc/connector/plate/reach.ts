/** How far the currents of all contacts together can reach, whatever point of its box each of them stands at. */

import type { Points } from './box.ts'
import { ALPHA, BETA, SHARE } from './share.ts'

/** Directions in which the reach is kept, even around the circle. */
export const DIRECTIONS = 24
const STEP = (2 * Math.PI) / DIRECTIONS
const COS = Float64Array.from({ length: DIRECTIONS }, (_, k) => Math.cos(k * STEP))
const SIN = Float64Array.from({ length: DIRECTIONS }, (_, k) => Math.sin(k * STEP))

/** Largest real part of α and of β after turning by each direction back. */
export type Reach = { readonly alpha: Float64Array; readonly beta: Float64Array }

export const emptyReach = (): Reach => ({ alpha: new Float64Array(DIRECTIONS), beta: new Float64Array(DIRECTIONS) })

export function reachOf({ count, shares, alphaSlack, betaSlack }: Points): Reach {
  const reach = emptyReach()
  for (let k = 0; k < DIRECTIONS; k++) {
    let [alpha, beta] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]
    for (let i = 0; i < count; i++) {
      const at = SHARE * i
      alpha = Math.max(
        alpha,
        (shares[at + ALPHA] as number) * (COS[k] as number) + (shares[at + ALPHA + 1] as number) * (SIN[k] as number),
      )
      beta = Math.max(
        beta,
        (shares[at + BETA] as number) * (COS[k] as number) + (shares[at + BETA + 1] as number) * (SIN[k] as number),
      )
    }
    reach.alpha[k] = alpha + alphaSlack
    reach.beta[k] = beta + betaSlack
  }
  return reach
}

/** Adds (or with −1 takes off) the reach of one contact: that of a sum of sets is the sum of their reaches. */
export function addReach(sum: Reach, one: Reach, times: 1 | -1 = 1): void {
  for (let k = 0; k < DIRECTIONS; k++) {
    sum.alpha[k] = (sum.alpha[k] as number) + times * (one.alpha[k] as number)
    sum.beta[k] = (sum.beta[k] as number) + times * (one.beta[k] as number)
  }
}

/** A turn of the directions by any angle: between two directions no set reaches beyond where their edges meet. */
export type Turn = { low: number; one: number; other: number }

export const makeTurn = (): Turn => ({ low: 0, one: 0, other: 0 })

export function turnBy(angle: number, turn: Turn): void {
  const turns = angle / STEP
  const low = Math.floor(turns)
  const part = (turns - low) * STEP
  turn.low = ((low % DIRECTIONS) + DIRECTIONS) % DIRECTIONS
  turn.one = Math.sin(STEP - part) / SIN_STEP
  turn.other = Math.sin(part) / SIN_STEP
}

const SIN_STEP = Math.sin(STEP)

/** Reach in direction k turned, from above. */
export function turnedReach(reach: Float64Array, { low, one, other }: Turn, k: number): number {
  let at = low + k
  if (at >= DIRECTIONS) at -= DIRECTIONS
  const next = at + 1 === DIRECTIONS ? 0 : at + 1
  return (reach[at] as number) * one + (reach[next] as number) * other
}

/** What a point reaches in direction k. */
export const reachOfPoint = (re: number, im: number, k: number): number =>
  re * (COS[k] as number) + im * (SIN[k] as number)

/** The largest distance from 0 is no more than this many times the largest reach in the directions kept. */
export const BETWEEN = 1 / Math.cos(STEP / 2)

export const angleOf = (k: number): number => k * STEP
