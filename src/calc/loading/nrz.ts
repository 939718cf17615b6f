/**
 * Eye and jitter of an NRZ signal behind one pole, threshold at mid swing. Not for return to zero, Manchester,
 * ARINC 429, CAN, MLT-3 or PAM-5. Derived: the worst patterns are a lone bit and a lone bit after a long run.
 */

/** Inner eye as a share of the full swing, 1 − 2·e^(−T/τ); 0 when it is shut. Seconds > 0, tauSec ≥ 0. */
export function innerEyeFrac({ bitSec, tauSec }: { bitSec: number; tauSec: number }): number {
  if (tauSec === 0) return 1
  return Math.max(0, 1 - 2 * Math.exp(-bitSec / tauSec))
}

/**
 * Data-dependent jitter, peak to peak, as a share of the bit: −(τ/T)·ln(1 − e^(−T/τ)).
 * Undefined when the eye is shut: the pattern no longer crosses the threshold.
 */
export function jitterFrac({ bitSec, tauSec }: { bitSec: number; tauSec: number }): number | undefined {
  if (tauSec === 0) return 0
  const bitsPerTau = bitSec / tauSec
  if (bitsPerTau <= Math.LN2) return undefined
  return -Math.log(-Math.expm1(-bitsPerTau)) / bitsPerTau
}
