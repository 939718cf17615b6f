/** The unit a level was given in, which decides what it may be compared with. */
import { foldText } from './fold.ts'

export const LEVEL_UNITS = ['dBµV', 'dBV', 'dBµA', 'dBm', 'dBµV/m'] as const
export type LevelUnit = (typeof LEVEL_UNITS)[number]

/** A level with its unit; without one it is a plain figure in dB of the same kind as what it is compared with. */
export type Level = { readonly db: number; readonly unit?: LevelUnit }

/** Longest first, so that dBµV/m is not taken for dBµV. */
const SPELLINGS: readonly (readonly [string, LevelUnit])[] = [
  ['dbµv/m', 'dBµV/m'],
  ['dbuv/m', 'dBµV/m'],
  ['dbµv', 'dBµV'],
  ['dbuv', 'dBµV'],
  ['dbµa', 'dBµA'],
  ['dbua', 'dBµA'],
  ['dbv', 'dBV'],
  ['dbm', 'dBm'],
]

/** The unit at the end of a typed level; undefined for plain dB or a bare number. Never throws. */
export function levelUnitOf(text: string): LevelUnit | undefined {
  const folded = foldText(text).toLowerCase()
  return SPELLINGS.find(([spelling]) => folded.endsWith(spelling))?.[1]
}
