/** A measured trace against a limit: what must come off, over all of it at once. */
import { withWords } from '../../with-words.ts'
import { wordlessTrace } from './wordless.ts'
import { explainTrace } from './words.ts'

export const traceCheck = withWords(wordlessTrace, explainTrace)
