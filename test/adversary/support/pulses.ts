/** Pulses by their published formulas, apart from the app's own rows. Volts open circuit, ohms, seconds. */

export type PulseFormula = {
  readonly waveform: string
  readonly level: number | undefined
  readonly openV: number
  readonly ohm: number
  readonly shape: (sec: number, ringHz: number) => number
  /** about the time of the peak, and of half value */
  readonly peakSec: number
  readonly halfSec: number
  readonly ring: { readonly hz: number; readonly q: number; readonly spreadFrac: number } | undefined
}

const twoRates = (k: number, a: number, b: number) => (t: number) => k * (Math.exp(-a * t) - Math.exp(-b * t))

/** N·sin(2πft)·e^(−πft/Q), its first peak 1. */
export const ringing = (q: number) => {
  const angle = Math.atan(2 * q)
  const norm = 1 / (Math.sin(angle) * Math.exp(-angle / (2 * q)))
  return (t: number, hz: number) => norm * Math.sin(2 * Math.PI * hz * t) * Math.exp((-Math.PI * hz * t) / q)
}

const PIN: Readonly<Record<string, readonly (readonly [volts: number, amps: number])[]>> = {
  wf3: [
    [100, 4],
    [250, 10],
    [600, 24],
    [1500, 60],
  ],
  wf4: [
    [50, 10],
    [125, 25],
    [300, 60],
    [750, 150],
  ],
  wf5a: [
    [50, 50],
    [125, 125],
    [300, 300],
  ],
}

/** Pin injection, waveform 3, 4 or 5A of a level from 1. */
export function pinPulse(waveform: 'wf3' | 'wf4' | 'wf5a', level: number): PulseFormula {
  const [openV, amps] = PIN[waveform]?.[level - 1] ?? [50, 10]
  const base = { waveform, level, openV, ohm: openV / amps }
  if (waveform === 'wf4')
    return { ...base, shape: twoRates(1.09405, 11354, 647265), peakSec: 6.4e-6, halfSec: 69e-6, ring: undefined }
  if (waveform === 'wf5a')
    return { ...base, shape: twoRates(2.33354, 12632.6, 43604.6), peakSec: 40e-6, halfSec: 120e-6, ring: undefined }
  return {
    ...base,
    shape: ringing(43.68),
    peakSec: 0.25e-6,
    halfSec: 10e-6,
    ring: { hz: 1e6, q: 43.68, spreadFrac: 0.2 },
  }
}

/** 5/50 ns into 50 Ω. */
export const burstPulse = (level: number): PulseFormula => ({
  waveform: 'iec-burst',
  level,
  openV: [500, 1000, 2000, 4000][level - 1] ?? 500,
  ohm: 50,
  shape: (t) => {
    const x = (t / 3.5e-9) ** 1.8
    return ((1.4021818941704853 / 1.0026671667519884) * x * Math.exp(-t / 51e-9)) / (1 + x)
  },
  peakSec: 8e-9,
  halfSec: 50e-9,
  ring: undefined,
})

/** 1.2/50 µs through an impedance in Ω. */
export const combinationPulse = (level: number, ohm: number): PulseFormula => ({
  waveform: 'iec-1.2-50',
  level,
  openV: [500, 1000, 2000, 4000][level - 1] ?? 500,
  ohm,
  shape: (t) => 1.037 * (1 - Math.exp(-t / 0.407e-6)) * Math.exp(-t / 68.22e-6),
  peakSec: 2.1e-6,
  halfSec: 50e-6,
  ring: undefined,
})
