/** A surge through line, suppressor and filter: does the circuit live, does the suppressor live, does the signal live? */
import type { Check } from '../../types.ts'
import { explainSurge } from './explain.ts'
import { type SurgeFigures, surgeFigures } from './figures.ts'
import { surgeInputs } from './inputs.ts'

export const surgeCheck: Check<typeof surgeInputs, SurgeFigures> = {
  id: 'surge',
  title: 'Surge',
  question: 'Does the circuit survive, and the suppressor, and the signal?',
  inputs: surgeInputs,
  outputs: [
    { key: 'loadPeakV', label: 'Peak at the load', quantity: 'voltage', digits: 3, side: 'least', lead: true },
    { key: 'circuitVerdict', label: 'Circuit survives', is: 'words' },
    { key: 'suppressorVerdict', label: 'Suppressor survives', is: 'words' },
    { key: 'capacitorVerdict', label: 'Filter capacitor survives', is: 'words' },
    { key: 'signalVerdict', label: 'Signal passes', is: 'words' },
    { key: 'usedFrac', label: 'Rating used', quantity: 'fraction', digits: 3, side: 'least' },
    { key: 'suppressorPeakV', label: 'Clamp (across the junction)', quantity: 'voltage', digits: 3, side: 'least' },
    { key: 'connectorPeakV', label: 'Peak at the connector', quantity: 'voltage', digits: 3, side: 'least' },
    { key: 'capacitorPeakV', label: 'Peak on a filter capacitor', quantity: 'voltage', digits: 3, side: 'least' },
    { key: 'peakA', label: 'Peak current of the suppressor', quantity: 'current', digits: 3, side: 'least' },
    { key: 'energyJ', label: 'Energy in the suppressor', quantity: 'energy', digits: 3, side: 'least' },
    { key: 'overshootV', label: 'Overshoot of its lead', quantity: 'voltage', digits: 3, side: 'least' },
    { key: 'overshootSec', label: 'Overshoot lasts', quantity: 'time', digits: 3 },
    { key: 'heldAfterSec', label: 'Held below what the circuit withstands after', quantity: 'time', digits: 3 },
    { key: 'letThroughVs', label: 'Let through above it (V·s)', quantity: 'number', digits: 3, side: 'least' },
    { key: 'loadPeakSec', label: 'Load peaks at', quantity: 'time', digits: 3 },
    { key: 'connectorPeakSec', label: 'Connector peaks at', quantity: 'time', digits: 3 },
    { key: 'suppressorPeakSec', label: 'Clamp peaks at', quantity: 'time', digits: 3 },
    { key: 'peakASec', label: 'Current peaks at', quantity: 'time', digits: 3 },
    { key: 'worstLoadPeakV', label: 'Peak at the load, worst', quantity: 'voltage', digits: 3, side: 'least' },
    {
      key: 'worstCapacitorPeakV',
      label: 'Peak on a filter capacitor, worst',
      quantity: 'voltage',
      digits: 3,
      side: 'least',
    },
    { key: 'worstUsedFrac', label: 'Rating used, worst', quantity: 'fraction', digits: 3, side: 'least' },
    { key: 'worstCapacitanceF', label: 'Worst at', quantity: 'capacitance', digits: 3 },
    { key: 'worstInductanceH', label: 'Worst at', quantity: 'inductance', digits: 3 },
    { key: 'worstRingHz', label: 'Worst at', quantity: 'frequency', digits: 3 },
    { key: 'betweenLegsV', label: 'Between the legs, at most', quantity: 'voltage', digits: 3, side: 'least' },
    { key: 'contactA', label: 'Current into this contact, at most', quantity: 'current', digits: 3, side: 'least' },
  ],
  figures: surgeFigures,
  explain: explainSurge,
}
