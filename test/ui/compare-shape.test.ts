import { describe, expect, it } from 'vitest'
import { windowCheck } from '../../src/calc/checks/window/check.ts'
import { evaluateNow } from '../../src/calc/line/evaluate.ts'
import { readFields } from '../../src/calc/line/fields.ts'
import { stripSpan } from '../../src/ui/parts/strip-shape.ts'
import { comparedTable, onSpan, sharedSpan, type Variant } from '../../src/ui/screens/compare-shape.ts'

const TEXTS = { lineKind: 'arinc-429-high', frequencyHz: '12M', neededDb: '20', sourceOhm: '150', loadOhm: '12k' }

function variant(name: string, more: Readonly<Record<string, string>> = {}): Variant {
  const fields = readFields(windowCheck, { ...TEXTS, ...more })
  const result = evaluateNow(windowCheck, fields)
  if (!result.ok) throw new Error('refused')
  return { name, fields, result }
}

const strips = (all: readonly Variant[]) =>
  all.flatMap(({ result }) => result?.pictures.filter((picture) => picture.is === 'strip') ?? [])

describe('a comparison', () => {
  const all = [variant('A'), variant('B', { neededDb: '60', sourceOhm: '1' })]

  it('draws every strip on one axis, which holds them all', () => {
    const span = sharedSpan(all.flatMap(({ result }) => result ?? []))
    if (span === undefined) throw new Error('no axis')
    const [one, other] = strips(all)
    if (one?.is !== 'strip' || other?.is !== 'strip') throw new Error('no strip')
    expect(stripSpan(one)).not.toEqual(stripSpan(other))
    expect([one, other].map((picture) => stripSpan(onSpan(picture, span)))).toEqual([span, span])
    expect(onSpan(one, span).rows).toHaveLength(1)
  })

  it('has a row for each changed input and for every figure that one of them has, a column for each variant', () => {
    const table = comparedTable(windowCheck, ['neededDb'], all)
    expect(table.columns.map(({ label }) => label)).toEqual(['What', 'A', 'B'])
    const words = (id: string) =>
      table.rows.find((row) => row.id === id)?.cells.map((cell) => (cell.is === 'word' ? cell.word : ''))
    expect(words('in-neededDb')?.slice(1)).toEqual(['20', '60'])
    const least = words('leastCapacitanceF') ?? []
    expect(least[1]).toMatch(/F$/)
    expect(least[1]).not.toBe(least[2])
    for (const { cells } of table.rows) expect(cells).toHaveLength(3)
  })
})
