/** What can be built, what closes a hole, and what is asked of the maker; figures worked out beside the code. */
import { describe, expect, it } from 'vitest'
import { seriesOf } from '../../../src/calc/connector/build.ts'
import { buildWords, thinAirWords, toleranceWords } from '../../../src/calc/connector/build-words.ts'
import { suppressorFor } from '../../../src/calc/connector/place.ts'
import { scheduleOf } from '../../../src/calc/connector/schedule.ts'
import type { Connector, Contact } from '../../../src/calc/connector/types.ts'
import type { FactKey } from '../../../src/calc/types.ts'
import { connectorOf, contactOf, DISCRETE, finished, lineOf } from './some-connector.ts'

const one = (facts: Partial<Record<FactKey, string>>, texts: Contact['texts'] = {}, more: Partial<Connector> = {}) =>
  finished(scheduleOf(connectorOf([contactOf('1', 'a', texts)], more), [lineOf('a', { ...DISCRETE, ...facts })]))
const power = (kind: string, texts: Contact['texts'] = {}) =>
  one({ lineKind: kind, maxBuildableF: '1u', chassisLimitA: '1' }, texts).rows[0]?.build

describe('the value column', () => {
  it('names the series of a value', () => {
    expect([1e-9, 4.7e-9, 1.5e-7, 820e-12, 9.1e-9, 1e-8, 6.8e-6].map(seriesOf)).toEqual([
      'E6',
      'E6',
      'E6',
      'E12',
      'none',
      'E6',
      'E6',
    ])
  })

  it('takes the class above what passes on the line, tested at 2.5 times its rating', () => {
    // MIL-STD-704F: 28 V DC has normal transients to 50 V, 270 V DC to 330 V
    expect(power('power-28-vdc')).toMatchObject({ passingV: 50, ratedV: 50, testV: 125 })
    expect(power('power-270-vdc')).toMatchObject({ passingV: 330, ratedV: 500, testV: 1250 })
  })

  it('warns of thin air where the line or its test reaches 327 V, unless the zone is pressurised', () => {
    expect(power('power-270-vdc')?.thinAir).toBe('line')
    expect(power('power-270-vdc', { zone: 'pressurised' })?.thinAir).toBeUndefined()
    const ac = power('power-115-vac-400', { zone: 'unpressurised' })
    // 180 V rms for a moment is 254.6 V peak: below it; the 500 V class is tested above it
    expect(ac?.thinAir).toBe('test')
    expect(ac && thinAirWords(ac)).toContain('Unpressurised: the test at')
    expect(power('power-28-vdc', { zone: 'unpressurised' })?.thinAir).toBeUndefined()
  })

  it('shows what each dielectric leaves of the window by the shares of its mark', () => {
    const [row] = one({}).rows
    const bx = row?.build?.dielectrics.find(({ id }) => id === 'bx')
    // ±10 %, BX −25 % over temperature and volts, two decades of 2.5 %: 0.9 · 0.75 · 0.950625
    const leastF = Math.sqrt(99) / (2 * Math.PI * 10e6 * 25)
    expect(bx?.leastF).toBeCloseTo(leastF / (0.9 * 0.75 * 0.950625), 14)
    expect(bx?.holds).toBe(true)
    expect(row?.build && buildWords(row.build)).toMatch(/^E6 value; .* class .*; class 2 holds it/)
  })

  it('says how much wider a tighter tolerance makes the window', () => {
    const build = one({}).rows[0]?.build
    // from ±10 %: (1.1/0.9)/(1.05/0.95)
    expect(build?.tolerances.find(({ toleranceFrac }) => toleranceFrac === 0.05)?.timesWider).toBeCloseTo(
      1.1 / 0.9 / (1.05 / 0.95),
      12,
    )
    expect(build && toleranceWords(build)).toBe('Tolerance: the window gets wider with ±5\u00a0% 1.1 times.')
  })
})

describe('contacts without a part', () => {
  const beside = (contact: Contact, facts: Partial<Record<FactKey, string>> = {}) =>
    finished(
      scheduleOf(connectorOf([contactOf('1', 'a'), contact]), [
        lineOf('a', DISCRETE),
        lineOf('b', facts),
        lineOf('c', { lineKind: 'fuel-quantity' }),
      ]),
    ).rows[1]

  it('are holes beside filtered ones, and are offered what their signal stands', () => {
    const row = beside(contactOf('2', 'b'), { lineKind: 'arinc-429-high', existingF: '0', suppressorF: '0' })
    expect(row?.findings[0]?.sentence).toContain('a hole in the wall')
    expect(row?.offer).toMatchObject({ topology: 'C' })
    // ARINC 429 allows a receiver 50 pF a line: ÷ 1.38 for tolerance and heat, ÷ 1.5 is 24 pF
    expect(row?.offer?.valueF).toBe(22e-12)
    const bare = beside(contactOf('2', 'b', { chosenTopology: 'none' }), { ...DISCRETE })
    expect(bare?.findings[0]?.sentence).toContain('Bare by choice')
    expect(bare?.verdict).toBe('marginal')
  })

  it('are told apart: ground goes to the plate, a spare is a hole, a feed-through is one on purpose, a barred line gets nothing', () => {
    const typed = (type: Contact['type']) => beside(contactOf('2', undefined, {}, { type }))
    expect(typed('ground')?.findings).toEqual([])
    expect(typed('spare')?.verdict).toBe('marginal')
    expect(typed('spare')?.findings[0]?.sentence).toContain('tie it to the plate')
    expect(typed('feed-through')?.verdict).toBeUndefined()
    expect(typed('feed-through')?.findings[0]?.sentence).toContain('on purpose')
    const barred = beside(contactOf('2', 'c'))
    expect(barred?.offer).toBeUndefined()
    expect(barred?.findings[0]?.sentence).toContain('stays bare')
  })

  it('are no holes where nothing is filtered', () => {
    const { rows } = finished(scheduleOf(connectorOf([contactOf('1', undefined, {}, { type: 'spare' })]), []))
    expect(rows[0]?.findings).toEqual([])
  })
})

describe('suppressors and places', () => {
  const advised = (facts: Partial<Record<FactKey, string>>) => suppressorFor(lineOf('a', facts)).class
  const struck = { surgeWaveform: 'wf4', surgeLevel: '3' }

  it('proposes the smallest stand-off above all the line does, cold breakdown too', () => {
    // 33 V: 36.6 V at 25 °C, 33.8 V at −55 °C, above 32.2 V
    expect(advised({ ...struck, lineKind: 'power-28-vdc' })).toBe('33\u00a0V stand-off, unidirectional')
    // category Z passes 80 V for 100 ms; 78 V breaks down at 79.9 V when cold
    expect(advised({ ...struck, lineKind: 'power-28-vdc', supplyCategory: 'do160-z' })).toBe(
      '85\u00a0V stand-off, unidirectional',
    )
    expect(advised({ ...struck, lineKind: 'power-115-vac-400' })).toMatch(/bidirectional$/)
  })

  it('proposes none where no strike was entered', () => {
    expect(advised({ lineKind: 'power-28-vdc' })).toBeUndefined()
    expect(one({}).rows[0]?.suppressor?.why).toContain('No strike was entered')
  })

  it('proposes none while nobody says whether the line goes below chassis', () => {
    const of = (facts: Partial<Record<FactKey, string>>) =>
      suppressorFor(lineOf('a', { ...struck, busMaxV: '40', ...facts }))
    expect(of({}).class).toBeUndefined()
    expect(of({}).why).toContain('lowest peak')
    expect(of({ busMinV: '0' }).class).toBe('40\u00a0V stand-off, unidirectional')
    expect(of({ busMinV: '-5' }).class).toBe('40\u00a0V stand-off, bidirectional')
  })

  it('says where the part goes', () => {
    expect(one({}).rows[0]?.place).toBe('in this connector: capacitor to the plate')
    expect(one({}, {}, { texts: { half: 'in-line adapter' } }).rows[0]?.place).toContain('not for flight')
  })
})

describe('the question list for the maker', () => {
  it('asks what is open, each once, and nothing without a part', () => {
    const schedule = finished(
      scheduleOf(
        connectorOf([contactOf('1', 'a'), contactOf('2', 'b'), contactOf('3', 'a', { chosenF: '9.1n' })], {
          shared: {},
        }),
        [lineOf('a', DISCRETE), lineOf('b', { ...DISCRETE, neededDb: '50' })],
      ),
    )
    const ids = schedule.questions.map(({ id }) => id)
    expect(ids).toContain('plane-practice')
    expect(ids).toContain('plane-ratio')
    expect(ids).toContain('series-9.1e-9')
    expect(ids).toContain('bond')
    expect(new Set(ids).size).toBe(ids.length)
    // contact 2 has the largest part, and stands second all the same
    expect(schedule.parts[0]?.contacts).toEqual(['2'])
    expect(schedule.questions.find(({ id }) => id === 'plane-practice')?.contacts).toEqual(['1', '2', '3'])
    expect(finished(scheduleOf(connectorOf([]), [])).questions).toEqual([])
  })
})
