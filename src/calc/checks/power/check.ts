/** A capacitor on a power line: chassis current, stored energy, bleed, inrush, withstand and the rules chosen. */
import type { Check } from '../../types.ts'
import { type PowerFigures, powerFigures } from './figures.ts'
import { powerInputs } from './inputs.ts'
import { explainPower } from './words.ts'

export const powerCheck: Check<typeof powerInputs, PowerFigures> = {
  id: 'power',
  title: 'Power',
  question: 'What does a capacitor to chassis do on this power line?',
  inputs: powerInputs,
  outputs: [
    {
      key: 'currentRmsA',
      label: 'Chassis current of each line',
      quantity: 'current',
      digits: 3,
      side: 'least',
      lead: true,
    },
    { key: 'totalCurrentRmsA', label: 'All lines, added', quantity: 'current', digits: 3, side: 'least' },
    { key: 'residualCurrentRmsA', label: 'Net into the chassis', quantity: 'current', digits: 3, side: 'least' },
    { key: 'phaseLostCurrentRmsA', label: 'Net with one phase lost', quantity: 'current', digits: 3, side: 'least' },
    { key: 'reactiveVa', label: 'Reactive power of each (VA)', quantity: 'number', digits: 3 },
    { key: 'storedJ', label: 'Stored in each capacitor', quantity: 'energy', digits: 3, side: 'least' },
    { key: 'bleedSec', label: 'Bled to 1 %', quantity: 'time', digits: 3 },
    { key: 'bleedTo34Sec', label: 'Bled to 34 V', quantity: 'time', digits: 3 },
    { key: 'inrushPeakA', label: 'Inrush peak', quantity: 'current', digits: 3, side: 'least' },
    { key: 'inrushPeakV', label: 'Peak on the capacitor', quantity: 'voltage', digits: 3, side: 'least' },
    { key: 'withstandV', label: 'Withstand test', quantity: 'voltage', digits: 3 },
    { key: 'crossCurrentRmsA', label: 'Current from line to line', quantity: 'current', digits: 3, side: 'least' },
    { key: 'crossStoredJ', label: 'Stored from line to line', quantity: 'energy', digits: 3, side: 'least' },
    { key: 'crossWithstandV', label: 'Withstand test, line to line', quantity: 'voltage', digits: 3 },
  ],
  figures: powerFigures,
  explain: explainPower,
}
