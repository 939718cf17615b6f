/**
 * Variants of a check beside it: the same Line with a few texts changed. In the address each text that differs is a key
 * of its own, `b.<key>` and `c.<key>`; what is equal is not written.
 */
import type { Express } from '../calc/line/fields.ts'
import { emptied } from '../calc/line/resolver.ts'
import { withFact } from '../calc/line/with-fact.ts'
import type { Check, Line } from '../calc/types.ts'
import type { Keyed } from './query.ts'
import { type Pair, readQuery, writeQuery } from './router.ts'

export const VARIANT_IDS = ['b', 'c'] as const
export type VariantId = (typeof VARIANT_IDS)[number]

/** Texts that differ, by key of the input. */
export type Differs = Readonly<Record<string, string>>
export type Variants = { readonly [V in VariantId]?: Differs }

const PREFIXED = /^([bc])\.(.+)$/

/** The pairs of an address apart: those of the check itself, and what differs in its variants. */
export function splitVariants(
  query: readonly Pair[],
  inputs: readonly Keyed[],
): { readonly own: readonly Pair[]; readonly variants: Variants } {
  const known = new Set(inputs.map(({ key }) => key))
  const own: Pair[] = []
  const found: Record<VariantId, [string, string][]> = { b: [], c: [] }
  for (const pair of query) {
    const [, id, key = ''] = PREFIXED.exec(pair.key) ?? []
    if ((id === 'b' || id === 'c') && known.has(key)) found[id].push([key, pair.text])
    else own.push(pair)
  }
  const entries = VARIANT_IDS.flatMap((id) => (found[id].length > 0 ? [[id, Object.fromEntries(found[id])]] : []))
  return { own, variants: Object.fromEntries(entries) }
}

/** What differs, as pairs of an address, in the order of the inputs. */
export const pairsOfVariants = (inputs: readonly Keyed[], variants: Variants): readonly Pair[] =>
  VARIANT_IDS.flatMap((id) =>
    inputs.flatMap(({ key }) => {
      const text = variants[id]?.[key]
      return text === undefined ? [] : [{ key: `${id}.${key}`, text }]
    }),
  )

/** Variants as one text, to be kept beside a check. */
export const writeVariants = (inputs: readonly Keyed[], variants: Variants): string =>
  writeQuery(pairsOfVariants(inputs, variants))

/** Variants from such a text. */
export const readVariants = (inputs: readonly Keyed[], text: string): Variants =>
  splitVariants(readQuery(text), inputs).variants

/** The Line of a variant: a text in place of each that differs, an empty one where it is known to be unknown. */
export function lineOfVariant(check: Check, line: Line, differs: Differs, express?: Express): Line {
  return check.inputs.reduce((now, input) => {
    const text = differs[input.key]
    if (text === undefined) return now
    const next = text.trim() === '' ? emptied(now, input, express) : ({ text, origin: { by: 'user' } } as const)
    return withFact(now, input.fact, next)
  }, line)
}
