/** The dielectric that was chosen: at the build named, or at the one that loses most. */
import { expect, it } from 'vitest'
import { chosenDielectric } from '../../../src/calc/checks/dielectric.ts'
import { CASE_SIZES } from '../../../src/reference/dielectric-bias.ts'

const given = (caseSize: string | undefined) => ({
  toleranceFrac: { lowFrac: 0.1, highFrac: 0.1 },
  temperatureFrac: 0,
  biasFrac: 0,
  ageingDecades: 0,
  ageingFracPerDecade: 0,
  dielectric: 'x7r',
  voltageFrac: 0.5,
  caseSize,
})

it.each(CASE_SIZES)('is taken at the build named: %s', (size) => {
  expect(chosenDielectric(given(size))).toMatchObject({ size, voltageFrac: 0.5 })
})

it('is taken as the smallest chip where no build is named', () => {
  expect(chosenDielectric(given(undefined))?.size).toBe('small-chip')
})
