/** What capacitors tried on a line show, leave open and exclude, and which assumption they refute. */
import type { Check } from '../../types.ts'
import type { TrialFigures } from './figures.ts'
import type { trialInputs } from './inputs.ts'
import { wordlessTrial } from './wordless.ts'
import { explainTrial } from './words.ts'

export const trialCheck: Check<typeof trialInputs, TrialFigures> = { ...wordlessTrial, explain: explainTrial }
