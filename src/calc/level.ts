/** Levels in different units brought to one: volts, amperes and watts meet in an impedance, a field never meets a voltage. */
import type { Level, LevelUnit } from './quantity/level-unit.ts'

/** Why two levels cannot be compared; undefined = they can. */
export type LevelConflict = 'needs-impedance' | 'field-and-voltage'

/** dBµV that a level of 0 in its unit is, across 1 Ω; what the impedance adds to it per 10·log10(R). */
const IN_ONE_OHM: Readonly<Record<Exclude<LevelUnit, 'dBµV/m'>, { readonly dbUv: number; readonly ohmTens: number }>> =
  {
    dBµV: { dbUv: 0, ohmTens: 0 },
    dBV: { dbUv: 120, ohmTens: 0 },
    // V = I·R
    dBµA: { dbUv: 0, ohmTens: 2 },
    // V = √(P·R); 1 mW in 1 Ω is √0.001 V = 90 dBµV
    dBm: { dbUv: 90, ohmTens: 1 },
  }

/** dBµV of a level across `ohm`; a plain figure or a field strength stays as it is. ohm > 0. */
function dbMicrovolt({ db, unit }: Level, ohm: number): number {
  if (unit === undefined || unit === 'dBµV/m') return db
  const { dbUv, ohmTens } = IN_ONE_OHM[unit]
  return db + dbUv + ohmTens * 10 * Math.log10(ohm)
}

/** Whether a needs an impedance before it can be compared with b, or cannot be compared at all. */
export function levelConflict(a: Level, b: Level, impedanceOhm: number | undefined): LevelConflict | undefined {
  if (a.unit === undefined || b.unit === undefined || a.unit === b.unit) return undefined
  if (a.unit === 'dBµV/m' || b.unit === 'dBµV/m') return 'field-and-voltage'
  const asksOhm = IN_ONE_OHM[a.unit].ohmTens !== IN_ONE_OHM[b.unit].ohmTens
  return asksOhm && impedanceOhm === undefined ? 'needs-impedance' : undefined
}

/**
 * `level` as a figure in `unit` across `impedanceOhm` (> 0): dBm = dBµV − 90 − 10·log10(R), dBµA = dBµV − 20·log10(R).
 * A plain figure is taken to be in that unit already. Only for levels without a conflict. Definitions of the units.
 */
export function levelIn(level: Level, unit: LevelUnit | undefined, impedanceOhm = 1): number {
  if (level.unit === undefined || unit === undefined || level.unit === unit) return level.db
  return dbMicrovolt(level, impedanceOhm) - dbMicrovolt({ db: 0, unit }, impedanceOhm)
}
