/** The capacitance window of one line: from the attenuation needed (at least) to what the signal stands (at most). */
import { lineKindById } from '../../reference/line-kinds.ts'
import { TOPOLOGIES, TOPOLOGY_LABEL } from '../network/circuit.ts'
import type { Check, Given, Input, Progress, Result } from '../types.ts'
import {
  bondHInput,
  bondOhmInput,
  eslInput,
  esrInput,
  FARADS,
  loadFInput,
  loadHInput,
  OHMS,
  SPREAD_OFFER,
  sourceHInput,
} from './noise-inputs.ts'
import {
  bitRateInput,
  crossInput,
  driverEdgeInput,
  existingInput,
  lineKindInput,
  signalOhmInput,
  suppressorInput,
} from './signal-inputs.ts'
import { answerWindow, barredAnswer } from './window-answer.ts'

const SPREAD = 'Spread of the part'
const RULES = 'Other limits'
const share = { is: 'number', quantity: 'fraction', min: 0, max: 0.95 } as const

const inputs = [
  lineKindInput,
  {
    key: 'frequencyHz',
    fact: 'noiseHz',
    label: 'Noise frequency',
    help: 'Where attenuation is needed. Several: 2M;12M.',
    type: { is: 'number', quantity: 'frequency', min: 1, max: 1e11, many: true },
    whenEmpty: {
      do: 'ask',
      how: 'The tuned frequency that suffers, the converter frequency, or the strongest line on the analyser.',
    },
  },
  {
    key: 'neededDb',
    fact: 'neededDb',
    label: 'Attenuation needed',
    help: 'At those frequencies; one figure for all, or one for each (40;20).',
    type: { is: 'number', quantity: 'decibel', min: 0, max: 200, many: true },
    whenEmpty: {
      do: 'ask',
      how: 'Measured level − limit + margin: the need check does it. With only a headset, plan a trial instead.',
    },
  },
  {
    key: 'sourceOhm',
    fact: 'noiseSourceOhm',
    label: 'Noise source',
    help: 'Impedance the noise comes from (of the pair, for a pair). Several values: the worst governs.',
    type: { ...OHMS, many: true },
    whenEmpty: { do: 'ask', how: 'Rarely known.', offer: SPREAD_OFFER },
  },
  {
    key: 'loadOhm',
    fact: 'noiseLoadOhm',
    label: 'Noise load',
    help: 'Resistance the noise works into (of the pair, for a pair), at the noise frequency. Not the signal’s own resistance.',
    type: { is: 'number', quantity: 'resistance', min: 1e-6, max: 1e12 },
    whenEmpty: {
      do: 'ask',
      how: 'The input behind the contact at the noise frequency; a line network is 50 Ω, a power input a few ohms.',
      offer: { text: '50', why: 'a line-network or bench value; a lower one needs more capacitance' },
    },
  },
  {
    key: 'mode',
    fact: 'noiseMode',
    label: 'Noise mode',
    help: 'Common: both wires together against chassis. Differential: between the wires. Matters on pairs.',
    type: {
      is: 'choice',
      options: [
        { value: 'common', label: 'common mode' },
        { value: 'differential', label: 'differential' },
      ],
    },
    defaultText: 'common',
    whenEmpty: { do: 'assume', text: 'common', why: 'usual for RF picked up by a pair', favourable: false },
  },
  {
    key: 'topology',
    fact: 'topology',
    label: 'Topology',
    help: 'Empty: the simplest that works. Source to load.',
    type: { is: 'choice', options: TOPOLOGIES.map((t) => ({ value: t, label: TOPOLOGY_LABEL[t] })) },
    whenEmpty: { do: 'omit' },
  },
  {
    key: 'inductanceH',
    fact: 'inductanceH',
    label: 'Inductance',
    help: 'Least value at the line current, for the topologies that have an inductor.',
    type: { is: 'number', quantity: 'inductance', min: 1e-12, max: 100 },
    whenEmpty: {
      do: 'assume',
      text: '1 µH',
      why: 'to compare topologies; the part’s least value at the line current counts',
      favourable: true,
      contrary: '0.1 µH',
    },
  },
  suppressorInput,
  existingInput,
  crossInput,
  bitRateInput,
  driverEdgeInput,
  signalOhmInput,
  {
    key: 'toleranceFrac',
    fact: 'toleranceFrac',
    label: 'Tolerance',
    help: '20 %, or +100/-0 % for a guaranteed minimum value.',
    type: { is: 'tolerance' },
    defaultText: '20 %',
    whenEmpty: { do: 'assume', text: '20 %', why: 'usual for ceramic filter parts', favourable: false },
    group: SPREAD,
  },
  {
    key: 'temperatureFrac',
    fact: 'temperatureFrac',
    label: 'Temperature',
    help: 'Capacitance lost or gained over temperature. Class 2 (X7R) 15 %, C0G 0.3 %.',
    type: share,
    defaultText: '15 %',
    whenEmpty: { do: 'assume', text: '15 %', why: 'class 2 ceramic', favourable: false },
    group: SPREAD,
  },
  {
    key: 'biasFrac',
    fact: 'biasFrac',
    label: 'Voltage',
    help: 'Capacitance lost at working voltage. Filter grade class 2: 10 to 40 % at rated voltage. C0G none.',
    type: share,
    defaultText: '12 %',
    whenEmpty: {
      do: 'assume',
      text: '12 %',
      why: 'with 15 % for temperature this is the −25 % of a BX part',
      favourable: false,
    },
    group: SPREAD,
  },
  {
    key: 'ageingDecades',
    fact: 'ageingDecades',
    label: 'Ageing decades',
    help: 'Decades of hours since manufacture: 1,000 h to 100,000 h is two. C0G does not age: write 0 % below.',
    type: { is: 'number', quantity: 'number', min: 0, max: 8 },
    defaultText: '2',
    whenEmpty: { do: 'assume', text: '2', why: '1,000 h to 100,000 h', favourable: false },
    group: SPREAD,
  },
  {
    key: 'ageingFracPerDecade',
    fact: 'ageingFracPerDecade',
    label: 'Ageing per decade',
    help: 'Class 2: 1 to 4 %. C0G: 0.',
    type: share,
    defaultText: '2.5 %',
    whenEmpty: { do: 'assume', text: '2.5 %', why: 'class 2 ceramic', favourable: false },
    group: SPREAD,
  },
  esrInput,
  eslInput,
  bondOhmInput,
  bondHInput,
  sourceHInput,
  loadFInput,
  loadHInput,
  {
    key: 'navyRule',
    fact: 'navyRule',
    label: 'Navy line-to-ground rule',
    help: 'MIL-STD-461 4.2.2 limits line-to-ground capacitance on power lines of Navy equipment. Off unless it applies to you.',
    type: { is: 'flag' },
    defaultText: 'false',
    whenEmpty: { do: 'assume', text: 'false', why: 'applies to Navy procurement only', favourable: false },
    group: RULES,
  },
  {
    key: 'loadW',
    fact: 'loadW',
    label: 'Connected load',
    help: 'For that rule on DC lines: 0.075 µF per kW.',
    type: { is: 'number', quantity: 'power', min: 0, max: 1e7 },
    whenEmpty: { do: 'omit' },
    group: RULES,
  },
  {
    key: 'maxBuildableF',
    fact: 'maxBuildableF',
    label: 'Largest that fits',
    help: 'What fits the contact cavity at that voltage, one capacitor as marked.',
    type: FARADS,
    whenEmpty: { do: 'omit' },
    group: RULES,
  },
] as const satisfies readonly Input[]

export type WindowGiven = Given<typeof inputs>

function* compute(given: WindowGiven): Generator<Progress, Result> {
  const kind = given.lineKind === undefined ? undefined : lineKindById(given.lineKind)
  if (kind?.barredWhy !== undefined) return barredAnswer(kind.name, kind.barredWhy)
  return yield* answerWindow(given, kind)
}

export const windowCheck: Check<typeof inputs> = {
  id: 'window',
  title: 'Window',
  question: 'Which capacitance quiets the noise and still lets the signal through?',
  inputs,
  outputs: [
    { key: 'proposedF', label: 'Proposed, one capacitor as marked', quantity: 'capacitance', digits: 3, lead: true },
    { key: 'leastCapacitanceF', label: 'At least', quantity: 'capacitance', digits: 3 },
    { key: 'mostCapacitanceF', label: 'At most', quantity: 'capacitance', digits: 3 },
    { key: 'topologyUsed', label: 'Topology', quantity: 'number', digits: 3 },
    { key: 'worstLossDb', label: 'Worst-case attenuation with it', quantity: 'decibel', digits: 3 },
    { key: 'overLeastRatio', label: 'Proposed ÷ least', quantity: 'number', digits: 2 },
    { key: 'underMostRatio', label: 'Most ÷ proposed', quantity: 'number', digits: 2 },
    { key: 'permittedF', label: 'Permitted by the document', quantity: 'capacitance', digits: 3 },
    { key: 'leastInductanceH', label: 'Least inductance (L alone)', quantity: 'inductance', digits: 3 },
  ],
  compute,
}
