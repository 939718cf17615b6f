/** A capacitor stepped onto a supply through wiring resistance and inductance: peak current and peak voltage. Series RLC, derived. */

/** `ohm` and `henries` are the wiring's; 0 = none. Not both 0: then the current has no bound here. */
export type Inrush = { readonly stepV: number; readonly farads: number; readonly ohm: number; readonly henries: number }

export type InrushPeak = {
  readonly peakA: number
  readonly peakV: number
  readonly damping: 'none' | 'light' | 'critical' | 'heavy' | 'no-inductance'
}

/** Closer to critical than this share of a², the two roots are taken as one. */
const CRITICAL_SHARE = 1e-9

/**
 * Peak current in A and peak capacitor voltage in V after a step. a = R/2L, ω0² = 1/LC:
 * light (a < ω0): I = V/(ωd·L)·e^(−a·t)·sin(ωd·t), t = atan(ωd/a)/ωd; V·(1 + e^(−π·a/ωd)).
 * critical: 2V/(e·R). heavy: difference of two exponentials. No L: V/R. No R: V·√(C/L), 2V.
 * Throws RangeError when R and L are both 0.
 */
export function inrushPeak(step: Inrush): InrushPeak {
  const { stepV, farads, ohm, henries } = step
  if (ohm === 0 && henries === 0)
    throw new RangeError('Wiring without resistance and inductance does not bound the inrush.')
  if (farads === 0) return { peakA: 0, peakV: stepV, damping: 'none' }
  if (henries === 0) return { peakA: stepV / ohm, peakV: stepV, damping: 'no-inductance' }
  const lossless = stepV * Math.sqrt(farads / henries)
  if (ohm === 0) return { peakA: lossless, peakV: 2 * stepV, damping: 'none' }
  // ζ = R/2·√(C/L) keeps a and ω0 out of overflow for extreme parts.
  const zeta = (ohm / 2) * Math.sqrt(farads / henries)
  if (Math.abs(zeta - 1) <= CRITICAL_SHARE)
    return { peakA: (2 * stepV) / (Math.E * ohm), peakV: stepV, damping: 'critical' }
  return zeta < 1 ? light(stepV, lossless, zeta) : heavy(stepV, ohm, zeta)
}

function light(stepV: number, losslessA: number, zeta: number): InrushPeak {
  const root = Math.sqrt((1 - zeta) * (1 + zeta))
  // At the peak sin(ωd·t) = ωd/ω0, so the current is the lossless bound times e^(−a·t).
  const peakA = losslessA * Math.exp((-zeta / root) * Math.atan2(root, zeta))
  return { peakA, peakV: stepV * (1 + Math.exp((-Math.PI * zeta) / root)), damping: 'light' }
}

function heavy(stepV: number, ohm: number, zeta: number): InrushPeak {
  const root = Math.sqrt((zeta - 1) * (zeta + 1))
  const fast = zeta + root
  const slow = 1 / fast
  // Roots in units of ω0; the current peaks where both exponentials fall at the same rate.
  const at = Math.log(fast / slow) / (fast - slow)
  const shape = (Math.exp(-slow * at) - Math.exp(-fast * at)) / (fast - slow)
  return { peakA: (stepV * 2 * zeta * shape) / ohm, peakV: stepV, damping: 'heavy' }
}
