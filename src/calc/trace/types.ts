/** A measured spectrum: frequencies that rise, and the level at each. */
import type { LevelUnit } from '../quantity/level-unit.ts'

export type Spectrum = {
  /** rising, never below the one before, all above 0 */
  readonly hz: Float64Array
  readonly db: Float64Array
  /** undefined: the file names none, or says dB alone */
  readonly unit: LevelUnit | undefined
}

/** A column of the file that can be read as a level. */
export type LevelColumn = { readonly at: number; readonly label: string; readonly unit: LevelUnit | undefined }

export type TraceReading =
  | {
      readonly ok: true
      readonly spectrum: Spectrum
      readonly levelColumns: readonly LevelColumn[]
      readonly levelAt: number
      /** where the unit of the frequency was found */
      readonly frequencyUnitFrom: 'header' | 'cells' | 'size' | 'user'
      /** the lines before the table, as they stand, the first of them */
      readonly preamble: readonly string[]
      /** what was left out, in sentences */
      readonly remarks: readonly string[]
    }
  | {
      readonly ok: false
      /** counted from 1; absent where the whole text is meant */
      readonly line?: number
      readonly column?: number
      /** what the user can choose to have it read */
      readonly asks?: 'frequency-unit' | 'level-column'
      readonly message: string
    }

export type FrequencyUnit = 'Hz' | 'kHz' | 'MHz' | 'GHz'

/** What the user says about the file where it does not say so itself. */
export type ReadOptions = {
  readonly frequencyUnit?: FrequencyUnit
  readonly levelUnit?: LevelUnit
  /** place of the level's column, from 0 */
  readonly levelAt?: number
}
