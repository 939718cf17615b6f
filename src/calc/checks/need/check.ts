/** How much attenuation is needed: measured level against limit and margin. */
import { withWords } from '../../with-words.ts'
import { wordlessNeed } from './wordless.ts'
import { explainNeed } from './words.ts'

export const needCheck = withWords(wordlessNeed, explainNeed)
