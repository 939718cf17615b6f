/** What a clamp, a current probe and trial capacitors say of the impedance the noise works in. */
import type { Check } from '../../types.ts'
import type { LoopFigures } from './figures.ts'
import type { loopInputs } from './inputs.ts'
import { wordlessLoop } from './wordless.ts'
import { explainLoop } from './words.ts'

export const loopCheck: Check<typeof loopInputs, LoopFigures> = { ...wordlessLoop, explain: explainLoop }
