import { describe, expect, it } from 'vitest'
import { atOnce } from '../../src/calc/line/evaluate.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { guideShape } from '../../src/guide/shape.ts'

const isGuide = (raw: unknown): boolean => atOnce(guideShape(raw))

/** Every place inside a value, as the keys that lead there. */
function placesIn(value: unknown, at: readonly string[] = []): readonly (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return [at]
  return [at, ...Object.entries(value).flatMap(([key, inner]) => placesIn(inner, [...at, key]))]
}

/** The value with one place replaced; undefined takes the field away. */
function withOther(value: unknown, [key, ...rest]: readonly string[], other: unknown): unknown {
  if (key === undefined) return other
  if (Array.isArray(value))
    return value.map((inner, index) => (String(index) === key ? withOther(inner, rest, other) : inner))
  const record: Record<string, unknown> = { ...Object(value) }
  record[key] = withOther(record[key], rest, other)
  return record
}

/** Of each kind of place one is enough: the numbers of lists do not matter, nor the names in a prefill. */
const kindOf = (place: readonly string[]): string =>
  place.map((key, at) => (/^\d+$/.test(key) ? '#' : /^(says|cites)$/.test(place[at - 1] ?? '') ? '*' : key)).join('.')

describe('the shape of a guide', () => {
  it('is the shape of the one in the bundle, also after a way through text', () => {
    expect(isGuide(GUIDE)).toBe(true)
    expect(isGuide(JSON.parse(JSON.stringify(GUIDE)))).toBe(true)
  })

  it('is refused with any one field replaced by something of another kind', () => {
    const seen = new Map<string, readonly string[]>()
    for (const place of placesIn(GUIDE)) {
      if (!seen.has(kindOf(place))) seen.set(kindOf(place), place)
    }
    expect(seen.size).toBeGreaterThan(60)
    const taken = [...seen.values()].filter((place) => isGuide(withOther(GUIDE, place, 17.5)))
    expect(taken).toEqual([])
  })

  it.each([
    [undefined],
    ['text'],
    [{ version: 3 }],
    [{ ...GUIDE, outcomes: undefined }],
    [{ ...GUIDE, evidence: [{ kind: 'riddle', id: 'x' }] }],
    [{ ...GUIDE, version: '3' }],
  ])('is refused: %#', (raw) => {
    expect(isGuide(raw)).toBe(false)
  })
})
