/** Inputs about the line itself: what it does by itself, what it stands, what is on it. */
import { SUPPLY_CATEGORIES } from '../../../reference/bus-surges.ts'
import type { Input } from '../../types.ts'
import { lineKindOptions } from '../kind-options.ts'
import { bitRateInput, driverEdgeInput, existingInput, ownCeilingInputs, signalOhmInput } from '../signal-inputs.ts'
import { VOLTS } from './pulse-inputs.ts'

const BUS = 'Line and bus'

export const lineInputs = [
  {
    key: 'pairWithstandV',
    fact: 'circuitPairWithstandV',
    label: 'Circuit withstands between its legs',
    help: 'Of a pair: parts from each leg to chassis let up to two clamps stand between them.',
    type: VOLTS,
    whenEmpty: {
      do: 'omit',
      name: 'what the circuit withstands between its legs',
      how: 'The qualification of the box, or the absolute maximum between its two inputs.',
    },
    group: BUS,
  },
  {
    key: 'insulationWithstandV',
    fact: 'insulationWithstandV',
    label: 'Transformer insulation withstands',
    help: 'Peak volts from winding to winding for the length of the pulse. 1500 V rms is 2121 V. Empty: the figure of the kind of line.',
    type: VOLTS,
    whenEmpty: {
      do: 'omit',
      name: 'what the transformer insulation withstands',
      how: 'The data sheet of the transformer: its insulation test, times 1.41 where it is given in V rms.',
    },
    group: BUS,
  },
  {
    key: 'busMaxV',
    fact: 'busMaxV',
    label: 'Highest line peak',
    help: 'Instantaneous peak the line holds or surges to, longest surge included: 180 V rms is 255 V.',
    type: { is: 'number', quantity: 'voltage', min: 0, max: 1e6, volts: 'peak' },
    whenEmpty: {
      do: 'omit',
      name: 'the highest line peak',
      how: 'The supply standard the aircraft is built to, or a peak-reading meter on the line in every mode.',
    },
  },
  {
    key: 'busMinV',
    fact: 'busMinV',
    label: 'Lowest line peak',
    help: 'Instantaneous; negative when the line goes below chassis, 0 when it never does. Decides for a unidirectional part.',
    type: { is: 'number', quantity: 'voltage', min: -1e6, max: 0, volts: 'peak' },
    whenEmpty: {
      do: 'omit',
      name: 'the lowest line peak',
      how: 'From the interface document; 0 for a line that never goes below chassis.',
    },
    group: BUS,
  },
  {
    key: 'supplyCategory',
    fact: 'supplyCategory',
    label: 'Supply built to',
    help: 'Decides which long surges come on a supply line: the suppressor must stand them off.',
    type: {
      is: 'choice',
      options: Object.entries(SUPPLY_CATEGORIES).map(([value, label]) => ({ value, label })),
    },
    whenEmpty: {
      do: 'omit',
      name: 'what the supply is built to',
      how: 'The electrical data of the aircraft name the standard of its supply.',
    },
  },
  {
    key: 'busSourceOhm',
    fact: 'busSourceOhm',
    label: 'Resistance of the bus',
    help: 'What limits the current if the suppressor conducts through a bus surge.',
    type: { is: 'number', quantity: 'resistance', min: 1e-4, max: 1e6 },
    whenEmpty: { do: 'assume', text: '0.1', why: 'a stiff bus with some metres of wire', favourable: false },
    group: BUS,
  },
  {
    key: 'lineKind',
    fact: 'lineKind',
    label: 'Line',
    help: 'Judges what the capacitance of suppressor and filter does to the signal; of a supply it draws the bus surges.',
    type: { is: 'choice', options: lineKindOptions },
    whenEmpty: {
      do: 'omit',
      name: 'the line',
      how: 'The wiring diagram names it; the connector pin-out of the equipment does too.',
    },
  },
  { ...existingInput, group: BUS },
  { ...bitRateInput, group: BUS },
  driverEdgeInput,
  signalOhmInput,
  ...ownCeilingInputs,
] as const satisfies readonly Input[]
