/** Impedance of an input at the noise frequency, and its class. */
import type { NoiseInput, Span } from '../../reference/noise-inputs.ts'

/** |R ∥ C| = R / √(1 + (2π·f·R·C)²), in ohms; R in ohms above 0, C in farads, f in hertz. Elementary circuit theory. */
export function parallelOhm({
  ohm,
  farad,
  hz,
}: {
  readonly ohm: number
  readonly farad: number
  readonly hz: number
}): number {
  return ohm / Math.hypot(1, 2 * Math.PI * hz * ohm * farad)
}

/** Least and most of |R ∥ C| over the spans of a row, between two frequencies in hertz. */
export const inputSpanOhm = ({ ohm, farad }: Pick<NoiseInput, 'ohm' | 'farad'>, hz: Span): Span => ({
  least: parallelOhm({ ohm: ohm.least, farad: farad.most, hz: hz.most }),
  most: parallelOhm({ ohm: ohm.most, farad: farad.least, hz: hz.least }),
})

export type InputClass = 'low' | 'middle' | 'high'

/** Below 30 Ω a capacitor has nothing to work against; above 300 Ω an inductor has nothing. Practice. */
export function classOf(ohm: number): InputClass {
  if (ohm < 30) return 'low'
  return ohm > 300 ? 'high' : 'middle'
}
