/** The window of a line that stands on a contact. */
import { expect, it } from 'vitest'
import { windowAnswer } from '../../../src/calc/connector/contact-line.ts'
import { atOnce } from '../../../src/calc/line/evaluate.ts'
import { lineOf } from '../../support/decided-contact.ts'

it('a window that refuses a line says which field', () => {
  const line = lineOf('a', { lineKind: 'not-listed', noiseHz: '1M; 2M', neededDb: '20; 30; 40' })
  expect(atOnce(windowAnswer(line, undefined))).toMatchObject({ is: 'refused', key: 'neededDb' })
})
