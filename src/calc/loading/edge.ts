/** Edge times of one pole, and how much capacitance an edge budget leaves. SI units; textbook one-pole relations. */

/** ln 9: a one-pole edge takes ln 9 · R · C from 10 to 90 %. */
export const LN_9 = Math.log(9)

/** 10–90 % edge in s that a capacitance alone makes: ln 9 · R · C. Ohm and farads ≥ 0. */
export const riseSec = ({ ohm, farads }: { ohm: number; farads: number }): number => LN_9 * ohm * farads

/** Edge in s of stages in a row: the root of the sum of squares. Good to about 10 % for one-pole stages. */
export const combinedEdgeSec = (stagesSec: readonly number[]): number => Math.hypot(...stagesSec)

/** Capacitance in F whose own 10–90 % edge takes `edgeSec`: t / (ln 9 · R). Ohm > 0. */
export const faradsForRise = ({ ohm, edgeSec }: { ohm: number; edgeSec: number }): number => edgeSec / (LN_9 * ohm)

/**
 * Capacitance in F that slows a driver's edge to the slowest permitted one: √(t_max² − t0²) / (ln 9 · R).
 * 0 when the driver already uses the whole time. Seconds ≥ 0, ohm > 0.
 */
export function faradsForSlowest(edge: { ohm: number; driverEdgeSec: number; slowestEdgeSec: number }): number {
  const { ohm, driverEdgeSec, slowestEdgeSec } = edge
  if (driverEdgeSec >= slowestEdgeSec) return 0
  const leftSec = Math.sqrt((slowestEdgeSec - driverEdgeSec) * (slowestEdgeSec + driverEdgeSec))
  return faradsForRise({ ohm, edgeSec: leftSec })
}

/** 10–90 % edge in s of a series inductance between two resistances: ln 9 · L / (Rs + Rl). The sum > 0, may be Infinity. */
export const inductorRiseSec = (part: { henries: number; loopOhm: number }): number =>
  (LN_9 * part.henries) / part.loopOhm
