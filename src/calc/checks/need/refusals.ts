/** Why two levels are not compared, with the conversion that would make it possible. */
import { type LevelConflict, levelIn } from '../../level.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Level } from '../../types.ts'

/** What nearly every receiver and line network has; told as an example, never assumed. */
const EXAMPLE_OHM = 50

const said = (db: number, unit: Level['unit']): string => formatQuantity(db, 'decibel', 4).replace(/dB$/u, unit ?? 'dB')

export function conflictSentence(measured: Level, limit: Level, conflict: LevelConflict): string {
  if (conflict === 'field-and-voltage') {
    const [field, other] = measured.unit === 'dBµV/m' ? [measured, limit] : [limit, measured]
    return `${said(field.db, field.unit)} is a field strength and ${said(other.db, other.unit)} is not: no impedance turns one into the other. Give both in dBµV/m, or both as the receiver reads them (dBµV/m less the antenna factor).`
  }
  const example = levelIn(measured, limit.unit, EXAMPLE_OHM)
  const formula = FORMULAS[`${measured.unit} ${limit.unit}`] ?? FORMULAS[`${limit.unit} ${measured.unit}`] ?? ''
  return `One level is in ${measured.unit}, the other in ${limit.unit}: enter the impedance they are measured in. In 50 Ω ${said(measured.db, measured.unit)} is ${said(example, limit.unit)}${formula === '' ? '' : ` (${formula})`}.`
}

const FORMULAS: Readonly<Record<string, string>> = {
  'dBm dBµV': 'dBµV = dBm + 90 + 10·log10(R)',
  'dBm dBV': 'dBV = dBm − 30 + 10·log10(R)',
  'dBm dBµA': 'dBµA = dBm + 90 − 10·log10(R)',
  'dBµA dBµV': 'dBµV = dBµA + 20·log10(R)',
  'dBµA dBV': 'dBV = dBµA − 120 + 20·log10(R)',
}
