/** What a given filter does: in your circuit and on the 50 Ω bench, with its corners, slope and worst gain. */
import type { Check } from '../../types.ts'
import { type FilterFigures, filterFigures } from './figures.ts'
import { filterInputs } from './inputs.ts'
import { explainFilter } from './words.ts'

export const filterCheck: Check<typeof filterInputs, FilterFigures> = {
  id: 'filter',
  title: 'Filter',
  question: 'What does this filter do, in my circuit and on the bench?',
  inputs: filterInputs,
  outputs: [
    { key: 'insertionLossDb', label: 'In your circuit', quantity: 'decibel', digits: 3, side: 'most', lead: true },
    { key: 'worstInsertionLossDb', label: 'In your circuit, worst part', quantity: 'decibel', digits: 3, side: 'most' },
    {
      key: 'benchInsertionLossDb',
      label: 'On the 50 Ω bench',
      quantity: 'decibel',
      digits: 3,
      side: 'most',
      lead: true,
    },
    {
      key: 'firstCornerHz',
      label: 'First corner (signal starts to suffer)',
      quantity: 'frequency',
      digits: 4,
      lead: true,
    },
    { key: 'cornerHz', label: 'Corner from which it lasts', quantity: 'frequency', digits: 4 },
    { key: 'localSlopeDbPerDecade', label: 'Slope at that frequency', quantity: 'slope', digits: 3 },
    { key: 'asymptoteDbPerDecade', label: 'Slope of the ideal filter', quantity: 'slope', digits: 3 },
    { key: 'peakGainDb', label: 'Worst resonant gain', quantity: 'decibel', digits: 3, side: 'least' },
    { key: 'peakHz', label: 'at', quantity: 'frequency', digits: 4 },
    {
      key: 'chokeConversionDb',
      label: 'Common mode the choke turns into signal',
      quantity: 'decibel',
      digits: 3,
      side: 'least',
    },
  ],
  figures: filterFigures,
  explain: explainFilter,
}
