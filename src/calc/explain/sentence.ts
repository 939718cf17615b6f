/** How an answer that lacks a fact is put. */
import { nameOf, needsOf } from '../line/missing.ts'
import type { Input, Success } from '../types.ts'

export type Said = Pick<Success, 'headline' | 'answers' | 'needs'>

/** "Not known: needs …" with the field of that key to go to; `what` ends the sentence and may start another. */
export function notKnown(inputs: readonly Input[], key: string, what: string): Said {
  const needs = needsOf(inputs, key)
  return { headline: `Not known: needs ${what}`, ...(needs === undefined ? {} : { needs }) }
}

/** The same for everything that must be asked for; the first is gone to. */
export function waitingFor(missing: readonly Input[], tail = ''): Said {
  const [first] = missing
  return first === undefined
    ? { headline: `Not known.${tail}` }
    : notKnown(missing, first.key, `${listed(missing.map(nameOf))}.${tail}`)
}

/** Words joined as a sentence lists them. */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}
