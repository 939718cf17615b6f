/**
 * What one contact does to the plate and takes from it, per volt, at one point of its box of tolerances.
 *
 *   N = A + Zs·C + YL·(B + Zs·D),  Y = C + (D − 1)·YL,  F = (1 + YL·(B + Zs·D))/N
 *   α = Y/N (plate current per volt of its source),  β = Y·F − (D − 1)·YL (per volt of the plate, away from it)
 *   own = 1/N,  plate = 1 − F,  bare = 1/(1 + Zs·YL)
 * A capacitance at the source end turns Zs into Zs/(1 + Zs·Ys) and the volts by the same factor; one at the load end adds
 * to YL. ω > 0, parts ≥ 0. Source: superposition (derived), as for the bond of the whole connector.
 *
 * Δ = (1 + Zs·Ys)·N·Πq, q the denominator of each part, is the determinant of the contact with its plate at rest: Δ, Δ·α,
 * Δ·β, Δ·own and Δ·plate are affine in every part (Cramer's rule; each part enters a network once).
 */
import type { Demand } from '../../bounds/demand.ts'
import type { Stage } from '../../network/cleared.ts'

/** A stage of the filter; `bare`: a capacitance to the plate without lead or loss. */
export type PlateStage = Omit<Stage, 'of'> & { readonly of: Stage['of'] | 'bare' }

/** One need from one source, its stages as they stand on the plate. */
export type OnPlate = Pick<Demand, 'w' | 'fixed'> & {
  readonly wiring: Omit<Demand['wiring'], 'stages'> & { readonly stages: readonly PlateStage[] }
}

/** α, β, own, plate, bare, Δ: real and imaginary part of each. */
export const SHARE = 12
export const ALPHA = 0
export const BETA = 2
export const OWN = 4
export const PLATE = 6
export const BARE = 8
export const DELTA = 10

/** Below this a resonance without loss would divide by zero. */
const FLOOR = 1e-15
const floored = (value: number): number => (Math.abs(value) < FLOOR ? FLOOR : value)

/** impedance or admittance of a stage, and its denominator q */
const z = new Float64Array(4)
const chain = new Float64Array(10)

/** Impedance of a stage in the line, or admittance of one to the plate, at these values, into `z`. */
function stageInto(
  { of, part, isSeries, ohmPart }: PlateStage,
  { w, fixed }: OnPlate,
  values: ArrayLike<number>,
): void {
  const value = values[part] as number
  z[2] = 1
  z[3] = 0
  if (of === 'bare') {
    z[0] = 0
    z[1] = w * value
    return
  }
  if (of === 'ohm' || of === 'reactance') {
    z[0] = of === 'ohm' ? value : 0
    z[1] = of === 'reactance' ? value : 0
    return
  }
  if (isSeries) {
    const isChoke = of === 'choke'
    const x = w * value
    const nRe = floored(1 - x * (isChoke ? fixed.chokeSie : fixed.coilSie))
    const nIm = isChoke ? 0 : x * fixed.coilLossSie
    const n2 = nRe * nRe + nIm * nIm
    z[0] = (isChoke ? fixed.chokeOhm : fixed.dcrOhm) + (x * nIm) / n2
    z[1] = (x * nRe) / n2
    z[2] = nRe
    z[3] = nIm
    return
  }
  const half = of === 'cross' ? 0.5 : 1
  const y = w * value
  const nRe = floored(1 - y * fixed.eslOhm * half)
  const nIm = y * (of === 'damper' ? (values[ohmPart] as number) : fixed.esrOhm * half)
  const n2 = nRe * nRe + nIm * nIm
  z[0] = (y * nIm) / n2
  z[1] = (y * nRe) / n2
  z[2] = nRe
  z[3] = nIm
}

/** A, B, C, D of the filter against the plate and Πq, into `chain`. */
function chainInto(demand: OnPlate, values: ArrayLike<number>): void {
  chain.fill(0)
  chain[0] = 1
  chain[6] = 1
  chain[8] = 1
  for (const stage of demand.wiring.stages) {
    stageInto(stage, demand, values)
    // in the line: B += A·Z, D += C·Z; to the plate: A += B·Y, C += D·Y
    const from = stage.isSeries ? 0 : 2
    const to = 2 - from
    for (let row = 0; row <= 4; row += 4) {
      const re = chain[row + from] as number
      const im = chain[row + from + 1] as number
      chain[row + to] = (chain[row + to] as number) + re * (z[0] as number) - im * (z[1] as number)
      chain[row + to + 1] = (chain[row + to + 1] as number) + re * (z[1] as number) + im * (z[0] as number)
    }
    const qRe: number = chain[8] as number
    const qIm: number = chain[9] as number
    chain[8] = qRe * (z[2] as number) - qIm * (z[3] as number)
    chain[9] = qRe * (z[3] as number) + qIm * (z[2] as number)
  }
}

/** Writes the five ratios and Δ of one point at `at`. */
export function shareInto(demand: OnPlate, values: ArrayLike<number>, out: Float64Array, at: number): void {
  const { wiring, fixed, w } = demand
  chainInto(demand, values)
  const aRe = chain[0] as number
  const aIm = chain[1] as number
  const bRe = chain[2] as number
  const bIm = chain[3] as number
  const cRe = chain[4] as number
  const cIm = chain[5] as number
  const dRe = chain[6] as number
  const dIm = chain[7] as number
  const bs = wiring.sourceNode < 0 ? 0 : w * (values[wiring.sourceNode] as number)
  const bl = wiring.loadNode < 0 ? 0 : w * (values[wiring.loadNode] as number)
  // 1 + Zs·Ys
  const eRe = 1 - fixed.zsIm * bs
  const eIm = fixed.zsRe * bs
  const e2 = eRe * eRe + eIm * eIm
  const zsRe = (fixed.zsRe * eRe + fixed.zsIm * eIm) / e2
  const zsIm = (fixed.zsIm * eRe - fixed.zsRe * eIm) / e2
  const ylRe = fixed.ylRe
  const ylIm = fixed.ylIm + bl
  // B + Zs·D, then times YL, then 1 + that
  const hRe = bRe + zsRe * dRe - zsIm * dIm
  const hIm = bIm + zsRe * dIm + zsIm * dRe
  const reachRe = hRe * ylRe - hIm * ylIm
  const reachIm = hRe * ylIm + hIm * ylRe
  const nRe = aRe + zsRe * cRe - zsIm * cIm + reachRe
  const nIm = aIm + zsRe * cIm + zsIm * cRe + reachIm
  const n2 = nRe * nRe + nIm * nIm
  // (D − 1)·YL
  const tailRe = (dRe - 1) * ylRe - dIm * ylIm
  const tailIm = (dRe - 1) * ylIm + dIm * ylRe
  const yRe = cRe + tailRe
  const yIm = cIm + tailIm
  const fRe = ((1 + reachRe) * nRe + reachIm * nIm) / n2
  const fIm = (reachIm * nRe - (1 + reachRe) * nIm) / n2
  // volts of the source as the filter meets them: 1/(1 + Zs·Ys)
  const vRe = eRe / e2
  const vIm = -eIm / e2
  const ownRe = (vRe * nRe + vIm * nIm) / n2
  const ownIm = (vIm * nRe - vRe * nIm) / n2
  out[at + ALPHA] = yRe * ownRe - yIm * ownIm
  out[at + ALPHA + 1] = yRe * ownIm + yIm * ownRe
  out[at + BETA] = yRe * fRe - yIm * fIm - tailRe
  out[at + BETA + 1] = yRe * fIm + yIm * fRe - tailIm
  out[at + OWN] = ownRe
  out[at + OWN + 1] = ownIm
  out[at + PLATE] = 1 - fRe
  out[at + PLATE + 1] = -fIm
  // the line without the filter: 1/(1 + Zs·(Ys + YL)) with what it had before
  const bareIm = fixed.ylIm + (wiring.sourceNodeInBare ? bs : 0) + (wiring.loadNodeInBare ? bl : 0)
  const mRe = 1 + fixed.zsRe * fixed.ylRe - fixed.zsIm * bareIm
  const mIm = fixed.zsRe * bareIm + fixed.zsIm * fixed.ylRe
  const m2 = mRe * mRe + mIm * mIm
  out[at + BARE] = mRe / m2
  out[at + BARE + 1] = -mIm / m2
  const enRe = eRe * nRe - eIm * nIm
  const enIm = eRe * nIm + eIm * nRe
  out[at + DELTA] = enRe * (chain[8] as number) - enIm * (chain[9] as number)
  out[at + DELTA + 1] = enRe * (chain[9] as number) + enIm * (chain[8] as number)
}
