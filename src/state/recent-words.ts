/** What a check done lately was about, in the texts of its address. */
import { checkById } from '../calc/registry.ts'
import type { Check, Input } from '../calc/types.ts'
import type { Recent } from '../store/recents.ts'
import { splitQuery } from './query.ts'
import { readHash } from './router.ts'

/** Texts of an address that say most of what a check was about. */
const MOST_TEXTS = 4

/** What a check of an address was about: its line first, then what was entered, defaults left out. */
export function saidOf({ check: id, address }: Recent): { readonly check: Check; readonly words: string } | undefined {
  const check = checkById(id)
  const route = readHash(address)
  if (check === undefined || route.place !== 'check') return undefined
  const { texts } = splitQuery(route.query, check.inputs)
  const entered = check.inputs.flatMap((input) => {
    const text = (texts[input.key] ?? '').trim()
    return text === '' || text === input.defaultText ? [] : [{ input, words: wordsOf(input, text) }]
  })
  const weight = ({ input }: { input: Input }) => (input.fact === 'lineKind' ? 0 : input.group === undefined ? 1 : 2)
  const words = [...entered].sort((a, b) => weight(a) - weight(b)).map((each) => each.words)
  return { check, words: words.slice(0, MOST_TEXTS).join(', ') }
}

function wordsOf({ type, label }: Input, text: string): string {
  if (type.is === 'choice') return type.options.find(({ value }) => value === text)?.label ?? text
  return type.is === 'flag' ? label.toLowerCase() : text
}
