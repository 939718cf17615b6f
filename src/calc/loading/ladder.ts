/** The signal's way through coils and capacitors, element by element: its loss, its phase, what its port reflects. Derived. */

/** A coil in series, or a capacitor across, in the order the signal meets them. */
export type Element = { readonly henries: number } | { readonly farads: number }

/** A ladder between its ends; `loadOhm` Infinity = a high-impedance receiver. */
export type SignalLadder = {
  readonly elements: readonly Element[]
  readonly sourceOhm: number
  readonly loadOhm: number
}

/** Voltage and current at the front of the ladder for 1 V at the load: [Re V, Im V, Re I, Im I]. */
function front({ elements, loadOhm }: SignalLadder, hz: number): readonly [number, number, number, number] {
  const omega = 2 * Math.PI * hz
  let [vRe, vIm, iRe, iIm] = [1, 0, 1 / loadOhm, 0]
  for (let i = elements.length - 1; i >= 0; i--) {
    const element = elements[i] as Element
    if ('henries' in element) {
      const x = omega * element.henries
      vRe -= x * iIm
      vIm += x * iRe
    } else {
      const b = omega * element.farads
      iRe -= b * vIm
      iIm += b * vRe
    }
  }
  return [vRe, vIm, iRe, iIm]
}

/** What the source must be against what it must be with nothing in between, as a complex ratio [Re, Im]. */
function ratio(ladder: SignalLadder, hz: number): readonly [number, number] {
  const [vRe, vIm, iRe, iIm] = front(ladder, hz)
  const { sourceOhm, loadOhm } = ladder
  const bare = 1 + sourceOhm / loadOhm
  return [(vRe + sourceOhm * iRe) / bare, (vIm + sourceOhm * iIm) / bare]
}

/** Loss in dB at `hz`; negative where the ladder amplifies. */
export const ladderLossDb = (ladder: SignalLadder, hz: number): number =>
  20 * Math.log10(Math.hypot(...ratio(ladder, hz)))

/** Phase lag in degrees at `hz`, −180 to 180. */
export function ladderPhaseDeg(ladder: SignalLadder, hz: number): number {
  const [re, im] = ratio(ladder, hz)
  return (Math.atan2(im, re) * 180) / Math.PI
}

/** Magnitude in Ω of what a tester sees looking in at the front; Infinity where no current flows. */
export function ladderOhm(ladder: SignalLadder, hz: number): number {
  const [vRe, vIm, iRe, iIm] = front(ladder, hz)
  return Math.hypot(vRe, vIm) / Math.hypot(iRe, iIm)
}

/** Return loss in dB at `hz` looking in at the front, against `referenceOhm`: −20·log10|(V − Z0·I)/(V + Z0·I)|. */
export function ladderReturnLossDb(ladder: SignalLadder, referenceOhm: number, hz: number): number {
  const [vRe, vIm, iRe, iIm] = front(ladder, hz)
  const back = Math.hypot(vRe - referenceOhm * iRe, vIm - referenceOhm * iIm)
  const there = Math.hypot(vRe + referenceOhm * iRe, vIm + referenceOhm * iIm)
  return back === 0 ? Number.POSITIVE_INFINITY : 20 * Math.log10(there / back)
}

const GAIN_POINTS_PER_DECADE = 24

/** Largest gain in dB of a ladder over four decades around a frequency, and where; 0 dB where it never amplifies. */
export function ladderPeak(ladder: SignalLadder, aroundHz: number): { readonly gainDb: number; readonly hz: number } {
  let worst = { gainDb: 0, hz: aroundHz }
  for (let i = -2 * GAIN_POINTS_PER_DECADE; i <= 2 * GAIN_POINTS_PER_DECADE; i++) {
    const hz = aroundHz * 10 ** (i / GAIN_POINTS_PER_DECADE)
    const gainDb = -ladderLossDb(ladder, hz)
    if (gainDb > worst.gainDb) worst = { gainDb, hz }
  }
  return worst
}
