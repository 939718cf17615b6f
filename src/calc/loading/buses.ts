/** Capacitance budgets of buses whose edge is not a driver's: I²C, CAN, RS-232, and a terminal's least impedance. */

/** ln(0.7/0.3): a one-pole rise takes this many R·C from 30 to 70 %. */
export const LN_7_3 = Math.log(0.7 / 0.3)

/** ln 4: a recessive CAN edge takes this many R·C from 2.0 to 0.5 V. */
export const LN_4 = Math.log(4)

/** I²C rise time in s, 30–70 %, through the pull-up: 0.8473·R·C. */
export const i2cRiseSec = ({ pullUpOhm, farads }: { pullUpOhm: number; farads: number }): number =>
  LN_7_3 * pullUpOhm * farads

/** Most I²C bus capacitance in F for a rise time: t / (0.8473·R). pullUpOhm > 0. */
export const i2cFarads = ({ pullUpOhm, riseSec }: { pullUpOhm: number; riseSec: number }): number =>
  riseSec / (LN_7_3 * pullUpOhm)

/** CAN recessive decay in s, 2.0 → 0.5 V: ln 4·R·C with R both terminations in parallel (60 Ω). */
export const canDecaySec = ({ ohm, farads }: { ohm: number; farads: number }): number => LN_4 * ohm * farads

/** Most CAN bus capacitance in F (lumps only) for a decay time: t / (ln 4·R). ohm > 0. */
export const canFarads = ({ ohm, decaySec }: { ohm: number; decaySec: number }): number => decaySec / (LN_4 * ohm)

/** Time in s a current-limited driver takes to cross a voltage band: V·C/I. */
export const bandCrossingSec = (line: { bandV: number; farads: number; driverA: number }): number =>
  (line.bandV * line.farads) / line.driverA

/** Most capacitance in F for a crossing time: I·t/V. bandV > 0. */
export const bandCrossingFarads = (line: { bandV: number; crossingSec: number; driverA: number }): number =>
  (line.driverA * line.crossingSec) / line.bandV

/** Capacitance in F whose impedance at `hz` is `leastOhm`: 1/(2π·f·|Z|). Both > 0. */
export const faradsForImpedance = ({ leastOhm, hz }: { leastOhm: number; hz: number }): number =>
  1 / (2 * Math.PI * hz * leastOhm)
