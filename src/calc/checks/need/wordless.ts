/** How much attenuation is needed: measured level against limit and margin. */
import type { WordlessCheck } from '../../types.ts'
import { type NeedFigures, needFigures } from './figures.ts'
import { needInputs } from './inputs.ts'

export const wordlessNeed: WordlessCheck<typeof needInputs, NeedFigures> = {
  id: 'need',
  title: 'Need',
  question: 'How many dB must come off?',
  inputs: needInputs,
  outputs: [
    {
      key: 'neededDb',
      label: 'Needed attenuation',
      quantity: 'decibel',
      digits: 3,
      side: 'least',
      lead: true,
      provides: 'neededDb',
    },
  ],
  figures: needFigures,
}
