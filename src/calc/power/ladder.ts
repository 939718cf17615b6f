/** The volts of a power line in order: working peak, inrush overshoot, and what the capacitor is tested to. */
import { formatQuantity } from '../quantity/format.ts'
import type { Basis, LadderRung, Picture, Rung } from '../types.ts'

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

/** The ladder picture, with every rung that comes above one that holds named as a fault. */
export function powerLadder(rungs: readonly Rung[]): Extract<Picture, { is: 'ladder' }> {
  const holds = rungs.filter((rung) => rung.side === 'holds')
  const faults: string[] = []
  const drawn = rungs.map((rung): LadderRung => {
    const { id, label, side, minV, maxV } = rung
    const below = side === 'comes' ? holds.find((held) => maxV > held.minV) : undefined
    if (below === undefined) return { id, label, side, minV, maxV }
    faults.push(
      `${label} ${formatQuantity(maxV, 'voltage', 4)} is above ${below.label.toLowerCase()} ${formatQuantity(below.minV, 'voltage', 4)}.`,
    )
    return { id, label, side, minV, maxV, exceeds: below.id }
  })
  return { is: 'ladder', title: 'Volts on this line', rungs: drawn, faults }
}
