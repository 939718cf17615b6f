/** What the pair check asks. */
import type { Given, Input } from '../../types.ts'
import {
  chokeFInput,
  chokeHInput,
  chokeLeakageHInput,
  chokeMismatchInput,
  chokeOhmInput,
  chokeWiresInput,
} from '../choke-inputs.ts'
import { FARADS } from '../noise-inputs.ts'

export const pairInputs = [
  {
    key: 'capacitanceF',
    fact: 'legF',
    label: 'One leg to chassis',
    help: 'All capacitance of one leg, as it may really be: two 1 nF parts of ±20 % can be 1.2 and 0.8 nF.',
    type: FARADS,
    whenEmpty: {
      do: 'ask',
      how: 'Marked value times one plus the tolerance, or measured at 1 kHz with the line isolated.',
    },
  },
  {
    key: 'capacitance2F',
    fact: 'leg2F',
    label: 'Other leg to chassis',
    help: 'The same for the other leg; 0 for a leg without a capacitor.',
    type: FARADS,
    whenEmpty: {
      do: 'ask',
      name: 'the other leg',
      how: 'Marked value times one minus the tolerance, or measured. A leg without a capacitor is 0.',
    },
  },
  {
    key: 'legOhm',
    fact: 'legOhm',
    label: 'Series resistance of each leg',
    help: 'What the common-mode noise comes through in each leg.',
    type: { is: 'number', quantity: 'resistance', min: 1e-6, max: 1e9 },
    whenEmpty: {
      do: 'ask',
      name: 'the series resistance',
      how: 'Rarely known. It moves the frequency of the worst, not the worst itself.',
      offer: { text: '50', why: 'a bench value' },
    },
  },
  {
    key: 'frequencyHz',
    fact: 'noiseHz',
    label: 'Noise frequency',
    help: 'Where the common-mode noise is. Several: 2M;12M. Empty: only the worst of all frequencies.',
    type: { is: 'number', quantity: 'frequency', min: 0, max: 1e11, many: true },
    whenEmpty: { do: 'omit' },
  },
  chokeHInput,
  chokeLeakageHInput,
  chokeMismatchInput,
  chokeOhmInput,
  chokeFInput,
  chokeWiresInput,
] as const satisfies readonly Input[]

export type PairGiven = Given<typeof pairInputs>
