/** The signal's way through coils and capacitors, element by element: its loss, its phase, what its port reflects. Derived. */

/** What a coil has beside its inductance: its winding, and capacitance and loss across it; Infinity = no loss. */
export type CoilOwn = {
  readonly dcrOhm: number
  readonly parallelF: number
  readonly parallelOhm: number
  /** a bead instead: R + jX in Ω at a frequency, for the inductance that stands for it */
  readonly bead?: (henries: number, hz: number) => readonly [re: number, im: number]
}

export const IDEAL_COIL: CoilOwn = { dcrOhm: 0, parallelF: 0, parallelOhm: Number.POSITIVE_INFINITY }

/** A coil in series, or a capacitor across (behind a resistor: a damper), in the order the signal meets them. */
export type Element = ({ readonly henries: number } & CoilOwn) | { readonly farads: number; readonly ohm?: number }

/** A ladder between its ends; `loadOhm` Infinity = a high-impedance receiver. */
export type SignalLadder = {
  readonly elements: readonly Element[]
  readonly sourceOhm: number
  readonly loadOhm: number
}

/** Far above any line, where capacitance and inductance of a coil without loss cancel. */
const MOST_OHM = 1e15
const CANCELLED = 1e-24

/** Impedance in Ω of a coil at ω: R + jωL/(1 − ω²LC + jωL/Rp). */
function coilOhm(
  { henries, dcrOhm, parallelF, parallelOhm, bead }: { readonly henries: number } & CoilOwn,
  omega: number,
): readonly [number, number] {
  if (bead !== undefined) return bead(henries, omega / (2 * Math.PI))
  const x = omega * henries
  const dRe = 1 - omega * parallelF * x
  const dIm = x / parallelOhm
  const square = dRe * dRe + dIm * dIm
  return square < CANCELLED ? [MOST_OHM, 0] : [dcrOhm + (x * dIm) / square, (x * dRe) / square]
}

/** Voltage and current at the front of the ladder for 1 V at the load, of the last call: no answer allocates. */
let vRe = 1
let vIm = 0
let iRe = 0
let iIm = 0

function toFront({ elements, loadOhm }: SignalLadder, hz: number): void {
  const omega = 2 * Math.PI * hz
  vRe = 1
  vIm = 0
  iRe = 1 / loadOhm
  iIm = 0
  for (let i = elements.length - 1; i >= 0; i--) {
    const element = elements[i] as Element
    if ('henries' in element) {
      const [zRe, zIm] = coilOhm(element, omega)
      vRe += zRe * iRe - zIm * iIm
      vIm += zRe * iIm + zIm * iRe
    } else {
      // Y = jb/(1 + jbR)
      const b = omega * element.farads
      const turn = b * (element.ohm ?? 0)
      const yIm = b / (1 + turn * turn)
      const yRe = turn * yIm
      iRe += yRe * vRe - yIm * vIm
      iIm += yRe * vIm + yIm * vRe
    }
  }
}

/** What the source must be for 1 V at the load, of the last call. */
let sRe = 1
let sIm = 0

function toSource(ladder: SignalLadder, hz: number): void {
  toFront(ladder, hz)
  sRe = vRe + ladder.sourceOhm * iRe
  sIm = vIm + ladder.sourceOhm * iIm
}

/** Square of what the source must be against what it must be with nothing in between. */
function lossSquare(ladder: SignalLadder, hz: number): number {
  toSource(ladder, hz)
  return (sRe * sRe + sIm * sIm) / (1 + ladder.sourceOhm / ladder.loadOhm) ** 2
}

/** Loss in dB at `hz`; negative where the ladder amplifies. */
export const ladderLossDb = (ladder: SignalLadder, hz: number): number => 10 * Math.log10(lossSquare(ladder, hz))

/** Phase lag in degrees at `hz`, −180 to 180. */
export function ladderPhaseDeg(ladder: SignalLadder, hz: number): number {
  toSource(ladder, hz)
  return (Math.atan2(sIm, sRe) * 180) / Math.PI
}

/** Magnitude in Ω of what a tester sees looking in at the front; Infinity where no current flows. */
export function ladderOhm(ladder: SignalLadder, hz: number): number {
  toFront(ladder, hz)
  return Math.hypot(vRe, vIm) / Math.hypot(iRe, iIm)
}

/** Return loss in dB at `hz` looking in at the front, against `referenceOhm`: −20·log10|(V − Z0·I)/(V + Z0·I)|. */
export function ladderReturnLossDb(ladder: SignalLadder, referenceOhm: number, hz: number): number {
  toFront(ladder, hz)
  const [bRe, bIm] = [vRe - referenceOhm * iRe, vIm - referenceOhm * iIm]
  const [tRe, tIm] = [vRe + referenceOhm * iRe, vIm + referenceOhm * iIm]
  const back = bRe * bRe + bIm * bIm
  return back === 0 ? Number.POSITIVE_INFINITY : 10 * Math.log10((tRe * tRe + tIm * tIm) / back)
}

const GAIN_POINTS_PER_DECADE = 24
/** Four decades, the middle one being 1. */
const GAIN_GRID: readonly number[] = Array.from(
  { length: 4 * GAIN_POINTS_PER_DECADE + 1 },
  (_, i) => 10 ** (i / GAIN_POINTS_PER_DECADE - 2),
)

/** Halvings of a step of the grid, a tenth wide: to less than a billionth of the frequency. */
const HALVINGS = 28

/**
 * Largest gain in dB of a ladder over four decades around a frequency, and where; 0 dB where it never amplifies. A sharp
 * resonance lies between two points of the grid: what the source drives turns through zero there, in one part or the other.
 */
export function ladderPeak(ladder: SignalLadder, aroundHz: number): { readonly gainDb: number; readonly hz: number } {
  let least = 1
  let atHz = aroundHz
  const tryAt = (hz: number): void => {
    const square = lossSquare(ladder, hz)
    if (square >= least) return
    least = square
    atHz = hz
  }
  let beforeHz = aroundHz
  let [wasRe, wasIm] = [0, 0]
  for (const ratio of GAIN_GRID) {
    const hz = aroundHz * ratio
    tryAt(hz)
    const [re, im] = [Math.sign(sRe), Math.sign(sIm)]
    if (wasRe * re < 0) tryAt(zeroBetween(ladder, beforeHz, hz, realPart))
    if (wasIm * im < 0) tryAt(zeroBetween(ladder, beforeHz, hz, imaginaryPart))
    beforeHz = hz
    wasRe = re
    wasIm = im
  }
  return { gainDb: -10 * Math.log10(least), hz: atHz }
}

const realPart = (): number => sRe
const imaginaryPart = (): number => sIm

function zeroBetween(ladder: SignalLadder, fromHz: number, toHz: number, part: () => number): number {
  let [low, high] = [fromHz, toHz]
  toSource(ladder, low)
  const isNegative = part() < 0
  for (let k = 0; k < HALVINGS; k++) {
    const middle = Math.sqrt(low * high)
    toSource(ladder, middle)
    if (part() < 0 === isNegative) low = middle
    else high = middle
  }
  return Math.sqrt(low * high)
}
