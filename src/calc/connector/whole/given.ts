/** The facts of a contact's Line as a check reads them, and the numbers typed about the connector. */
import { type Express, numbersIn } from '../../line/fields.ts'
import { resolve } from '../../line/resolver.ts'
import type { GivenValue, Line, Quantity, WordlessCheck } from '../../types.ts'

export type LineGiven = {
  readonly values: Readonly<Record<string, GivenValue | undefined>>
  /** keys of fields whose value nobody entered */
  readonly assumed: readonly string[]
  /** labels of fields whose text cannot be read */
  readonly refused: readonly string[]
}

const known = new WeakMap<Line, Map<string, LineGiven>>()

/** Every field of a check as this Line fills it; remembered with the Line while nothing waits for the calculator. */
export function givenOf(check: WordlessCheck, line: Line, express?: Express): LineGiven {
  const before = known.get(line)?.get(check.id)
  if (before !== undefined && express === undefined) return before
  const fields = resolve(line, express).fields(check)
  const given: LineGiven = {
    values: Object.fromEntries(fields.map(({ key, value }) => [key, value])),
    assumed: fields.filter(({ state }) => state === 'assumed').map(({ key }) => key),
    refused: fields
      .filter(({ state }) => state === 'refused' || state === 'pending')
      .map(({ input }) => input.label.toLowerCase()),
  }
  if (express === undefined) {
    const ofLine = known.get(line) ?? new Map<string, LineGiven>()
    ofLine.set(check.id, given)
    known.set(line, ofLine)
  }
  return given
}

/** One value that has to be a number; undefined where it is not known. */
export function numberOf({ values }: LineGiven, key: string): number | undefined {
  const value = values[key]
  return typeof value === 'number' ? value : undefined
}

/** A number typed about the connector: absent, or the sentence that says what is wrong with it. */
export type Typed = { readonly si?: number; readonly refused?: string }

/** Reads one number ≥ `least`; a text that is none is named, never dropped. */
export function typedNumber(
  text: string | undefined,
  { quantity, what, example, least = 0 }: { quantity: Quantity; what: string; example: string; least?: number },
  express?: Express,
): Typed {
  const typed = text?.trim() ?? ''
  if (typed === '') return {}
  const [si, ...more] = numbersIn(typed, quantity, express)
  if (si === undefined || more.length > 0 || si < least)
    return { refused: `“${typed}” is no ${what}; write it as ${example}.` }
  return { si }
}
