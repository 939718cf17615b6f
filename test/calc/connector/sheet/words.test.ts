import { expect, it } from 'vitest'
import { scheduleOf } from '../../../../src/calc/connector/schedule.ts'
import { sheetRow } from '../../../../src/calc/connector/sheet/rows.ts'
import { countWords } from '../../../../src/calc/connector/sheet/words.ts'
import { atOnce } from '../../../../src/calc/line/evaluate.ts'
import { connectorOf, contactOf, DISCRETE, lineOf } from '../some-connector.ts'

it('counts contacts as the face does: a spare is none with care, a contact of which nothing is known is not without a line', () => {
  const contacts = [
    contactOf('1', 'a'),
    contactOf('2', 'barred'),
    contactOf('3', undefined),
    contactOf('4', undefined, {}, { type: 'spare' }),
    contactOf('5', undefined, {}, { type: 'ground' }),
  ]
  const lines = [lineOf('a', DISCRETE), lineOf('barred', DISCRETE, 'barred')]
  const { rows } = atOnce(scheduleOf(connectorOf(contacts), lines))
  expect(rows[3]?.verdict).toBe('marginal')
  expect(countWords(rows.map((row) => sheetRow(row)))).toBe('1 yes, 1 not known, 1 never, 2 without a line')
})
