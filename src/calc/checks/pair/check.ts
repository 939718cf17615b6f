/** How much common mode two unequal capacitors of a pair turn into signal. */
import type { Check } from '../../types.ts'
import { type PairFigures, pairFigures } from './figures.ts'
import { pairInputs } from './inputs.ts'
import { explainPair } from './words.ts'

export const pairCheck: Check<typeof pairInputs, PairFigures> = {
  id: 'pair',
  title: 'Pair',
  question: 'How much common mode do two unequal capacitors turn into signal?',
  inputs: pairInputs,
  outputs: [
    {
      key: 'conversionDb',
      label: 'Conversion at the noise',
      quantity: 'decibel',
      digits: 3,
      side: 'least',
      lead: true,
    },
    { key: 'worstConversionDb', label: 'Worst conversion', quantity: 'decibel', digits: 3, side: 'least', lead: true },
    { key: 'worstHz', label: 'Worst at', quantity: 'frequency', digits: 4 },
    { key: 'differentialF', label: 'Between the wires', quantity: 'capacitance', digits: 3 },
    { key: 'commonF', label: 'Both wires to chassis', quantity: 'capacitance', digits: 3 },
  ],
  figures: pairFigures,
  explain: explainPair,
}
