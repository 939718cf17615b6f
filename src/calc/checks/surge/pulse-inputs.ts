/** Inputs about the pulse itself and the way it takes to the connector. */
import { WAVEFORMS } from '../../../reference/waveforms.ts'
import type { Input } from '../../types.ts'

/** A peak that must exist to be judged. */
export const VOLTS = { is: 'number', quantity: 'voltage', min: 0.1, max: 1e6 } as const

const OWN = 'Your own pulse'
const WAY = 'Way to the connector'

/** Which pulse. */
export const pulseInputs = [
  {
    key: 'waveform',
    fact: 'surgeWaveform',
    label: 'Waveform',
    help: 'From the test plan or the category of the box.',
    type: { is: 'choice', options: WAVEFORMS.map(({ id, name }) => ({ value: id, label: name })) },
    defaultText: 'wf4',
    whenEmpty: {
      do: 'ask',
      how: 'The test plan names it; pin injection is waveform 3 with 4 or 5A.',
      name: 'the waveform',
    },
  },
  {
    key: 'level',
    fact: 'surgeLevel',
    label: 'Level',
    help: 'Pin-injection level 1 to 5, or IEC test level 1 to 4. Sets volts and impedance. A category is read too: A3 is level 3.',
    type: { is: 'number', quantity: 'count', min: 1, max: 5, category: 'AB' },
    whenEmpty: {
      do: 'ask',
      how: 'The category of the box has it, as in A3: level 3. Or enter volts and impedance.',
      name: 'the level',
      offer: { text: '3', why: 'a usual level of boxes in a metal aircraft; not your test plan' },
    },
  },
  {
    key: 'polarity',
    fact: 'surgePolarity',
    label: 'Polarity',
    help: 'The other one is run too, and reported when it is worse.',
    type: {
      is: 'choice',
      options: [
        { value: 'positive', label: 'positive' },
        { value: 'negative', label: 'negative' },
      ],
    },
    defaultText: 'positive',
    whenEmpty: { do: 'assume', text: 'positive', why: 'the other polarity is run too', favourable: false },
    group: WAY,
  },
  {
    key: 'surgeMode',
    fact: 'surgeMode',
    label: 'Surge comes',
    help: 'Pin injection and lightning on a cable come on each leg against chassis. Matters on pairs.',
    type: {
      is: 'choice',
      options: [
        { value: 'common', label: 'on each leg, against chassis' },
        { value: 'differential', label: 'between the legs of a pair' },
      ],
    },
    defaultText: 'common',
    whenEmpty: { do: 'assume', text: 'common', why: 'as pin injection and lightning come', favourable: false },
    group: WAY,
  },
] as const satisfies readonly Input[]

/** A test on the whole cable bundle, brought down to one contact. */
const BUNDLE = 'Cable-bundle test'
const bundleInputs = [
  {
    key: 'bundleLevel',
    fact: 'surgeBundleLevel',
    label: 'Bundle level',
    help: 'Level of a cable-bundle test instead of pin injection: volts limit, amperes of the whole bundle. In a category such as A4G4L3 its second pair.',
    type: { is: 'number', quantity: 'count', min: 1, max: 5, category: 'CDEFGHJK' },
    whenEmpty: { do: 'omit' },
    group: BUNDLE,
  },
  {
    key: 'bundleShareFrac',
    fact: 'surgeBundleShareFrac',
    label: 'Share on this contact',
    help: 'Of the bundle’s current. One over the number of wires if all end alike; a shield grounded at both ends takes most of it.',
    type: { is: 'number', quantity: 'fraction', min: 1e-6, max: 1 },
    whenEmpty: { do: 'omit' },
    group: BUNDLE,
  },
] as const satisfies readonly Input[]

/** Numbers that replace or add to the row, and the line ahead of the connector. */
export const ownPulseInputs = [
  ...bundleInputs,
  {
    key: 'openCircuitV',
    fact: 'surgeOpenCircuitV',
    label: 'Open-circuit peak',
    help: 'Overrides the level. Of a static discharge: the charging volts.',
    type: { ...VOLTS, volts: 'peak' },
    whenEmpty: { do: 'omit' },
    group: OWN,
  },
  {
    key: 'sourceOhm',
    fact: 'surgeSourceOhm',
    label: 'Source impedance',
    help: 'Open-circuit volts over short-circuit amperes. Overrides the level. Not the noise source.',
    type: { is: 'number', quantity: 'resistance', min: 1e-3, max: 1e6 },
    whenEmpty: { do: 'omit' },
    group: OWN,
  },
  {
    key: 'peakSec',
    fact: 'surgePeakSec',
    label: 'Time to peak',
    help: 'Only for a pulse of your own.',
    type: { is: 'number', quantity: 'time', min: 1e-12, max: 1 },
    whenEmpty: { do: 'omit' },
    group: OWN,
  },
  {
    key: 'halfSec',
    fact: 'surgeHalfSec',
    label: 'Time to half value',
    help: 'From zero to 50 % on the tail. Only for a pulse of your own.',
    type: { is: 'number', quantity: 'time', min: 1e-12, max: 10 },
    whenEmpty: { do: 'omit' },
    group: OWN,
  },
  {
    key: 'ringHz',
    fact: 'surgeRingHz',
    label: 'Ring frequency',
    help: 'Of a damped sine. Empty: 1 MHz, for CS116 every frequency of its envelope.',
    type: { is: 'number', quantity: 'frequency', min: 1, max: 1e10 },
    whenEmpty: { do: 'omit' },
    group: OWN,
  },
  {
    key: 'decayQ',
    fact: 'surgeDecayQ',
    label: 'Decay Q',
    help: 'Of a damped sine. Empty: the slowest decay allowed, 43.68 for waveform 3 and 20 for CS116. Half at the fifth peak is 18.13.',
    type: { is: 'number', quantity: 'number', min: 0.5, max: 200 },
    whenEmpty: { do: 'omit' },
    group: OWN,
  },
  {
    key: 'lineOhm',
    fact: 'surgeLineOhm',
    label: 'Line resistance',
    help: 'In series ahead of the connector, a series resistor included.',
    type: { is: 'number', quantity: 'resistance', min: 0, max: 1e6 },
    whenEmpty: { do: 'omit' },
    group: WAY,
  },
  {
    key: 'lineH',
    fact: 'surgeLineH',
    label: 'Line inductance',
    help: 'In series ahead of the connector; about 1 µH per metre of wire. Pin injection has next to none.',
    type: { is: 'number', quantity: 'inductance', min: 0, max: 1 },
    whenEmpty: {
      do: 'omit',
      name: 'the inductance of the wire ahead of the connector',
      how: 'About 1 µH for each metre of cable from the coupling to the connector: 3u for 3 m, 0 where it couples right at it.',
    },
    group: WAY,
  },
] as const satisfies readonly Input[]
