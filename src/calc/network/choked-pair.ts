/** A pair with a choke before its capacitors to chassis: how much common mode becomes signal. */
import { conversionRatio, type PairCircuit, worstConversionHz, worstConversionRatio } from '../pair.ts'
import type { Choke } from './choke.ts'

export type ChokedPair = PairCircuit & { readonly choke?: Choke | undefined }

/** Nothing is converted where both capacitors and both windings are equal. */
export const isBalanced = ({ legF, leg2F, choke }: ChokedPair): boolean =>
  legF === leg2F && (choke === undefined || choke.mismatchFrac === 0 || legF === 0)

type Coupled = { readonly first: number; readonly second: number; readonly mutual: number; readonly det: number }

/** A denominator that rounds to nothing must not divide by it. */
const LEAST = 1e-300

/** L1, L2, M and L1·L2 − M² in H and H². */
function coupled({ windingH, leakageH, mismatchFrac }: Choke): Coupled {
  const first = windingH * (1 + mismatchFrac / 2)
  const second = windingH * (1 - mismatchFrac / 2)
  const mutual = windingH - leakageH / 2
  return { first, second, mutual, det: first * second - mutual ** 2 }
}

/**
 * |Vdm/Vcm| with resistance and winding in each leg, a capacitor behind it and an open load, b1, b2 = ω·C1, ω·C2:
 *   N = (Y11 − Y12)·b1 − (Y22 − Y12)·b2 + jRΔ·(b2 − b1)
 *   D = Δ(1 + jRb1)(1 + jRb2) − (1 + jRb2)·Y11·b1 − (1 + jRb1)·Y22·b2 + b1·b2·ω²·det L
 *   Y = ω·(L − ω²Ca·det L), Δ = 1 − ω²Ca·(L1 + L2) + (ω²Ca)²·det L, Ca across each winding
 * Exact; without a choke as for resistances alone. Derived, checked against a nodal solution.
 */
export function chokedConversionRatio(pair: ChokedPair, hz: number): number {
  const { choke, legF, leg2F, legOhm } = pair
  if (choke === undefined) return conversionRatio(pair, hz)
  const w = 2 * Math.PI * hz
  const { first, second, mutual, det } = coupled(choke)
  const across = w * w * choke.acrossF
  const ohm = legOhm + choke.windingOhm
  const [b1, b2] = [w * legF, w * leg2F]
  const delta = 1 - across * (first + second) + across * across * det
  const y11 = w * (first - across * det)
  const y22 = w * (second - across * det)
  const y12 = w * mutual
  const numberRe = (y11 - y12) * b1 - (y22 - y12) * b2
  const numberIm = ohm * delta * (b2 - b1)
  const re = delta * (1 - ohm * b1 * ohm * b2) - y11 * b1 - y22 * b2 + b1 * b2 * w * w * det
  const im = ohm * (delta * (b1 + b2) - b1 * b2 * (y11 + y22))
  return Math.hypot(numberRe, numberIm) / Math.max(Math.hypot(re, im), LEAST)
}

/**
 * Resonances in Hz of the windings with the capacitors, losses apart, ω² = t:
 * 1 − t·(L1·(C1 + Ca) + L2·(C2 + Ca)) + t²·det L·(C1 + Ca)(C2 + Ca) = 0.
 */
export function resonancesHz({ choke, legF, leg2F }: ChokedPair): readonly number[] {
  if (choke === undefined) return []
  const { first, second, det } = coupled(choke)
  const [c1, c2] = [legF + choke.acrossF, leg2F + choke.acrossF]
  const sum = first * c1 + second * c2
  const product = det * c1 * c2
  const root = Math.sqrt(Math.max(0, sum * sum - 4 * product))
  const roots = [2 / (sum + root), ...(product > 0 ? [(sum + root) / (2 * product)] : [])]
  return roots.map((t) => Math.sqrt(t) / (2 * Math.PI)).filter((hz) => Number.isFinite(hz) && hz > 0)
}

const SEARCH_FROM_HZ = 10
const SEARCH_TO_HZ = 1e10
const POINTS_PER_DECADE = 96
const REFINE = 80
const GOLDEN = (Math.sqrt(5) - 1) / 2

export type WorstConversion = { readonly ratio: number; readonly hz: number | undefined }

/**
 * Largest conversion and where: in closed form without a choke; with one searched from 10 Hz to 10 GHz and at each
 * resonance, however sharp.
 */
export function worstChokedConversion(pair: ChokedPair): WorstConversion {
  if (pair.choke === undefined) return { ratio: worstConversionRatio(pair), hz: worstConversionHz(pair) }
  const steps = POINTS_PER_DECADE * Math.log10(SEARCH_TO_HZ / SEARCH_FROM_HZ)
  const grid = Array.from({ length: steps + 1 }, (_, i) => SEARCH_FROM_HZ * 10 ** (i / POINTS_PER_DECADE))
  const top = grid.reduce((a, b) => (chokedConversionRatio(pair, b) > chokedConversionRatio(pair, a) ? b : a))
  return [top, ...resonancesHz(pair)].map((hz) => highestNear(pair, hz)).reduce((a, b) => (b.ratio > a.ratio ? b : a))
}

/** Golden section one step of the grid to either side, the middle included. */
function highestNear(pair: ChokedPair, hz: number): { readonly ratio: number; readonly hz: number } {
  const step = 10 ** (1 / POINTS_PER_DECADE)
  let best = { ratio: chokedConversionRatio(pair, hz), hz }
  for (const [from, to] of [
    [hz / step, hz],
    [hz, hz * step],
  ] as const) {
    let [low, high] = [from, to]
    for (let k = 0; k < REFINE; k++) {
      const p = high - GOLDEN * (high - low)
      const q = low + GOLDEN * (high - low)
      const [yp, yq] = [chokedConversionRatio(pair, p), chokedConversionRatio(pair, q)]
      if (yp > best.ratio) best = { ratio: yp, hz: p }
      if (yq > best.ratio) best = { ratio: yq, hz: q }
      if (yp > yq) high = q
      else low = p
    }
  }
  return best
}
