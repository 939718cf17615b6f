/** Checks a value against a schema, and says of the first place that does not fit what would be right there. */
import { entriesOf, isRecord } from '../plain.ts'
import type { Path } from './json-text.ts'
import type { Schema } from './schema.ts'

export type Misfit = { readonly path: Path; readonly message: string }

const KINDS = {
  object: 'a record { … }',
  array: 'a list [ … ]',
  string: 'a text in double quotes',
  number: 'a number',
  integer: 'a whole number',
  boolean: 'true or false',
} as const

/** What stands there, short enough for a sentence. */
export function shownValue(value: unknown): string {
  if (Array.isArray(value)) return 'a list'
  if (isRecord(value)) return 'a record'
  const text = JSON.stringify(value) ?? String(value)
  return text.length > 40 ? `${text.slice(0, 39)}…` : text
}

function isOfType(type: NonNullable<Schema['type']>, value: unknown): boolean {
  if (type === 'object') return isRecord(value)
  if (type === 'array') return Array.isArray(value)
  if (type === 'integer') return Number.isSafeInteger(value)
  if (type === 'number') return typeof value === 'number'
  return type === 'string' ? typeof value === 'string' : typeof value === 'boolean'
}

/** What would be right, in words. */
function wantedWords({ type, enum: words, const: only, description }: Schema): string {
  if (only !== undefined) return JSON.stringify(only)
  if (words !== undefined) return `one of ${words.join(', ')}`
  return description ?? KINDS[type ?? 'object']
}

function fitsPlainly(schema: Schema, value: unknown): boolean {
  const { type, enum: words, const: only, pattern, minimum } = schema
  if (type !== undefined && !isOfType(type, value)) return false
  if (only !== undefined && value !== only) return false
  if (words !== undefined && !words.some((word) => word === value)) return false
  if (pattern !== undefined && !new RegExp(pattern, 'u').test(String(value))) return false
  return minimum === undefined || Number(value) >= minimum
}

/** The first place where a value does not fit, in the order of the schema; undefined where all of it does. */
export function misfitOf(schema: Schema, value: unknown, path: Path = []): Misfit | undefined {
  if (schema.anyOf !== undefined) return misfitOfAny(schema.anyOf, value, path)
  if (!fitsPlainly(schema, value))
    return { path, message: `${wantedWords(schema)} is expected here, and ${shownValue(value)} stands there` }
  if (Array.isArray(value)) {
    const { items, maxItems } = schema
    if (maxItems !== undefined && value.length > maxItems)
      return { path, message: `${maxItems} entries at most are expected here, and ${value.length} stand there` }
    if (items !== undefined)
      for (const [at, one] of value.entries()) {
        const misfit = misfitOf(items, one, [...path, at])
        if (misfit !== undefined) return misfit
      }
    return undefined
  }
  return isRecord(value) ? misfitOfRecord(schema, value, path) : undefined
}

function misfitOfRecord(schema: Schema, value: Readonly<Record<string, unknown>>, path: Path): Misfit | undefined {
  const missing = schema.required?.find((name) => !Object.hasOwn(value, name))
  if (missing !== undefined) return { path, message: `“${missing}” is missing here` }
  for (const [name, one] of entriesOf(value)) {
    const known = schema.properties !== undefined && Object.hasOwn(schema.properties, name)
    const inside = known ? schema.properties?.[name] : schema.additionalProperties
    const misfit = inside && misfitOf(inside, one, [...path, name])
    if (misfit !== undefined) return misfit
  }
  return undefined
}

/** Of several records told apart by a word in them, the misfit of the one that is meant. */
function misfitOfAny(all: readonly Schema[], value: unknown, path: Path): Misfit | undefined {
  const misfits = all.map((schema) => misfitOf(schema, value, path))
  if (misfits.some((one) => one === undefined)) return undefined
  const isMeant = ({ properties }: Schema): boolean =>
    entriesOf(properties ?? {}).some(
      ([name, inside]) =>
        isRecord(inside) && inside['const'] !== undefined && isRecord(value) && value[name] === inside['const'],
    )
  const meant = all.findIndex(isMeant)
  if (meant >= 0) return misfits[meant]
  const told = all.flatMap(
    ({ properties }) => Object.entries(properties ?? {}).find(([, one]) => one.const !== undefined) ?? [],
  )
  const words = all.map(({ properties }) => properties?.[String(told[0])]?.const).join(', ')
  return {
    path,
    message: `a record is expected here whose “${String(told[0])}” is one of ${words}; ${shownValue(value)} stands there`,
  }
}
