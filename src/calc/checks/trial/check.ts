/** What capacitors tried on a line show, leave open and exclude, and which assumption they refute. */
import { withWords } from '../../with-words.ts'
import { wordlessTrial } from './wordless.ts'
import { explainTrial } from './words.ts'

export const trialCheck = withWords(wordlessTrial, explainTrial)
