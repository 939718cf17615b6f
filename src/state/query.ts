/** The query of an address as texts of the inputs of a check, and back. */
import type { Pair } from './router.ts'

/** What an address needs to know of an input: its key and the text a fresh field starts with. */
export type Keyed = { readonly key: string; readonly defaultText?: string }

/** Texts by key for the inputs of a check; keys the check does not have are kept apart so that nothing is lost. */
export function splitQuery(
  query: readonly Pair[],
  inputs: readonly Keyed[],
): { readonly texts: Readonly<Record<string, string>>; readonly strangers: readonly Pair[] } {
  const known = new Set(inputs.map((input) => input.key))
  const texts: Record<string, string> = Object.create(null)
  const strangers: Pair[] = []
  for (const pair of query) {
    if (known.has(pair.key)) texts[pair.key] = pair.text
    else strangers.push(pair)
  }
  return { texts, strangers }
}

/** Every input that is not blank, `key=` where a default was emptied on purpose, then the keys we do not know. */
export function pairsOf(
  inputs: readonly Keyed[],
  texts: Readonly<Record<string, string | undefined>>,
  strangers: readonly Pair[] = [],
): readonly Pair[] {
  const known = inputs.flatMap(({ key, defaultText }) => {
    const text = texts[key] ?? defaultText ?? ''
    return text.trim() !== '' || (defaultText ?? '') !== '' ? [{ key, text }] : []
  })
  return [...known, ...strangers]
}
