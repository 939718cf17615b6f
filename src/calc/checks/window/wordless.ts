/** The capacitance window of one line: from the attenuation needed (at least) to what the signal stands (at most). */
import type { WordlessCheck } from '../../types.ts'
import { doubtedWindow, ignoredByWindow } from './doubted.ts'
import { type WindowFigures, windowFigures } from './figures.ts'
import { windowInputs } from './inputs.ts'

export const wordlessWindow: WordlessCheck<typeof windowInputs, WindowFigures> = {
  id: 'window',
  title: 'Window',
  question: 'Which capacitance quiets the noise and still lets the signal through?',
  inputs: windowInputs,
  outputs: [
    {
      key: 'proposedF',
      label: 'Proposed, one capacitor as marked',
      quantity: 'capacitance',
      digits: 3,
      lead: true,
      provides: 'markedF',
    },
    { key: 'leastCapacitanceF', label: 'At least', quantity: 'capacitance', digits: 3, side: 'least' },
    { key: 'mostCapacitanceF', label: 'At most', quantity: 'capacitance', digits: 3, side: 'most' },
    { key: 'topologyUsed', label: 'Topology', is: 'words' },
    { key: 'worstLossDb', label: 'Worst-case attenuation with it', quantity: 'decibel', digits: 3, side: 'most' },
    { key: 'overLeastRatio', label: 'Proposed ÷ least', quantity: 'number', digits: 2 },
    { key: 'underMostRatio', label: 'Most ÷ proposed', quantity: 'number', digits: 2 },
    { key: 'permittedF', label: 'Allowed by the document', quantity: 'capacitance', digits: 3, side: 'most' },
    { key: 'chassisRmsA', label: 'Into the chassis, one line', quantity: 'current', digits: 3, side: 'least' },
    {
      key: 'leastInductanceH',
      label: 'Least inductance (L alone)',
      quantity: 'inductance',
      digits: 3,
      side: 'least',
      lead: true,
    },
    {
      key: 'conversionDb',
      label: 'Common mode that becomes signal, at most',
      quantity: 'decibel',
      digits: 3,
      side: 'least',
    },
    { key: 'leastChokeH', label: 'Least choke alone', quantity: 'inductance', digits: 3, side: 'least' },
  ],
  figures: windowFigures,
  doubted: doubtedWindow,
  ignores: ignoredByWindow,
}
