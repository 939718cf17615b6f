import { describe, expect, it } from 'vitest'
import { scheduleOf } from '../../../../src/calc/connector/schedule.ts'
import { contactList } from '../../../../src/calc/connector/sheet/contact-list.ts'
import { NONE, sheetRow } from '../../../../src/calc/connector/sheet/rows.ts'
import type { Contact, ContactText } from '../../../../src/calc/connector/types.ts'
import { atOnce } from '../../../../src/calc/line/evaluate.ts'
import type { Line } from '../../../../src/calc/types.ts'
import { connectorOf, contactOf, DISCRETE, lineOf } from '../some-connector.ts'

const rowOf = (contact: Contact, lines: readonly Line[] = []) => {
  const [row] = atOnce(scheduleOf(connectorOf([contact]), lines)).rows
  if (row === undefined) throw new Error('A connector of one contact has one row.')
  return sheetRow(row)
}

const discrete = (texts: Partial<Record<ContactText, string>>, gate: Line['gate'] = 'clear') =>
  rowOf(contactOf('7', 'gear', texts), [lineOf('gear', DISCRETE, gate)])

describe('the row of a contact', () => {
  it('says need, part with its spread, and verdict in words', () => {
    const row = discrete({ function: 'Gear down', remark: 'long cable' })
    expect(row).toMatchObject({
      id: '7',
      function: 'Gear down',
      kind: 'Discrete, open or ground',
      needs: '20\u00a0dB at 10\u00a0MHz',
      topology: 'C',
      verdict: 'ok',
      word: 'yes',
      remark: 'long cable',
    })
    // 10 % parts of class 1, 0.3 % over temperature: 0.9 · 0.997 and 1.1 · 1.003
    expect(row.spread).toMatch(/^tolerance 10 %, C0G\/NP0 \(class 1\), /)
    const [value = 0, least = 0, most = 0] = [row.value, ...(row.spread.split(', ')[2]?.split(' to ') ?? [])].map(
      (text) => Number.parseFloat(text),
    )
    expect(least / value).toBeCloseTo(0.9 * 0.997, 2)
    expect(most / value).toBeCloseTo(1.1 * 1.003, 2)
  })

  it('writes two capacitors of a Pi and the inductance, and takes the name of the line where no function is written', () => {
    const row = discrete({
      chosenTopology: 'PI',
      chosenF: '1n',
      chosenH: '4.7u',
      chosenSuppressor: 'class 2',
      chosenPlace: 'plug',
    })
    expect(row).toMatchObject({
      topology: 'Pi',
      value: '2 × 1\u00a0nF, 4.7\u00a0µH',
      suppressor: 'class 2',
      place: 'plug',
      function: 'gear',
    })
  })

  it('says what a contact without a part is', () => {
    expect(rowOf(contactOf('1', undefined, {}, { type: 'ground' }))).toMatchObject({
      kind: 'ground',
      needs: NONE,
      topology: NONE,
      word: NONE,
    })
    expect(rowOf(contactOf('1', undefined))).toMatchObject({ kind: 'not named', topology: 'open', word: 'not known' })
    expect(discrete({ chosenTopology: 'none' })).toMatchObject({ topology: 'bare', value: NONE, word: 'with care' })
    const barred = rowOf(contactOf('1', 'squib'), [lineOf('squib', { lineKind: 'pyrotechnic' })])
    expect(barred).toMatchObject({ topology: 'barred', value: NONE, word: 'never', verdict: 'fails' })
  })

  it('says no sentence twice, and that advice waits for the safety questions', () => {
    const { why } = rowOf(contactOf('1', 'squib'), [lineOf('squib', { lineKind: 'pyrotechnic' })])
    expect(why.split('No field trial').length).toBe(2)
    expect(discrete({}, 'unknown').why).toContain('waits for the safety questions')
  })
})

describe('a list of contacts', () => {
  const order = ['1', '2', '3', '4', '5', 'A', 'B']
  it('writes three neighbours or more as a range, in the order of the connector', () => {
    expect(contactList(['3', '2', '1'], order)).toBe('1 to 3')
    expect(contactList(['1', '2', '4', '5', 'A', 'B'], order)).toBe('1, 2, 4 to B')
    expect(contactList(['B'], order)).toBe('B')
    expect(contactList(['Z', '1'], order)).toBe('1, Z')
    expect(contactList([], order)).toBe('')
  })
})
