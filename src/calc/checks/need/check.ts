/** How much attenuation is needed: measured level against limit and margin. */
import type { Check } from '../../types.ts'
import type { NeedFigures } from './figures.ts'
import type { needInputs } from './inputs.ts'
import { wordlessNeed } from './wordless.ts'
import { explainNeed } from './words.ts'

export const needCheck: Check<typeof needInputs, NeedFigures> = { ...wordlessNeed, explain: explainNeed }
