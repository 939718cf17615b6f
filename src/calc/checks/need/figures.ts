/** The numbers of the need check. */
import { levelConflict, levelIn } from '../../level.ts'
import type { Figures, Level, Refused, Verdict } from '../../types.ts'
import type { NeedGiven } from './inputs.ts'
import { conflictSentence } from './refusals.ts'

/** Levels as figures of one unit, that of the limit (or of the reading where the limit has none). */
export type Levels = {
  readonly measuredDb: number
  readonly limitDb: number
  readonly marginDb: number
  readonly unit: Level['unit']
  /** the reading was brought from another unit */
  readonly isConverted: boolean
}

export type NeedFigures = Figures & {
  /** the number stands, is more than one connector holds, or is not known yet */
  readonly verdict: Verdict
  /** absent = something must still be entered */
  readonly levels?: Levels
  /** what must come off a field, which is no need of this line yet: shown here and handed to no other check */
  readonly fieldNeededDb?: number
}

/** More than this is beyond what one connector holds in practice. */
export const PRACTICAL_CEILING_DB = 100

/**
 * Needed attenuation = max(0, measured − limit + margin), in dB. All three in the same quantity and bandwidth.
 * Source: definition of insertion loss in dB; the margin is common practice.
 */
export function neededAttenuationDb({ measuredDb, limitDb, marginDb }: Omit<Levels, 'unit' | 'isConverted'>): number {
  return Math.max(0, measuredDb - limitDb + marginDb)
}

export function needFigures(given: NeedGiven): NeedFigures | Refused {
  const { measuredDb: measured, limitDb: limit, marginDb, impedanceOhm } = given
  const none = { bounds: [], rungs: [] }
  if (measured === undefined || limit === undefined) return { ...none, verdict: 'unknown', values: {} }
  const conflict = levelConflict(measured, limit, impedanceOhm)
  if (conflict !== undefined) {
    const key = conflict === 'needs-impedance' ? 'impedanceOhm' : 'limitDb'
    return { ok: false, issues: [{ key, code: conflict, message: conflictSentence(measured, limit, conflict) }] }
  }
  const unit = limit.unit ?? measured.unit
  const levels: Levels = {
    measuredDb: levelIn(measured, unit, impedanceOhm),
    limitDb: limit.db,
    marginDb,
    unit,
    isConverted: measured.unit !== undefined && measured.unit !== unit,
  }
  const neededDb = neededAttenuationDb(levels)
  if (unit === 'dBµV/m') return { ...none, verdict: 'unknown', values: {}, levels, fieldNeededDb: neededDb }
  return { ...none, verdict: neededDb > PRACTICAL_CEILING_DB ? 'marginal' : 'ok', values: { neededDb }, levels }
}
