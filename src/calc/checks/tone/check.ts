/** What may make a tone, from what turns and switches on board, and the test between the first two. */
import type { Check } from '../../types.ts'
import { type ToneFigures, toneFigures } from './figures.ts'
import { toneInputs } from './inputs.ts'
import { explainTone } from './words.ts'

const HERTZ = { quantity: 'frequency', digits: 4 } as const

export const toneCheck: Check<typeof toneInputs, ToneFigures> = {
  id: 'tone',
  title: 'Tone',
  question: 'What makes this tone?',
  inputs: toneInputs,
  outputs: [
    { key: 'best', label: 'Best explained by', is: 'words', lead: true },
    { key: 'predictedHz', label: 'It gives', ...HERTZ },
    { key: 'order', label: 'Its order', quantity: 'number', digits: 3 },
    { key: 'secondHz', label: 'The second gives', ...HERTZ },
    { key: 'explanationCount', label: 'Explanations', quantity: 'count', digits: 3 },
    { key: 'turnHz', label: 'Turns a second', ...HERTZ },
    { key: 'toneOrder', label: 'Tone ÷ turns', quantity: 'number', digits: 3 },
  ],
  figures: toneFigures,
  explain: explainTone,
}
