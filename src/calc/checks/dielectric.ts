/** How far a capacitor in service is from its mark: as typed, or as its dielectric has it. */
import type { Dielectric } from '../../reference/constructions.ts'
import { CASE_SIZES, type CaseSize, dielectricById, lostToBias } from '../../reference/dielectric-bias.ts'
import type { Spread } from '../bounds/worst-case.ts'
import type { Given } from '../types.ts'
import type { dielectricSpreadInputs } from './dielectric-inputs.ts'

type SpreadGiven = Given<typeof dielectricSpreadInputs>

/** The dielectric that was chosen, with the voltage and build it is taken at: all of its rating and the smallest where not stated. */
export type ChosenDielectric = {
  readonly dielectric: Dielectric
  readonly voltageFrac: number
  readonly size: CaseSize
}

export function chosenDielectric(given: SpreadGiven): ChosenDielectric | undefined {
  const dielectric = given.dielectric === undefined ? undefined : dielectricById(given.dielectric)
  const size = CASE_SIZES.find((one) => one === given.caseSize) ?? 'small-chip'
  return dielectric && { dielectric, voltageFrac: given.voltageFrac ?? 1, size }
}

export function spreadOf(given: SpreadGiven): Spread {
  const { toleranceFrac: tolerance, temperatureFrac, biasFrac, ageingDecades, ageingFracPerDecade } = given
  const chosen = chosenDielectric(given)
  if (chosen === undefined) return { tolerance, temperatureFrac, biasFrac, ageingDecades, ageingFracPerDecade }
  const { dielectric, size, voltageFrac } = chosen
  return {
    tolerance,
    temperatureFrac: dielectric.temperatureFrac,
    biasFrac: lostToBias(dielectric, size, voltageFrac),
    ageingDecades,
    ageingFracPerDecade: dielectric.ageingFracPerDecade,
  }
}
