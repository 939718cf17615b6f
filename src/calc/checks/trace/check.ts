/** A measured trace against a limit: what must come off, over all of it at once. */
import type { Check } from '../../types.ts'
import type { TraceFigures } from './figures.ts'
import type { traceInputs } from './inputs.ts'
import { wordlessTrace } from './wordless.ts'
import { explainTrace } from './words.ts'

export const traceCheck: Check<typeof traceInputs, TraceFigures> = { ...wordlessTrace, explain: explainTrace }
