/** What the filter check asks. */
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
import { dielectricSpreadInputs } from '../dielectric-inputs.ts'
import { elementInputs } from '../element-inputs.ts'
import { lineKindOptions } from '../kind-options.ts'
import {
  bondHInput,
  bondOhmInput,
  dcrInput,
  eslInput,
  esrInput,
  FARADS,
  HENRIES,
  inductorParallelFInput,
  inductorParallelOhmInput,
  inductorResonanceInput,
  loadFInput,
  loadHInput,
  OHMS,
  sourceHInput,
} from '../noise-inputs.ts'

const JUDGED_BY = 'What it is judged by'

export const filterInputs = [
  {
    key: 'topology',
    fact: 'topology',
    label: 'Topology',
    help: 'Source to load. Source is the side the noise comes from.',
    type: { is: 'choice', options: TOPOLOGIES.map((t) => ({ value: t, label: TOPOLOGY_LABEL[t] })) },
    defaultText: 'C',
    whenEmpty: {
      do: 'ask',
      name: 'the topology',
      how: 'Start with C; add an inductor where no single capacitor does both.',
    },
  },
  {
    key: 'capacitanceF',
    fact: 'markedF',
    label: 'Capacitance',
    help: 'One capacitor as marked. A Pi has two of them.',
    type: FARADS,
    whenEmpty: {
      do: 'ask',
      name: 'the capacitance',
      how: 'Read it on the part, or take the proposal of the window check.',
    },
  },
  {
    key: 'capacitance2F',
    fact: 'marked2F',
    label: 'Load-side capacitance',
    help: 'Only for an unequal Pi. Empty = the same as the first.',
    type: FARADS,
    whenEmpty: { do: 'omit' },
    group: 'Unequal halves',
  },
  {
    key: 'inductanceH',
    fact: 'inductanceH',
    label: 'Inductance',
    help: 'Least value at the line current. A bead or a choke loses inductance with DC.',
    type: HENRIES,
    whenEmpty: {
      do: 'ask',
      name: 'the inductance',
      how: 'Take the least value at the line current from the part’s own curve.',
    },
  },
  {
    key: 'inductance2H',
    fact: 'inductance2H',
    label: 'Load-side inductance',
    help: 'Only for an unequal T. Empty = the same as the first.',
    type: HENRIES,
    whenEmpty: { do: 'omit' },
    group: 'Unequal halves',
  },
  {
    key: 'sourceOhm',
    fact: 'noiseSourceOhm',
    label: 'Noise source',
    help: 'Impedance the noise comes from, at its frequency. Several values: 1;10;50;150 (the worst is shown).',
    type: { ...OHMS, many: true },
    whenEmpty: {
      do: 'ask',
      name: 'the noise source',
      how: 'Rarely known. Without it only the bench figure can be shown; try the spread and look at the worst.',
      offer: { text: '1;10;50;150', why: 'a spread; the worst governs' },
    },
  },
  {
    key: 'loadOhm',
    fact: 'noiseLoadOhm',
    label: 'Noise load',
    help: 'Resistance the noise works into on the other side of the filter.',
    type: { is: 'number', quantity: 'resistance', min: 1e-6, max: 1e12 },
    whenEmpty: {
      do: 'ask',
      name: 'the noise load',
      how: 'The input or output resistance of the circuit behind the contact, at the noise frequency.',
    },
  },
  {
    key: 'frequencyHz',
    fact: 'noiseHz',
    label: 'Frequency that matters',
    help: 'Where the noise is; 0 is DC. Several: separate by “;”, the worst is shown.',
    type: { is: 'number', quantity: 'frequency', min: 0, max: 1e11, many: true },
    whenEmpty: {
      do: 'ask',
      name: 'the frequency that matters',
      how: 'The tuned frequency that suffers, or the strongest line on the analyser.',
    },
  },
  {
    key: 'neededDb',
    fact: 'neededDb',
    label: 'Needed',
    help: 'Attenuation wanted there; gives a verdict and a mark on the plot.',
    type: { is: 'number', quantity: 'decibel', min: 0, max: 300 },
    whenEmpty: { do: 'omit' },
    group: JUDGED_BY,
  },
  {
    key: 'lineKind',
    fact: 'lineKind',
    label: 'Line',
    help: 'Draws the signal band into the plot.',
    type: { is: 'choice', options: lineKindOptions },
    whenEmpty: { do: 'omit' },
    group: JUDGED_BY,
  },
  {
    key: 'mode',
    fact: 'noiseMode',
    label: 'Noise mode',
    help: 'On a pair, and with a common-mode choke: source, load and bond are then those of the pair. Empty: one wire, its ends as entered; a need on a pair is not judged then.',
    type: {
      is: 'choice',
      options: [
        { value: 'common', label: 'common mode' },
        { value: 'differential', label: 'differential' },
      ],
    },
    whenEmpty: {
      do: 'ask',
      name: 'the mode of the noise',
      how: 'A probe around both wires together shows common mode; a choke takes that and lets differential pass. Needed with a choke, and for a need on a pair.',
    },
    group: JUDGED_BY,
  },
  esrInput,
  eslInput,
  dcrInput,
  inductorParallelOhmInput,
  inductorParallelFInput,
  inductorResonanceInput,
  sourceHInput,
  loadFInput,
  loadHInput,
  bondOhmInput,
  bondHInput,
  ...dielectricSpreadInputs,
  ...elementInputs,
  chokeHInput,
  chokeLeakageHInput,
  chokeMismatchInput,
  chokeOhmInput,
  chokeFInput,
  chokeSideInput,
  chokeWiresInput,
] as const satisfies readonly Input[]

export type FilterGiven = Given<typeof filterInputs>
