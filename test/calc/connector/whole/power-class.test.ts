import { describe, expect, it } from 'vitest'
import { classCounts, classesSaid, withClass } from '../../../../src/calc/connector/class-words.ts'
import { scheduleOf } from '../../../../src/calc/connector/schedule.ts'
import { sheetRow } from '../../../../src/calc/connector/sheet/rows.ts'
import { tableFile } from '../../../../src/calc/connector/sheet/table.ts'
import type { Connector } from '../../../../src/calc/connector/types.ts'
import { classQuestion } from '../../../../src/calc/connector/whole/strike/power-class.ts'
import { atOnce } from '../../../../src/calc/line/evaluate.ts'
import { leastClasses } from '../../../../src/calc/surge/least-class.ts'
import type { FactKey, Line } from '../../../../src/calc/types.ts'
import { connectorOf, contactOf, DISCRETE, lineOf } from '../some-connector.ts'

/**
 * The kind reaches 32 V by itself, so a stand-off of 33 V, which breaks down at 40.66 V at most; the pulse comes on top of
 * the 32 V the line may hold. By hand, clamp 1.32 times breakdown at the rated current: Rd = 13.0·53.66/P,
 * I = (Voc + 32 − 40.66)/(5 + Rd), used = I·(40.66 + Rd·I)/(P·3.775), and up to 2 % for the repeats.
 * Level 3 (300 V): 600 W 200 %, 1500 W 61.6 % at 65.4 V. Level 2 (125 V): 400 W 80.8 %, 600 W 52.2 %.
 */
const STRUCK: Partial<Record<FactKey, string>> = {
  ...DISCRETE,
  busMaxV: '25',
  busMinV: '0',
  ambientC: '25',
  suppressorLeadH: '0',
  biasFrac: '0',
  circuitWithstandV: '200',
  capacitorWithstandV: '500',
}
const WF4_3 = { strikeWaveform: 'wf4', strikeLevel: '3' }

function classed(connector: Connector, lines: readonly Line[]) {
  const { rows } = atOnce(scheduleOf(connector, lines))
  const question = classQuestion(connector, rows)
  const said = classesSaid(question.contacts, atOnce(leastClasses(question.stresses)))
  return { question, rows: rows.map((row) => withClass(row, said.get(row.contact.id))) }
}

const one = (
  facts: Partial<Record<FactKey, string>>,
  texts: Connector['texts'] = {},
  more: Partial<Connector> = {},
) => {
  const { rows, question } = classed(
    connectorOf([contactOf('1', 'a', { chosenTopology: 'none' })], { texts, ...more }),
    [lineOf('a', { ...STRUCK, ...facts })],
  )
  return { suppressor: rows[0]?.suppressor, question }
}

describe('the power class of a contact', () => {
  it('is the least for the pin level of the connector, with its reason', () => {
    const { suppressor } = one({}, WF4_3)
    expect(suppressor?.class).toBe('33\u00a0V stand-off, unidirectional, 1.5\u00a0kW (10/1000 µs)')
    expect(suppressor?.why).toContain('least class for DO-160 waveform 4 (voltage 6.4/69 µs), level 3')
    expect(suppressor?.why).toMatch(/600.W would use 20[0-4].% of its rating/u)
    expect(suppressor?.why).toMatch(/it uses 6[12]\.\d.% of its rating, and lets 65\.[45].V through of 200.V/u)
    expect(suppressor?.why).not.toContain('Not entered')
  })

  it('is that of the test its own line names, before the connector’s', () => {
    expect(one({ surgeWaveform: 'wf4', surgeLevel: '2' }, WF4_3).suppressor?.class).toContain('600\u00a0W')
    // the level is not borrowed from the connector
    expect(one({ surgeWaveform: 'wf4' }, WF4_3).suppressor?.why).toContain('needs the level of the test')
    expect(one({ surgeLevel: '2' }, WF4_3).suppressor?.why).toContain('needs the waveform of the test')
  })

  // 28 V DC of an unnamed category may surge for a tenth of a second: no 10/1000 µs rating says what that does
  it('is none while surges of its supply may flow through the part', () => {
    const supply = { lineKind: 'power-28-vdc', busMaxV: '', busMinV: '', supplyCategory: '' }
    const { suppressor, question } = one(supply, WF4_3)
    expect(question.stresses).toEqual([])
    expect(suppressor?.class).toContain('power class open')
    expect(suppressor?.why).toContain('needs the category of the supply')
    expect(one({ ...supply, supplyCategory: 'do160-a' }, WF4_3).question.stresses.length).toBe(1)
  })

  it('says what is missing where no test is named', () => {
    const bare = one({})
    expect(bare.suppressor?.class).toBeUndefined()
    expect(bare.suppressor?.why).toContain('needs the waveform and level of the test')
    const half = one({}, { strikeWaveform: 'wf4' })
    expect(half.suppressor?.class).toBe('33\u00a0V stand-off, unidirectional, power class open')
    expect(half.suppressor?.why).toContain('needs the pin level of the test')
    expect(one({}, { strikeWaveform: 'wf4', strikeLevel: 'high' }).suppressor?.why).toContain('“high” is no level')
    expect(one({}, { strikeWaveform: 'wf4', strikeLevel: '9' }).suppressor?.why).toContain('needs another test')
  })

  it('takes what nobody entered the stricter way, and says so: 1.92 times 62 % of 1500 W at 85 °C is too much', () => {
    const { suppressor } = one({ ambientC: '', suppressorLeadH: '' }, WF4_3)
    expect(suppressor?.class).toContain('3\u00a0kW')
    expect(suppressor?.why).toContain('temperature 85\u00a0°C')
    expect(suppressor?.why).toContain('suppressor lead inductance 10\u00a0nH')
  })

  it('judges the rating alone where the circuit’s withstand is not known, and says so', () => {
    const { suppressor } = one({ circuitWithstandV: '' }, WF4_3)
    expect(suppressor?.class).toContain('1.5\u00a0kW')
    expect(suppressor?.why).toContain('only the rating is judged')
    // what the circuit withstands may ask for a larger one
    expect(suppressor?.class).toContain('at least 1.5\u00a0kW')
    expect(one({}, WF4_3).suppressor?.class).not.toContain('at least')
  })

  it('is open where no class clamps below what the circuit withstands', () => {
    const { suppressor } = one({ circuitWithstandV: '34' }, WF4_3)
    expect(suppressor?.class).toContain('power class open')
    expect(suppressor?.why).toMatch(/No usual power class carries .*30.kW lets .*34.V/u)
  })

  it('of a part that several share is not that of one contact', () => {
    const { suppressor, question } = one({}, WF4_3, { suppressors: [{ id: 'g', contacts: ['1', '2'] }] })
    expect(question.stresses).toEqual([])
    expect(suppressor?.why).toContain('the part it shares')
  })

  it('waits for what is fitted to be decided, and is none where the line is barred', () => {
    const connector = connectorOf([contactOf('1', 'a'), contactOf('2', 'b')], { texts: WF4_3 })
    const { rows } = classed(connector, [
      lineOf('a', { ...STRUCK, noiseHz: '', neededDb: '' }),
      lineOf('b', { ...STRUCK, lineKind: 'pyrotechnic' }),
    ])
    expect(rows[0]?.suppressor?.why).toContain('needs what is fitted here to be decided')
    expect(rows[1]?.suppressor).toBeUndefined()
  })
})

describe('what a class leaves open', () => {
  it('is its own capacitance, until it is entered', () => {
    expect(one({}, WF4_3).suppressor?.why).not.toContain('not judged here')
    expect(one({ suppressorF: '' }, WF4_3).suppressor?.why).toContain('What its own capacitance takes from the signal')
  })
})

describe('the classes of a connector', () => {
  const contacts = ['1', '2', '3'].map((id) => contactOf(id, id, { chosenTopology: 'none' }))
  const connector = connectorOf(contacts, { texts: WF4_3 })
  const lines = [
    lineOf('1', STRUCK),
    lineOf('2', { ...STRUCK }),
    lineOf('3', { ...STRUCK, surgeWaveform: 'wf4', surgeLevel: '2' }),
  ]

  it('are worked out once for equal surges, as plain data', () => {
    const { question } = classed(connector, lines)
    expect(question.stresses.length).toBe(2)
    expect(structuredClone(question)).toEqual(question)
  })

  it('are counted, and stand in sheet and table in the words of the contact', () => {
    const { rows } = classed(connector, lines)
    const counts = classCounts(rows)
    expect(counts?.sentence).toContain(
      '2 × 33\u00a0V stand-off, unidirectional, 1.5\u00a0kW (10/1000 µs) (contacts 1 and 2)',
    )
    expect(counts?.sentence).toContain('1 × 33\u00a0V stand-off, unidirectional, 600\u00a0W (10/1000 µs) (contact 3)')
    const sheet = rows.map((row) => sheetRow(row))
    expect(sheet[0]?.suppressor).toBe(rows[0]?.suppressor?.class)
    expect(sheet[0]?.why).toContain('is the least class for')
    expect(tableFile({ connector, lines, rows: sheet })).toContain(rows[0]?.suppressor?.class ?? 'none')
  })
})
