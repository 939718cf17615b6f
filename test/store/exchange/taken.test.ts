/** What stood before a file came in, read back from a record that may be damaged. */
import { expect, it } from 'vitest'
import { restoreTaken } from '../../../src/store/exchange/taken.ts'

it('passes over what does not say whose it was or until when', () => {
  const whole = { id: 'a', until: '2026-01-01T00:00:00.000Z' }
  const before = [null, 'x', { id: 1, until: 'x' }, { id: 'b' }, { until: 'x' }, whole]
  expect(restoreTaken({ at: 'now', before })).toMatchObject({ at: 'now', before: [whole] })
  for (const raw of [null, 'x', {}, { at: 1 }]) expect(restoreTaken(raw)).toBeUndefined()
})
