/** Values that fit a schema, for properties: any text, any number of entries, names nobody knows beside the known ones. */
import type { Arbitrary } from 'fast-check'
import type { Schema } from '../../../src/store/exchange/schema.ts'
import fc from '../../support/property.ts'

const HARD_TEXTS = ['', ' ', '\n', '"', '\\', '\u2028', '\uD800', 'é', '4n7', '=1+1', '__proto__', 'constructor']
const anyText = fc.oneof(fc.string({ unit: 'binary', maxLength: 12 }), fc.constantFrom(...HARD_TEXTS))
const time = fc
  .date({ min: new Date('1970-01-02T00:00:00Z'), max: new Date('2999-01-01T00:00:00Z'), noInvalidDate: true })
  .map((date) => date.toISOString())
const named = (key: string) => key !== '__proto__'
const stranger = fc.record({ key: fc.constantFrom('colour', 'later', 'x-y'), value: fc.oneof(anyText, fc.integer()) })

/** `strange`: with names this version does not know. */
export function fitting(schema: Schema, strange: boolean): Arbitrary<unknown> {
  if (schema.anyOf !== undefined) return fc.oneof(...schema.anyOf.map((one) => fitting(one, strange)))
  if (schema.const !== undefined) return fc.constant(schema.const)
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum)
  switch (schema.type) {
    case 'string': {
      if (schema.pattern?.startsWith('^\\d{4}') === true) return time
      return schema.pattern === undefined ? anyText : fc.stringMatching(new RegExp(schema.pattern), { maxLength: 20 })
    }
    case 'number':
      return fc.double({ min: -1e9, max: 1e9, noNaN: true })
    case 'integer':
      return fc.nat(6)
    case 'boolean':
      return fc.boolean()
    case 'array': {
      const isNamed = schema.items?.properties?.['id'] !== undefined
      const items = schema.items === undefined ? fc.constant(0) : fitting(schema.items, strange)
      return isNamed
        ? fc.uniqueArray(items, { maxLength: 3, selector: (one) => (one as { id: string }).id })
        : fc.array(items, { maxLength: 3 })
    }
    default:
      return fittingRecord(schema, strange)
  }
}

function fittingRecord(schema: Schema, strange: boolean): Arbitrary<unknown> {
  if (schema.additionalProperties !== undefined) {
    const keys = fc.oneof(fc.constantFrom('noiseHz', 'markedF', 'wrong'), anyText.filter(named))
    return fc.dictionary(keys, fitting(schema.additionalProperties, strange), { maxKeys: 4, noNullPrototype: true })
  }
  const fields = Object.entries(schema.properties ?? {}).map(
    ([name, inside]) => [name, fitting(inside, strange)] as const,
  )
  const model = Object.fromEntries(fields) as Record<string, Arbitrary<unknown>>
  // what is set aside holds anything
  if ((schema.required ?? []).includes('value')) model['value'] = fc.jsonValue({ maxDepth: 3 }).filter(isOrdinary)
  const known = fc.record(model, { requiredKeys: [...(schema.required ?? [])], noNullPrototype: true })
  if (!strange) return known
  return fc
    .tuple(known, fc.option(stranger, { nil: undefined, freq: 8 }))
    .map(([one, more]) => (more === undefined ? one : { ...one, [more.key]: more.value }))
}

const isOrdinary = (value: unknown): boolean => !JSON.stringify(value).includes('__proto__')
