/** Names of the contacts of one connector, by scheme and count. */
import { RECTANGULAR_ROWS } from './face.ts'

/** Most contacts one connector can have here. */
export const MOST_CONTACTS = 256

export type ContactScheme =
  | { readonly is: 'numbers'; readonly count: number }
  | { readonly is: 'letters'; readonly count: number }
  | { readonly is: 'rectangular'; readonly count: number }
  | { readonly is: 'own'; readonly text: string }

export type ContactIds =
  | { readonly ok: true; readonly ids: readonly string[] }
  | { readonly ok: false; readonly message: string }

/**
 * Letters that are left out because they are read as other signs: I, O, Q among capitals (and doubled capitals), l and o
 * among small letters. Common practice of circular connectors; an arrangement may do otherwise: then the own list.
 */
export const LEFT_OUT = { capitals: 'IOQ', small: 'lo' } as const

const spaced = (letters: string) => [...letters].join(', ')

/** What the letters leave out, and how we know it. */
export const LETTERS_SAID =
  `A to Z without ${spaced(LEFT_OUT.capitals)}, then a to z without ${spaced(LEFT_OUT.small)}, then AA, BB and on without ` +
  `the same capitals. Common practice of circular connectors; where your drawing differs, enter its own list.`

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'
const CAPITALS = [...ALPHABET].filter((letter) => !LEFT_OUT.capitals.includes(letter))
const SMALL = [...ALPHABET.toLowerCase()].filter((letter) => !LEFT_OUT.small.includes(letter))

/** A–Z, then a–z, then AA, BB, CC …, ambiguous letters left out: 70 names. */
export const LETTER_IDS: readonly string[] = [...CAPITALS, ...SMALL, ...CAPITALS.map((letter) => letter + letter)]

/** Longest name a contact can have. */
const MOST_CHARACTERS = 12

/** The names in order; a sentence where the scheme cannot give them. */
export function contactIds(scheme: ContactScheme): ContactIds {
  if (scheme.is === 'own') return ownIds(scheme.text)
  const { count } = scheme
  if (scheme.is === 'rectangular' && RECTANGULAR_ROWS[count] === undefined)
    return refused(
      `Rectangular shells have ${Object.keys(RECTANGULAR_ROWS).join(', ')} contacts here; for another number take 1 to n.`,
    )
  if (!Number.isInteger(count) || count < 1 || count > MOST_CONTACTS)
    return refused(`A connector has 1 to ${MOST_CONTACTS} contacts; enter a whole number in that range.`)
  if (scheme.is !== 'letters') return { ok: true, ids: Array.from({ length: count }, (_, i) => String(i + 1)) }
  if (count > LETTER_IDS.length)
    return refused(
      `Letters name ${LETTER_IDS.length} contacts at most (A to ZZ without ${spaced(LEFT_OUT.capitals)}); number them, or enter your own list.`,
    )
  return { ok: true, ids: LETTER_IDS.slice(0, count) }
}

/** Names as typed: divided by commas, semicolons, white space or line ends; `1-24` and `A-F` count up. */
function ownIds(text: string): ContactIds {
  const ids: string[] = []
  for (const word of text.split(/[\s,;]+/)) {
    if (word === '') continue
    const span = spanOf(word)
    if (typeof span === 'string') return refused(span)
    ids.push(...span)
    if (ids.length > MOST_CONTACTS) return refused(`A connector has ${MOST_CONTACTS} contacts at most here.`)
  }
  if (ids.length === 0) return refused('Enter the names of the contacts, such as “1-24” or “A, B, C”.')
  const seen = new Set<string>()
  for (const id of ids) {
    if (id.length > MOST_CHARACTERS)
      return refused(`“${id.slice(0, MOST_CHARACTERS)}…” is too long for a contact name.`)
    if (seen.has(id)) return refused(`“${id}” stands twice; every contact needs a name of its own.`)
    seen.add(id)
  }
  return { ok: true, ids }
}

function spanOf(word: string): readonly string[] | string {
  const numbers = /^(\d{1,4})[-–](\d{1,4})$/.exec(word)
  if (numbers) {
    const [from, to] = [Number(numbers[1]), Number(numbers[2])]
    if (to < from) return `“${word}” counts down; write it as “${to}-${from}”.`
    if (to - from >= MOST_CONTACTS) return `“${word}” is more than ${MOST_CONTACTS} contacts.`
    return Array.from({ length: to - from + 1 }, (_, i) => String(from + i))
  }
  const letters = /^([A-Za-z]{1,2})[-–]([A-Za-z]{1,2})$/.exec(word)
  if (letters) {
    const [from, to] = [LETTER_IDS.indexOf(letters[1] as string), LETTER_IDS.indexOf(letters[2] as string)]
    if (from >= 0 && to >= from) return LETTER_IDS.slice(from, to + 1)
    return `“${word}” is no row of letters; write them one by one, or from a lower to a higher one (A–Z, a–z, AA–ZZ).`
  }
  return [word]
}

const refused = (message: string): ContactIds => ({ ok: false, message })
