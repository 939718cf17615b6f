import { expect, it } from 'vitest'
import { choiceOf } from '../../../src/calc/connector/choice.ts'
import { withoutTaken, withTaken } from '../../../src/calc/connector/take.ts'
import { contactOf } from './some-connector.ts'

it('writes a part as the choice of a contact and of the other leg of its pair, and takes it off again', () => {
  const contacts = [
    contactOf('1', 'a', { remark: 'kept' }, { leg: 'a' }),
    contactOf('2', 'a', {}, { leg: 'b' }),
    contactOf('3', 'b'),
  ]
  const taken = withTaken(contacts, [{ id: '1', part: { topology: 'LC', valueF: 4.7e-9, inductanceH: 2.2e-6 } }])
  for (const contact of taken.slice(0, 2))
    expect(choiceOf(contact)).toMatchObject({ topology: 'LC', valueF: 4.7e-9, inductanceH: 2.2e-6, refused: [] })
  expect(taken[0]?.texts.remark).toBe('kept')
  expect(taken[2]).toBe(contacts[2])
  const free = withoutTaken(taken, ['1'])
  expect(free.map((contact) => choiceOf(contact) === undefined)).toEqual([true, false, true])
})
