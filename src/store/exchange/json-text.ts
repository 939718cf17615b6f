/**
 * Reads JSON as text, without building anything: where it breaks off, where it is larger or deeper than anything of ours,
 * and where a value stands. One pass, no recursion: a hostile file costs no more than an honest one of its length.
 */

export type TextTrouble = { readonly at: number; readonly message: string }

/** Far above anything of ours: a whole connector nests nine deep. */
export const MOST_DEPTH = 64
/** Most entries of one list or one record. */
export const MOST_ENTRIES = 10_000
/** Most values of a file. */
export const MOST_VALUES = 3_000_000

/** One list or record that is open: the name or number of its present entry, and how many it has had. */
type Open = { readonly isList: boolean; key: string | number; entries: number }
type Wanted = 'value' | 'first value' | 'key' | 'first key' | 'colon' | 'after' | 'end'

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
const WORDS = ['true', 'false', 'null'] as const
const SPACE: ReadonlySet<string | undefined> = new Set([' ', '\t', '\n', '\r'])

const EXPECTED: Readonly<Record<Wanted, string>> = {
  value: 'a value is expected here (a text in double quotes, a number, true, false, null, a list or a record)',
  'first value': 'a value or “]” is expected here',
  key: 'a name in double quotes is expected here',
  'first key': 'a name in double quotes or “}” is expected here',
  colon: '“:” is expected here',
  after: 'a comma or the closing bracket is expected here',
  end: 'nothing more is expected here: what was begun is complete',
}

/** The end of the string that begins at `from` (its quote), one behind its closing quote; or its trouble. */
function stringEnd(text: string, from: number): number | TextTrouble {
  for (let i = from + 1; i < text.length; i++) {
    const code = text.charCodeAt(i)
    if (code === 34) return i + 1
    if (code < 32)
      return {
        at: i,
        message: 'a text goes over the end of its line: its closing quote is missing, or write the line end as \\n',
      }
    if (code !== 92) continue
    i++
    const isHex = text[i] === 'u' && /^[\da-fA-F]{4}$/.test(text.slice(i + 1, i + 5))
    if (!isHex && !'"\\/bfnrt'.includes(text[i] ?? ' '))
      return {
        at: i - 1,
        message: 'a backslash in a text is written twice, or is followed by one of " \\ / b f n r t u0000',
      }
    if (isHex) i += 4
  }
  return { at: from, message: 'this text is never closed: the file was cut off, or a quote is missing' }
}

/** The end of a number or word that begins at `from`; undefined where there is none. */
function plainEnd(text: string, from: number): number | undefined {
  const word = WORDS.find((one) => text.startsWith(one, from))
  if (word !== undefined) return from + word.length
  NUMBER.lastIndex = from
  return NUMBER.test(text) ? NUMBER.lastIndex : undefined
}

/**
 * Goes over the text value by value. `onValue` is told where each begins, with the names and numbers that lead there;
 * true from it ends the walk. Gives the first trouble, or undefined.
 */
function walk(text: string, onValue?: (open: readonly Open[], at: number) => boolean): TextTrouble | undefined {
  const open: Open[] = []
  let wanted: Wanted = 'value'
  let values = 0
  for (let i = 0; ; ) {
    while (SPACE.has(text[i])) i++
    const sign = text[i]
    if (sign === undefined) {
      if (wanted === 'end') return undefined
      return { at: text.length, message: 'the file ends before it is complete: something was cut off' }
    }
    const inside = open.at(-1)
    const closes = inside?.isList ? ']' : '}'
    const mayClose = wanted === 'after' || wanted === 'first value' || wanted === 'first key'
    const unexpected: TextTrouble = { at: i, message: `${EXPECTED[wanted]}, and “${sign}” stands there` }
    if (inside !== undefined && mayClose && sign === closes) {
      open.pop()
      wanted = open.length === 0 ? 'end' : 'after'
      i++
      continue
    }
    if (wanted === 'end') return unexpected
    if (wanted === 'colon') {
      if (sign !== ':') return unexpected
      wanted = 'value'
      i++
      continue
    }
    if (wanted === 'after') {
      if (sign !== ',' || inside === undefined) return unexpected
      if (inside.isList) inside.key = Number(inside.key) + 1
      wanted = inside.isList ? 'value' : 'key'
      i++
      continue
    }
    if (wanted === 'key' || wanted === 'first key') {
      if (sign !== '"' || inside === undefined) return unexpected
      const end = stringEnd(text, i)
      if (typeof end !== 'number') return end
      inside.key = String(JSON.parse(text.slice(i, end)))
      if (inside.key === '__proto__') return { at: i, message: 'nothing of a complaint is named “__proto__”' }
      wanted = 'colon'
      i = end
      continue
    }
    values++
    if (inside !== undefined) inside.entries++
    if (values > MOST_VALUES) return { at: i, message: `the file holds more than ${MOST_VALUES} values` }
    if ((inside?.entries ?? 0) > MOST_ENTRIES)
      return { at: i, message: `one list or record holds more than ${MOST_ENTRIES} entries` }
    if (onValue?.(open, i)) return undefined
    if (sign === '{' || sign === '[') {
      if (open.length === MOST_DEPTH) return { at: i, message: `the file nests deeper than ${MOST_DEPTH} levels` }
      open.push({ isList: sign === '[', key: sign === '[' ? 0 : '', entries: 0 })
      wanted = sign === '[' ? 'first value' : 'first key'
      i++
      continue
    }
    const end = sign === '"' ? stringEnd(text, i) : plainEnd(text, i)
    if (end === undefined) return unexpected
    if (typeof end !== 'number') return end
    wanted = open.length === 0 ? 'end' : 'after'
    i = end
  }
}

/** The first place where a text is no JSON, or is larger or deeper than anything of ours. */
export const troubleIn = (text: string): TextTrouble | undefined => walk(text)

export type Path = readonly (string | number)[]

/** Where a value begins; of a name that is not there, the record it is missing in. */
export function placeOf(text: string, path: Path): number {
  let found = 0
  let depth = -1
  walk(text, (open, at) => {
    const isOnTheWay = open.length <= path.length && open.every(({ key }, level) => key === path[level])
    if (!isOnTheWay || open.length <= depth) return false
    found = at
    depth = open.length
    return depth === path.length
  })
  return found
}

/** A place as a reader of the file finds it. */
export function lineAndColumn(text: string, at: number): string {
  const before = text.slice(0, at)
  const start = before.lastIndexOf('\n') + 1
  return `Line ${before.split('\n').length}, column ${at - start + 1}`
}

/** A path as it is written: complaints[1].lines[0].name. */
export const pathWords = (path: Path): string =>
  path.map((step, level) => (typeof step === 'number' ? `[${step}]` : level === 0 ? step : `.${step}`)).join('')
