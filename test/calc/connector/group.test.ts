import { describe, expect, it } from 'vitest'
import { fewestTopologies, groupOf, mergesOf } from '../../../src/calc/connector/group.ts'
import { scheduleOf } from '../../../src/calc/connector/schedule.ts'
import type { Contact } from '../../../src/calc/connector/types.ts'
import type { FactKey } from '../../../src/calc/types.ts'
import { connectorOf, contactOf, DISCRETE, finished, lineOf } from './some-connector.ts'

const grouped = (
  facts: readonly Partial<Record<FactKey, string>>[],
  texts: readonly Contact['texts'][] = [],
  ratio = 1,
) => {
  const lines = facts.map((one, i) => lineOf(`l${i}`, { ...DISCRETE, ...one }))
  const connector = connectorOf(lines.map(({ id }, i) => contactOf(String(i + 1), id, texts[i])))
  const { asked } = finished(scheduleOf(connector, lines))
  return finished(groupOf(asked, ratio))
}

/** Shunt C between 50 Ω and 50 Ω at 10 MHz; class 1 of ±10 %. */
const leastF = (db: number) => Math.sqrt(10 ** (db / 10) - 1) / (2 * Math.PI * 10e6 * 25) / (0.9 * 0.997)

describe('the parts of a connector brought down to few', () => {
  it('finds one value for needs that one window holds, and what it costs each contact', () => {
    // 10 nF meets 20 dB (7.06 nF), 26 dB needs 14.1 nF: one value for both is 15 nF or more
    const { curve, contacts } = grouped([{ neededDb: '20' }, { neededDb: '26' }, { neededDb: '14' }])
    expect(contacts.map(({ options }) => options[0]?.leastF)).toEqual(
      [20, 26, 14].map((db) => expect.closeTo(leastF(db), 15)),
    )
    expect(curve[0]?.parts).toBe(1)
    const valueF = curve[0]?.grouping.parts[0]?.valueF ?? 0
    expect(valueF).toBeGreaterThanOrEqual(leastF(26))
    const merges = mergesOf(contacts, (curve[0] as (typeof curve)[number]).grouping)
    for (const { from, to, lostDb, id } of merges) {
      const least = leastF([20, 26, 14][Number(id) - 1] as number)
      // a single capacitor far above its corner: 20 dB a decade
      expect(lostDb).toBeCloseTo(20 * Math.log10(from.valueF / to.valueF), 0)
      expect(to.valueF).toBeGreaterThanOrEqual(least)
    }
  })

  it('keeps what the user chose as a part of its own', () => {
    const { curve, contacts } = grouped([{ neededDb: '20' }, { neededDb: '20' }], [{ chosenF: '9.1n' }])
    expect(contacts[0]?.valueF).toBe(9.1e-9)
    const [first] = curve
    expect(first?.grouping.parts.map(({ valueF }) => valueF)).toContain(9.1e-9)
    expect(first?.parts).toBe(1)
  })

  it('gives a contact whose ceiling is not known no more than it would have by itself', () => {
    const { curve, contacts } = grouped([{ lineKind: 'power-28-vdc', neededDb: '20' }, { neededDb: '45' }])
    const [own] = contacts
    for (const { grouping } of curve) {
      const part = grouping.parts[grouping.partOf[0] ?? -1]
      expect(part?.valueF).toBeLessThanOrEqual(own?.valueF ?? 0)
      expect(part?.valueF).toBeGreaterThanOrEqual(leastF(20))
    }
    expect(curve[0]?.parts).toBe(2)
  })

  it('takes one topology where one serves all, and two where none does', () => {
    const option = (topology: 'C' | 'LC', nano: number) => ({ topology, leastF: nano * 1e-9, mostF: nano * 2e-9 })
    const values = [1e-9, 1.5e-9, 10e-9, 15e-9, 22e-9]
    const fewest = (...contacts: (readonly ReturnType<typeof option>[])[]) =>
      finished(
        fewestTopologies(
          contacts.map((options, i) => ({ id: String(i), options })),
          values,
        ),
      )?.parts
    // two values of one topology before one value of each of two
    expect(fewest([option('C', 1), option('LC', 10)], [option('LC', 10)], [option('LC', 14)])).toEqual([
      { topology: 'LC', valueF: 15e-9 },
    ])
    expect(
      fewest([option('C', 1)], [option('LC', 10)])
        ?.map(({ topology }) => topology)
        .sort(),
    ).toEqual(['C', 'LC'])
  })

  it('counts ceramics by class, and by the ratio the maker states', () => {
    const needs = [
      { neededDb: '6' },
      { neededDb: '40', dielectric: 'x7r', voltageFrac: '20 %', caseSize: 'filter-part' },
    ]
    expect(grouped(needs, [], 100).planes.ceramics).toBe(2)
    const same = [{ neededDb: '6', existingF: '0' }, { neededDb: '50' }]
    expect(grouped(same, [{ chosenF: '1.2n' }, { chosenF: '330n' }], 1).planes.ceramics).toBe(2)
    expect(grouped(same, [{ chosenF: '1.2n' }, { chosenF: '330n' }], 1000).planes.ceramics).toBe(1)
  })
})
