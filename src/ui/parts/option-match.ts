import type { Option } from '../../calc/types.ts'
import { LINE_KINDS, lineKindNames } from '../../reference/line-kinds.ts'

const KIND_NAMES: ReadonlyMap<string, readonly string[]> = new Map(
  LINE_KINDS.map((kind) => [kind.id, lineKindNames(kind)]),
)

/** How well a search fits: one of the names from end to end, whole words of them, or the start of some. */
const NAME = -1
const WHOLE = 0
const START = 1
/** Too short to be the start of anything in particular. */
const SHORT = 2

/** Words in small letters; figures and letters part ("100BASE" is "100" and "base"), and so do marks. */
function wordsOf(text: string): readonly string[] {
  const folded = text.toLowerCase().replaceAll('²', '2').replaceAll('×', 'x')
  return folded.match(/\p{L}+|\p{N}+/gu) ?? []
}

/** All that is written without a gap or with one: of "ARINC 429" the words, and "arinc429". */
function runsOf(name: string): readonly string[] {
  const words = wordsOf(name)
  return words.flatMap((_, from) => words.slice(from).map((_, more) => words.slice(from, from + more + 1).join('')))
}

type Known = { readonly names: ReadonlySet<string>; readonly runs: readonly string[] }

const KNOWN = new Map<string, Known>()

function knownOf(option: Option): Known {
  const key = `${option.value} ${option.label}`
  const before = KNOWN.get(key)
  if (before !== undefined) return before
  const names = [option.label, option.value, ...(KIND_NAMES.get(option.value) ?? [])]
  const known = { names: new Set(names.map((name) => wordsOf(name).join(''))), runs: names.flatMap(runsOf) }
  KNOWN.set(key, known)
  return known
}

function fitOf(runs: readonly string[], word: string): number | undefined {
  if (runs.includes(word)) return WHOLE
  return word.length > SHORT && runs.some((run) => run.startsWith(word)) ? START : undefined
}

/**
 * Options that hold every word of the search in their name, id or the words people use for them: as whole words first,
 * then as the start of one; never as a fragment inside ("led" is no part of "coupled"). Where none holds them all, those
 * that hold most of them.
 */
export function matching<O extends Option>(options: readonly O[], search: string): readonly O[] {
  const words = search
    .split(/\s+/)
    .map((word) => wordsOf(word).join(''))
    .filter((word) => word !== '')
  if (words.length === 0) return options
  const scored = options.map((option) => {
    const { names, runs } = knownOf(option)
    const fits = words.flatMap((word) => fitOf(runs, word) ?? [])
    const rank = names.has(words.join('')) ? NAME : fits.reduce((sum, each) => sum + each, WHOLE)
    return { option, count: fits.length, rank }
  })
  const most = Math.max(0, ...scored.map(({ count }) => count))
  if (most === 0 || most < words.length / 2) return []
  return scored
    .filter(({ count }) => count === most)
    .sort((a, b) => a.rank - b.rank)
    .map(({ option }) => option)
}
