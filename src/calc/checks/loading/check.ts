/** How much capacitance a signal stands, and what a given one does to it. */
import type { Check } from '../../types.ts'
import { type LoadingFigures, loadingFigures } from './figures.ts'
import { loadingInputs } from './inputs.ts'
import { restingLoading } from './sentence.ts'
import { explainLoading } from './words.ts'

export const loadingCheck: Check<typeof loadingInputs, LoadingFigures> = {
  id: 'loading',
  title: 'Loading',
  question: 'How much capacitance does this signal stand, and what does this one do to it?',
  inputs: loadingInputs,
  outputs: [
    { key: 'mostCapacitanceF', label: 'Most per leg', quantity: 'capacitance', digits: 3, side: 'most', lead: true },
    { key: 'differentialF', label: 'Between the wires', quantity: 'capacitance', digits: 3 },
    { key: 'edgeSec', label: 'Edge', quantity: 'time', digits: 3 },
    { key: 'eyeFrac', label: 'Inner eye', quantity: 'fraction', digits: 3 },
    { key: 'jitterFrac', label: 'Jitter, share of a bit', quantity: 'fraction', digits: 3 },
    { key: 'returnLossDb', label: 'Return loss', quantity: 'decibel', digits: 3 },
    { key: 'bandLossDb', label: 'Loss at the top of the band', quantity: 'decibel', digits: 3 },
    { key: 'phaseDeg', label: 'Phase at the carrier', quantity: 'angle', digits: 3 },
    { key: 'terminalOhm', label: 'Impedance it leaves', quantity: 'resistance', digits: 3 },
    { key: 'damping', label: 'Damping with the inductor', quantity: 'number', digits: 3 },
  ],
  figures: loadingFigures,
  explain: explainLoading,
  resting: restingLoading,
}
