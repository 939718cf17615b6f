/** Units as files of measurements write them, and what turns their figures into Hz and dB. */
import type { LevelUnit } from '../quantity/level-unit.ts'
import type { FrequencyUnit } from './types.ts'

export const HZ_PER: Readonly<Record<FrequencyUnit, number>> = { Hz: 1, kHz: 1e3, MHz: 1e6, GHz: 1e9 }

const FREQUENCY_WORDS: Readonly<Record<string, FrequencyUnit>> = { hz: 'Hz', khz: 'kHz', mhz: 'MHz', ghz: 'GHz' }

/** How a figure becomes dB of a unit: a level shifted, or 20·log10 of a value over the unit. */
export type LevelScale =
  | { readonly is: 'db'; readonly unit: LevelUnit | undefined; readonly addDb: number }
  | { readonly is: 'linear'; readonly unit: LevelUnit; readonly perUnit: number }

const db = (unit: LevelUnit | undefined, addDb = 0): LevelScale => ({ is: 'db', unit, addDb })
const linear = (unit: LevelUnit, perUnit: number): LevelScale => ({ is: 'linear', unit, perUnit })

/** Small letters, micro as u. Definitions of the units; field units before the voltages they begin with. */
const LEVEL_WORDS: Readonly<Record<string, LevelScale>> = {
  'dbuv/m': db('dBµV/m'),
  'dbv/m': db('dBµV/m', 120),
  dbuv: db('dBµV'),
  dbmv: db('dBµV', 60),
  dbv: db('dBV'),
  dbua: db('dBµA'),
  dbma: db('dBµA', 60),
  dba: db('dBµA', 120),
  dbm: db('dBm'),
  dbmw: db('dBm'),
  db: db(undefined),
  'uv/m': linear('dBµV/m', 1),
  'v/m': linear('dBµV/m', 1e6),
  v: linear('dBµV', 1e6),
  mv: linear('dBµV', 1e3),
  uv: linear('dBµV', 1),
  nv: linear('dBµV', 1e-3),
  a: linear('dBµA', 1e6),
  ma: linear('dBµA', 1e3),
  ua: linear('dBµA', 1),
}

const folded = (word: string): string =>
  word
    .toLowerCase()
    .replaceAll(/[µμ]/g, 'u')
    .replaceAll(/^\(?rms\)?|\(?rms\)?$/g, '')
    .replaceAll(/[()[\]{}\s_]/g, '')

export const frequencyUnitOf = (word: string): FrequencyUnit | undefined => own(FREQUENCY_WORDS, folded(word))

export const levelScaleOf = (word: string): LevelScale | undefined => own(LEVEL_WORDS, folded(word))

/** A scale for a unit the user chose. */
export const scaleIn = (unit: LevelUnit): LevelScale => db(unit)

const own = <T>(words: Readonly<Record<string, T>>, word: string): T | undefined =>
  Object.hasOwn(words, word) ? words[word] : undefined

/** Pieces of a heading that can be a unit: what stands in brackets first, then each word. */
function unitWords(heading: string): readonly string[] {
  const words = heading.split(/[\s,:()[\]{}=_]+/)
  const bracketed = [...heading.matchAll(/[([{]([^)\]}]*)[)\]}]/g)].map((match) => match[1] ?? '')
  // "Trace A" is no current: a single letter counts in brackets, or alone
  return [...bracketed.reverse(), ...words.filter((word) => word.length > 1 || words.length === 1).reverse()]
}

export function frequencyUnitIn(heading: string): FrequencyUnit | undefined {
  for (const word of unitWords(heading)) {
    const unit = frequencyUnitOf(word)
    if (unit) return unit
  }
  // written in one word: FreqMHz
  return frequencyUnitOf(/[kmg]?hz$/i.exec(heading.trim())?.[0] ?? '')
}

export function levelScaleIn(heading: string): LevelScale | undefined {
  for (const word of unitWords(heading)) {
    const scale = levelScaleOf(word)
    if (scale) return scale
  }
  return undefined
}

/** dB of a figure; NaN where a value of 0 or below has none. Definition of the decibel. */
export function dbOf(figure: number, scale: LevelScale): number {
  if (scale.is === 'db') return figure + scale.addDb
  return figure > 0 ? 20 * Math.log10(figure * scale.perUnit) : Number.NaN
}
