/** What a clamp, a current probe and trial capacitors say of the impedance the noise works in. */
import { withWords } from '../../with-words.ts'
import { wordlessLoop } from './wordless.ts'
import { explainLoop } from './words.ts'

export const loopCheck = withWords(wordlessLoop, explainLoop)
