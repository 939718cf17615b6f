/** The numbers of the need check. */
import type { Figures } from '../../types.ts'
import type { NeedGiven } from './inputs.ts'

export type Levels = { readonly measuredDb: number; readonly limitDb: number; readonly marginDb: number }

export type NeedFigures = Figures & {
  /** absent = something must still be entered */
  readonly levels?: Levels
}

/**
 * Needed attenuation = max(0, measured − limit + margin), in dB. All three in the same quantity and bandwidth.
 * Source: definition of insertion loss in dB; the margin is common practice.
 */
export function neededAttenuationDb({ measuredDb, limitDb, marginDb }: Levels): number {
  return Math.max(0, measuredDb - limitDb + marginDb)
}

export function needFigures({ measuredDb, limitDb, marginDb }: NeedGiven): NeedFigures {
  const none = { bounds: [], rungs: [] }
  if (measuredDb === undefined || limitDb === undefined) return { ...none, values: {} }
  const levels = { measuredDb, limitDb, marginDb }
  return { ...none, values: { neededDb: neededAttenuationDb(levels) }, levels }
}
