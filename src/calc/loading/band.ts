/** Loss and phase of a shunt capacitance behind a resistance, and the capacitance a budget leaves. */

type AtFrequency = { readonly ohm: number; readonly farads: number; readonly hz: number }

const product = ({ ohm, farads, hz }: AtFrequency): number => 2 * Math.PI * hz * ohm * farads

/** Loss in dB: 10·log10(1 + (2π·f·R·C)²). In a matched line R = Z0/2. All ≥ 0. */
export const bandLossDb = (at: AtFrequency): number => 10 * Math.log10(1 + product(at) ** 2)

/** Phase lag in degrees: atan(2π·f·R·C). All ≥ 0. */
export const phaseLagDeg = (at: AtFrequency): number => (Math.atan(product(at)) * 180) / Math.PI

/** Capacitance in F that costs `db` at `hz`: √(10^(dB/10) − 1) / (2π·f·R). Ohm, hz > 0. */
export const faradsForLoss = ({ ohm, db, hz }: { ohm: number; db: number; hz: number }): number =>
  Math.sqrt(10 ** (db / 10) - 1) / (2 * Math.PI * hz * ohm)

/** Capacitance in F that turns the phase by `deg` at `hz`: tan φ / (2π·f·R). 0 ≤ deg < 90; ohm, hz > 0. */
export const faradsForPhase = ({ ohm, deg, hz }: { ohm: number; deg: number; hz: number }): number =>
  Math.tan((deg * Math.PI) / 180) / (2 * Math.PI * hz * ohm)
