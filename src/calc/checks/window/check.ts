/** The capacitance window of one line: from the attenuation needed (at least) to what the signal stands (at most). */
import type { Check } from '../../types.ts'
import { explainWindow } from './explain.ts'
import type { WindowFigures } from './figures.ts'
import type { windowInputs } from './inputs.ts'
import { wordlessWindow } from './wordless.ts'

export const windowCheck: Check<typeof windowInputs, WindowFigures> = { ...wordlessWindow, explain: explainWindow }
