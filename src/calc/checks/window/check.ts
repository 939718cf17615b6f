/** The capacitance window of one line: from the attenuation needed (at least) to what the signal stands (at most). */
import { withWords } from '../../with-words.ts'
import { explainWindow } from './explain.ts'
import { wordlessWindow } from './wordless.ts'

export const windowCheck = withWords(wordlessWindow, explainWindow)
