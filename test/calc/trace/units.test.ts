/** Units as headings write them: where the word for the mean square may stand, and where it makes no unit. */
import { expect, test } from 'vitest'
import { levelScaleIn, levelScaleOf } from '../../../src/calc/trace/units.ts'

test.each(['Level (V rms)', 'Level (rms V)', 'Level [Vrms]', 'Level (V (rms))'])('“%s” is volts', (heading) => {
  // 1 V is a million microvolts
  expect(levelScaleIn(heading)).toEqual(levelScaleOf('V'))
  expect(levelScaleOf('V')).toMatchObject({ unit: 'dBµV' })
})

test('“m rms V” is asked about: between a prefix and its unit the word belongs to neither', () => {
  expect(levelScaleOf('m rms V')).toBeUndefined()
})
