/** The box of tolerances a surge is judged over: capacitors, coils, the suppressor's own capacitance, the ring's frequency. */
import { CAPACITANCE_SHARE } from '../../reference/suppressors.ts'
import { leastShare, mostShare, type Spread } from '../bounds/worst-case.ts'
import { atRingHz } from './pulse.ts'
import type { SurgeSetup } from './setup.ts'

/** What can lie elsewhere than entered. Farads and henries in service, as the surge meets them. */
export type AxisKey =
  | 'capacitanceF'
  | 'capacitance2F'
  | 'inductanceH'
  | 'inductance2H'
  | 'suppressorF'
  | 'ringHz'
  | 'lineH'

export type Axis = { readonly key: AxisKey; readonly low: number; readonly high: number; readonly entered: number }

/** One place in the box: a value for each axis. */
export type Place = Readonly<Partial<Record<AxisKey, number>>>

const axis = (key: AxisKey, entered: number, low: number, high: number): readonly Axis[] =>
  entered > 0 && high > low * (1 + 1e-9) ? [{ key, entered, low, high }] : []

/**
 * The axes that have an extent. C from k_low to k_high of its mark; L from its least value, which is entered, to
 * L·(1 + tol)/(1 − tol); the suppressor from 30 to 100 % of its 0 V capacitance; a ring over what its document allows.
 */
export function axesOf({ filter, met, pulse }: SurgeSetup, spread: Spread): readonly Axis[] {
  const [low, high] = [leastShare(spread), mostShare(spread)]
  const { lowFrac, highFrac } = spread.tolerance
  const mostL = (1 + highFrac) / (1 - lowFrac)
  const farads = (key: AxisKey, f: number) => axis(key, f, f * low, f * high)
  const henries = (key: AxisKey, h: number) => axis(key, h, h, h * mostL)
  const own = met?.capacitanceF ?? 0
  const { ring, ringRangeHz } = pulse
  return [
    ...farads('capacitanceF', filter.capacitanceF),
    ...farads('capacitance2F', filter.capacitance2F),
    ...henries('inductanceH', filter.inductanceH),
    ...henries('inductance2H', filter.inductance2H),
    ...axis('suppressorF', own, own * CAPACITANCE_SHARE.least, own * CAPACITANCE_SHARE.most),
    ...(ring && ringRangeHz ? axis('ringHz', ring.hz, ringRangeHz[0], ringRangeHz[1]) : []),
  ]
}

/** The same surge with its parts and its frequency at a place of the box. */
export function setupAt(setup: SurgeSetup, place: Place): SurgeSetup {
  const { filter, met, pulse } = setup
  return {
    ...setup,
    pulse: place.ringHz === undefined ? pulse : atRingHz(pulse, place.ringHz),
    met: met && { ...met, capacitanceF: place.suppressorF ?? met.capacitanceF },
    lineH: place.lineH ?? setup.lineH,
    filter: {
      ...filter,
      capacitanceF: place.capacitanceF ?? filter.capacitanceF,
      capacitance2F: place.capacitance2F ?? filter.capacitance2F,
      inductanceH: place.inductanceH ?? filter.inductanceH,
      inductance2H: place.inductance2H ?? filter.inductance2H,
    },
  }
}

/** Every corner: each axis at an end. */
export function cornersOf(axes: readonly Axis[]): readonly Place[] {
  return axes.reduce<readonly Place[]>(
    (places, { key, low, high }) =>
      places.flatMap((place) => [
        { ...place, [key]: low },
        { ...place, [key]: high },
      ]),
    [{}],
  )
}

/** Where a share of an axis lies, from 0 at its low end to 1 at its high one, in equal ratios. */
export const alongAxis = ({ low, high }: Axis, share: number): number =>
  share <= 0 ? low : share >= 1 ? high : low * (high / low) ** share

/** The share at which a value lies. */
export const shareOf = ({ low, high }: Axis, value: number): number => Math.log(value / low) / Math.log(high / low)
