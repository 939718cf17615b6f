import { describe, expect, it } from 'vitest'
import { surgeCheck } from '../../../src/calc/checks/surge/check.ts'
import { readFields } from '../../../src/calc/line/fields.ts'
import { levelInCategory } from '../../../src/calc/quantity/category.ts'

describe('a test category', () => {
  it.each([
    ['A3', 'AB', '3'],
    ['b5', 'AB', '5'],
    ['A 4 G4 L3', 'AB', '4'],
    ['A4G3L2', 'CDEFGHJK', '3'],
    // a category without a pin test, or without one of the sets asked for, gives no level
    ['AXG4L3', 'AB', 'AXG4L3'],
    ['G4', 'AB', 'G4'],
    ['3', 'AB', '3'],
    ['A6', 'AB', 'A6'],
    ['A3 level', 'AB', 'A3 level'],
  ])('%s, of the sets %s, reads %s', (text, letters, level) => {
    expect(levelInCategory(text, letters)).toBe(level)
  })

  it('fills the level fields of the surge check, and only those', () => {
    const fields = readFields(surgeCheck, { level: 'A4G3L2', bundleLevel: 'A4G3L2', seriesCount: 'A4G3L2' })
    const of = (key: string) => fields.find((field) => field.key === key)
    expect(of('level')).toMatchObject({ state: 'value', value: 4, text: 'A4G3L2' })
    expect(of('bundleLevel')).toMatchObject({ state: 'value', value: 3 })
    expect(of('seriesCount')?.state).toBe('refused')
  })
})
