/** What a word in the column of line kinds means: a kind of line, or a contact that carries none. */
import { LINE_KINDS, type LineKindId } from '../../reference/line-kinds.ts'
import { wordKey } from './pasted.ts'
import type { ContactType } from './types.ts'

export type WordMeaning =
  | { readonly is: 'kind'; readonly kind: LineKindId }
  | { readonly is: 'type'; readonly type: Exclude<ContactType, 'line'> }
  /** left open: the contact carries a line whose kind nobody said */
  | { readonly is: 'open' }

/** Words of the trade for contacts without a line, folded as `folded` does. */
const TYPE_WORDS: Readonly<Record<Exclude<ContactType, 'line'>, readonly string[]>> = {
  ground: [
    'ground',
    'grounded',
    'gnd',
    'chassis',
    'earth',
    'chassisground',
    'shield',
    'screen',
    'shieldground',
    'case',
  ],
  spare: ['spare', 'nc', 'notconnected', 'noconnection', 'unused', 'notused', 'open', 'free', 'blank', 'reserved'],
  'feed-through': ['feedthrough', 'feedthru', 'through', 'thru', 'straightthrough', 'unfiltered', 'bare'],
}

const folded = (text: string): string => text.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '')

const TYPES: ReadonlyMap<string, Exclude<ContactType, 'line'>> = new Map(
  (['ground', 'spare', 'feed-through'] as const).flatMap((type) =>
    TYPE_WORDS[type].map((word) => [word, type] as const),
  ),
)

/** Every name of a kind, not what it serves or plugs into; one that several kinds have means none of them. */
const KINDS: ReadonlyMap<string, LineKindId | undefined> = (() => {
  const found = new Map<string, LineKindId | undefined>()
  for (const { id, name, aliases } of LINE_KINDS)
    for (const word of new Set([name, id, ...aliases].map(folded))) found.set(word, found.has(word) ? undefined : id)
  return found
})()

/** The type a text names, if it is nothing but that: “spare”, “N/C”, “chassis ground”. */
export const typeOfWord = (word: string): Exclude<ContactType, 'line'> | undefined => TYPES.get(folded(word))

/** What a word means where there is no doubt; undefined = to be asked. */
export function meaningOfWord(word: string): WordMeaning | undefined {
  const type = typeOfWord(word)
  if (type !== undefined) return { is: 'type', type }
  const kind = KINDS.get(folded(word))
  return kind === undefined ? undefined : { is: 'kind', kind }
}

/** The words of a table that are still to be asked about, each once. */
export const unknownWords = <W extends { readonly word: string }>(
  words: readonly W[],
  said: ReadonlyMap<string, WordMeaning>,
): readonly W[] => words.filter(({ word }) => !said.has(wordKey(word)) && meaningOfWord(word) === undefined)
