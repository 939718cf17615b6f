/** A pulse of the user's own: from its time to peak and its time to half value to a shape. */
import type { ShapeSpec } from '../../reference/waveforms.ts'

/** Smallest half/peak ratio of a double exponential: root of x·e^(1−x) = ½ (a = b). */
export const LEAST_DOUBLE_RATIO = 2.6783469900166605
/** Narrower than this is not a single pulse any more. */
export const LEAST_RATIO = 1.1

/** Time to half value over time to peak, from the ratio of the two rates b/a. */
function ratioOf(rates: number): number {
  const peak = Math.log(rates) / (rates - 1)
  const top = Math.exp(-peak) - Math.exp(-rates * peak)
  let [low, high] = [peak, peak + 2]
  const value = (x: number) => (Math.exp(-x) - Math.exp(-rates * x)) / top
  while (value(high) > 0.5) high += 2
  for (let i = 0; i < 70; i++) {
    const middle = (low + high) / 2
    if (value(middle) > 0.5) low = middle
    else high = middle
  }
  return low / peak
}

/**
 * Shape with those times, peak 1: k·(e^(−a·t) − e^(−b·t)) where half/peak is above 2.678, else (x·e^(1−x))^n.
 * `peakSec`, `halfSec` in s, both from zero. Throws RangeError below a ratio of 1.1. Source: derived.
 */
export function fitPulse({ peakSec, halfSec }: { peakSec: number; halfSec: number }): ShapeSpec {
  const ratio = halfSec / peakSec
  if (!(ratio >= LEAST_RATIO))
    throw new RangeError(`half value at ${halfSec} s must come well after the peak at ${peakSec} s`)
  if (ratio < LEAST_DOUBLE_RATIO * 1.001)
    return { form: 'gamma', peakSec, power: Math.log(0.5) / (Math.log(ratio) + 1 - ratio) }
  let [low, high] = [23, 60]
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2
    if (ratioOf(1 + Math.exp(middle - 30)) < ratio) low = middle
    else high = middle
  }
  const rates = 1 + Math.exp(low - 30)
  const peakAt = Math.log(rates) / (rates - 1)
  const aPerSec = peakAt / peakSec
  const k = 1 / (Math.exp(-peakAt) - Math.exp(-rates * peakAt))
  return { form: 'double-exponential', k, aPerSec, bPerSec: rates * aPerSec }
}
