/** What the power check asks. */
import type { Given, Input } from '../../types.ts'
import { FARADS } from '../noise-inputs.ts'
import { chassisLimitInput, loadWInput, navyRuleInput } from '../rule-inputs.ts'

const WIRING = 'Wiring and bleed'

export const powerInputs = [
  {
    key: 'workingRmsV',
    fact: 'workingRmsV',
    label: 'Working voltage',
    help: 'DC volts, or volts rms from line to chassis.',
    type: { is: 'number', quantity: 'voltage', min: 0.001, max: 1e5, volts: 'rms' },
    whenEmpty: {
      do: 'ask',
      name: 'the working voltage',
      how: 'The highest steady voltage: 29 V on a 28 V bus, 118 V on 115 V AC, 280 V on 270 V DC.',
    },
  },
  {
    key: 'supplyHz',
    fact: 'supplyHz',
    label: 'Supply frequency',
    help: '0 for DC, 400 Hz, or 800 Hz as the worst of a variable-frequency supply.',
    type: { is: 'number', quantity: 'frequency', min: 0, max: 1e6 },
    whenEmpty: {
      do: 'ask',
      name: 'the supply frequency (0 for DC)',
      how: '0 for DC; the aircraft’s electrical data name the frequency or its range.',
    },
  },
  {
    key: 'capacitanceF',
    fact: 'legF',
    label: 'Capacitance of each line to chassis',
    help: 'All of it on one line: both capacitors of a Pi, and its largest value within tolerance.',
    type: FARADS,
    whenEmpty: { do: 'ask', name: 'the capacitance', how: 'Marked value plus its tolerance, times two for a Pi.' },
  },
  {
    key: 'crossF',
    fact: 'crossF',
    label: 'Capacitor from line to line',
    help: 'Or from line to return. Acts on noise between the lines only, and puts nothing into the chassis.',
    type: FARADS,
    whenEmpty: { do: 'omit' },
  },
  {
    key: 'lineCount',
    fact: 'lineCount',
    label: 'Lines with it',
    help: 'Phases or lines with the same capacitor. Three, six… count as balanced phases.',
    type: { is: 'number', quantity: 'count', min: 1, max: 1000 },
    whenEmpty: {
      do: 'assume',
      name: 'the number of lines',
      how: 'Count the phases or lines with the same capacitor; three phases are 3.',
      text: '1',
      why: 'one line; more lines add up at the chassis, and phases stand √3 apart',
      favourable: true,
      contrary: '3',
      beside: 'crossF',
    },
  },
  {
    key: 'wiringOhm',
    fact: 'wiringOhm',
    label: 'Wiring resistance',
    help: 'Of the loop that charges the capacitor, for the inrush.',
    type: { is: 'number', quantity: 'resistance', min: 0, max: 1e6 },
    whenEmpty: { do: 'omit' },
    group: WIRING,
  },
  {
    key: 'wiringH',
    fact: 'wiringH',
    label: 'Wiring inductance',
    help: 'Of the same loop; about 1 µH per metre of separate wire: 4u for 2 m there and back.',
    type: { is: 'number', quantity: 'inductance', min: 0, max: 10 },
    whenEmpty: {
      do: 'assume',
      name: 'the wiring inductance',
      how: 'About 1 µH per metre of separate wire, there and back.',
      text: '0',
      why: 'nothing rings; an inductance can ring the capacitor up to twice the crest',
      favourable: true,
      contrary: '10u',
    },
    group: WIRING,
  },
  {
    key: 'bleedOhm',
    fact: 'bleedOhm',
    label: 'Bleed resistor',
    help: 'Across one capacitor.',
    type: { is: 'number', quantity: 'resistance', min: 1, max: 1e12 },
    whenEmpty: { do: 'omit' },
    group: WIRING,
  },
  navyRuleInput,
  loadWInput,
  chassisLimitInput,
] as const satisfies readonly Input[]

export type PowerGiven = Given<typeof powerInputs>
