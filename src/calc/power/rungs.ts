/** The volts of a power line in order: working peak, inrush overshoot, and what the capacitor is tested to. */
import type { Basis, Rung } from '../types.ts'

export type PowerVolts = {
  readonly peakV: number
  readonly overshootV: number | undefined
  readonly testV: number
  readonly basis: { readonly peak: Basis; readonly overshoot: Basis; readonly test: Basis }
}

/** Rungs in rising order of what they are, not of their volts; a missing overshoot has no rung. */
export function powerRungs({ peakV, overshootV, testV, basis }: PowerVolts): readonly Rung[] {
  const rung = (id: string, role: Rung['role'], label: string, side: Rung['side'], volts: number, of: Basis): Rung => ({
    id,
    role,
    label,
    side,
    minV: volts,
    maxV: volts,
    basis: of,
  })
  return [
    rung('power-working-peak', 'working-peak', 'Working peak', 'comes', peakV, basis.peak),
    ...(overshootV === undefined
      ? []
      : [rung('power-inrush', 'inrush', 'Inrush peak on the capacitor', 'comes', overshootV, basis.overshoot)]),
    rung('power-capacitor-withstand', 'capacitor-withstand', 'Capacitor withstand test', 'holds', testV, basis.test),
  ]
}
