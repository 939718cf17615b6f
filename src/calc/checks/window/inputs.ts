/** What the window check asks. */

import { TOPOLOGIES, TOPOLOGY_LABEL } from '../../network/circuit.ts'
import type { Given, Input } from '../../types.ts'
import {
  chokeFInput,
  chokeHInput,
  chokeLeakageHInput,
  chokeMismatchInput,
  chokeOhmInput,
  chokeSideInput,
  chokeWiresInput,
} from '../choke-inputs.ts'
import { mostConversionInput } from '../conversion-input.ts'
import { dielectricSpreadInputs } from '../dielectric-inputs.ts'
import { elementInputs } from '../element-inputs.ts'
import {
  bondHInput,
  bondOhmInput,
  dcrInput,
  eslInput,
  esrInput,
  FARADS,
  inductorParallelFInput,
  inductorParallelOhmInput,
  inductorResonanceInput,
  loadFInput,
  loadHInput,
  OHMS,
  SPREAD_OFFER,
  sourceHInput,
} from '../noise-inputs.ts'
import { chassisLimitInput, loadWInput, navyRuleInput, RULES_GROUP } from '../rule-inputs.ts'
import {
  bitRateInput,
  crossInput,
  driverEdgeInput,
  existingInput,
  lineKindInput,
  nodeCountInput,
  ownCeilingInputs,
  signalOhmInput,
  suppressorInput,
} from '../signal-inputs.ts'
import { shownByTrialInputs } from '../trial-inputs.ts'

import { traceNeedInputs } from './trace-needs.ts'

const ON_LINE = 'Mode, and what is on the line'

export const windowInputs = [
  lineKindInput,
  {
    key: 'frequencyHz',
    fact: 'noiseHz',
    label: 'Noise frequency',
    help: 'Where attenuation is needed. Several: 2M;12M.',
    type: { is: 'number', quantity: 'frequency', min: 1, max: 1e11, many: true },
    whenEmpty: {
      do: 'ask',
      name: 'the noise frequency',
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
      name: 'the attenuation needed',
      how: 'Measured level − limit + margin: the need check does it. With only a headset, plan a trial instead.',
    },
  },
  ...traceNeedInputs,
  {
    key: 'sourceOhm',
    fact: 'noiseSourceOhm',
    label: 'Noise source',
    help: 'Impedance the noise comes from (of the pair, for a pair). Several values: the worst governs.',
    type: { ...OHMS, many: true },
    whenEmpty: { do: 'ask', name: 'the noise source', how: 'Rarely known.', offer: SPREAD_OFFER },
  },
  {
    key: 'loadOhm',
    fact: 'noiseLoadOhm',
    label: 'Noise load',
    help: 'Resistance the noise works into (of the pair, for a pair), at the noise frequency. Not the signal’s own resistance.',
    type: { is: 'number', quantity: 'resistance', min: 1e-6, max: 1e12 },
    whenEmpty: {
      do: 'ask',
      name: 'the noise load',
      how: 'The input behind the contact at the noise frequency; a line network is 50 Ω, a power input a few ohms.',
      offer: { text: '50', why: 'a line-network or bench value; a lower one needs more capacitance' },
    },
  },
  {
    key: 'mode',
    fact: 'noiseMode',
    label: 'Noise mode',
    help: 'Common: both wires together against chassis. Differential: between the wires. Matters on pairs, on supplies and with a choke.',
    type: {
      is: 'choice',
      options: [
        { value: 'common', label: 'common mode' },
        { value: 'differential', label: 'differential' },
      ],
    },
    defaultText: 'common',
    whenEmpty: { do: 'assume', text: 'common', why: 'usual for RF picked up by a pair', favourable: false },
    group: ON_LINE,
  },
  {
    key: 'topology',
    fact: 'topology',
    label: 'Topology',
    help: 'Empty: the simplest that does it. Source to load.',
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
      name: 'the inductance',
      how: 'The curve of the part gives its least value at the line current.',
      text: '1 µH',
      why: 'to compare topologies; the part’s least value at the line current counts',
      favourable: true,
      contrary: '100 nH',
    },
    group: 'Real parts',
  },
  { ...suppressorInput, group: ON_LINE },
  { ...existingInput, group: ON_LINE },
  { ...nodeCountInput, group: ON_LINE },
  { ...crossInput, group: ON_LINE },
  bitRateInput,
  driverEdgeInput,
  signalOhmInput,
  ...ownCeilingInputs,
  ...dielectricSpreadInputs,
  esrInput,
  eslInput,
  dcrInput,
  inductorParallelOhmInput,
  inductorParallelFInput,
  inductorResonanceInput,
  bondOhmInput,
  bondHInput,
  sourceHInput,
  loadFInput,
  loadHInput,
  ...elementInputs,
  navyRuleInput,
  loadWInput,
  chassisLimitInput,
  chokeHInput,
  chokeLeakageHInput,
  chokeMismatchInput,
  chokeOhmInput,
  chokeFInput,
  chokeSideInput,
  chokeWiresInput,
  mostConversionInput,
  ...shownByTrialInputs,
  {
    key: 'maxBuildableF',
    fact: 'maxBuildableF',
    label: 'Largest the contact takes',
    help: 'What the contact cavity takes at that voltage, one capacitor as marked.',
    type: FARADS,
    whenEmpty: { do: 'omit' },
    group: RULES_GROUP,
  },
] as const satisfies readonly Input[]

export type WindowGiven = Given<typeof windowInputs>
