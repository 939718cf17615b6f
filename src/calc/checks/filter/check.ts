/** What a given filter does: in your circuit and on the 50 Ω bench, with its corners, slope and worst gain. */
import { lineKindById } from '../../../reference/line-kinds.ts'
import {
  type FilterCircuit,
  hasCapacitor,
  hasInductor,
  NO_SERIES,
  NO_SHUNT,
  TOPOLOGIES,
  TOPOLOGY_LABEL,
} from '../../network/circuit.ts'
import type { Check, Given, Input, Result, Topology } from '../../types.ts'
import { lineKindOptions } from '../kind-options.ts'
import {
  bondHInput,
  bondOhmInput,
  eslInput,
  esrInput,
  FARADS,
  HENRIES,
  loadFInput,
  loadHInput,
  OHMS,
  sourceHInput,
} from '../noise-inputs.ts'
import { type Told, told } from '../told.ts'
import { describeFilter } from './answer.ts'

const inputs = [
  {
    key: 'topology',
    fact: 'topology',
    label: 'Topology',
    help: 'Source to load. Source is the side the noise comes from.',
    type: { is: 'choice', options: TOPOLOGIES.map((t) => ({ value: t, label: TOPOLOGY_LABEL[t] })) },
    defaultText: 'C',
    whenEmpty: { do: 'ask', how: 'Start with C; add an inductor when the window is shut.' },
  },
  {
    key: 'capacitanceF',
    fact: 'markedF',
    label: 'Capacitance',
    help: 'One capacitor as marked. A Pi has two of them.',
    type: FARADS,
    whenEmpty: { do: 'ask', how: 'Read it on the part, or take the proposal of the window check.' },
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
    whenEmpty: { do: 'ask', how: 'Take the least value at the line current from the part’s own curve.' },
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
      how: 'The input or output resistance of the circuit behind the contact, at the noise frequency.',
    },
  },
  {
    key: 'frequencyHz',
    fact: 'noiseHz',
    label: 'Frequency that matters',
    help: 'Where the noise is; 0 is DC. Several: separate by “;”, the worst is shown.',
    type: { is: 'number', quantity: 'frequency', min: 0, max: 1e11, many: true },
    whenEmpty: { do: 'ask', how: 'The tuned frequency that suffers, or the strongest line on the analyser.' },
  },
  {
    key: 'neededDb',
    fact: 'neededDb',
    label: 'Needed',
    help: 'Attenuation wanted there; gives a verdict and a mark on the plot.',
    type: { is: 'number', quantity: 'decibel', min: 0, max: 300 },
    whenEmpty: { do: 'omit' },
  },
  {
    key: 'lineKind',
    fact: 'lineKind',
    label: 'Line',
    help: 'Draws the signal band into the plot.',
    type: { is: 'choice', options: lineKindOptions },
    whenEmpty: { do: 'omit' },
  },
  esrInput,
  eslInput,
  {
    key: 'dcrOhm',
    fact: 'dcrOhm',
    label: 'Winding resistance',
    help: 'DC resistance of the inductor.',
    type: { is: 'number', quantity: 'resistance', min: 0, max: 1e6 },
    whenEmpty: { do: 'assume', text: '0', why: 'none entered', favourable: false },
    group: 'Real parts',
  },
  {
    key: 'inductorParallelOhm',
    fact: 'inductorParallelOhm',
    label: 'Inductor loss resistance',
    help: 'Resistance across the inductor: the plateau of a bead.',
    type: { is: 'number', quantity: 'resistance', min: 1e-3, max: 1e12 },
    whenEmpty: { do: 'omit' },
    group: 'Real parts',
  },
  {
    key: 'inductorParallelF',
    fact: 'inductorParallelF',
    label: 'Inductor self-capacitance',
    help: 'Above its own resonance an inductor is a capacitor.',
    type: FARADS,
    whenEmpty: { do: 'assume', text: '0', why: 'an ideal inductor', favourable: true, contrary: '2p' },
    group: 'Real parts',
  },
  sourceHInput,
  loadFInput,
  loadHInput,
  bondOhmInput,
  bondHInput,
] as const satisfies readonly Input[]

export type FilterGiven = Given<typeof inputs>

/** The circuit those fields describe, or the words for what is still missing. */
function circuitOf(given: FilterGiven): { circuit: FilterCircuit } | { missing: string[] } {
  const topology = given.topology as Topology | undefined
  if (topology === undefined) return { missing: ['the topology'] }
  const missing: string[] = []
  if (hasCapacitor(topology) && given.capacitanceF === undefined) missing.push('the capacitance')
  if (hasInductor(topology) && given.inductanceH === undefined) missing.push('the inductance')
  if (missing.length > 0) return { missing }
  const shunt = { ...NO_SHUNT, esrOhm: given.esrOhm ?? 0, eslH: given.eslH ?? 0 }
  const coil = {
    ...NO_SERIES,
    dcrOhm: given.dcrOhm ?? 0,
    parallelOhm: given.inductorParallelOhm ?? NO_SERIES.parallelOhm,
    parallelF: given.inductorParallelF ?? 0,
  }
  const c1 = given.capacitanceF ?? 0
  const l1 = given.inductanceH ?? 0
  return {
    circuit: {
      topology,
      shunt1: { ...shunt, capacitanceF: c1 },
      shunt2: { ...shunt, capacitanceF: given.capacitance2F ?? c1 },
      series1: { ...coil, inductanceH: l1 },
      series2: { ...coil, inductanceH: given.inductance2H ?? l1 },
      bondOhm: given.bondOhm ?? 0,
      bondH: given.bondH ?? 0,
    },
  }
}

/** Slower than this nothing here changes any more: it counts as DC. */
const DC_BELOW_HZ = 1e-3

/** At DC an inductance across the load shorts it with and without the filter: there is no loss to speak of. */
function usableHz(given: FilterGiven): readonly number[] {
  const all = (given.frequencyHz ?? []).map((hz) => (hz < DC_BELOW_HZ ? 0 : hz))
  return given.loadH === undefined ? all : all.filter((hz) => hz > 0)
}

function compute(given: FilterGiven): Result {
  const built = circuitOf(given)
  if ('missing' in built) {
    return {
      ok: true,
      headline: `Enter ${built.missing.join(' and ')}.`,
      findings: [],
      outputs: {},
      bounds: [],
      rungs: [],
      pictures: [],
      cautions: [],
    }
  }
  const usefulHz = given.lineKind === undefined ? undefined : lineKindById(given.lineKind)?.usefulHz?.hz
  return describeFilter({
    circuit: built.circuit,
    sources: (given.sourceOhm ?? []).map((ohm) => ({ ohm, seriesH: given.sourceH ?? 0 })),
    load:
      given.loadOhm === undefined
        ? undefined
        : { ohm: given.loadOhm, parallelF: given.loadF ?? 0, parallelH: given.loadH ?? Number.POSITIVE_INFINITY },
    frequenciesHz: usableHz(given),
    hasShortedDc: usableHz(given).length < (given.frequencyHz ?? []).length,
    neededDb: given.neededDb,
    signalToHz: usefulHz,
  })
}

export const filterCheck: Check<typeof inputs, Told> = {
  id: 'filter',
  title: 'Filter',
  question: 'What does this filter do, in my circuit and on the bench?',
  inputs,
  outputs: [
    { key: 'insertionLossDb', label: 'In your circuit', quantity: 'decibel', digits: 4, lead: true },
    { key: 'benchInsertionLossDb', label: 'On the 50 Ω bench', quantity: 'decibel', digits: 4, lead: true },
    {
      key: 'firstCornerHz',
      label: 'First corner (signal starts to suffer)',
      quantity: 'frequency',
      digits: 4,
      lead: true,
    },
    { key: 'cornerHz', label: 'Corner from which it lasts', quantity: 'frequency', digits: 4 },
    { key: 'localSlopeDbPerDecade', label: 'Slope at that frequency', quantity: 'slope', digits: 3 },
    { key: 'asymptoteDbPerDecade', label: 'Slope of the ideal filter', quantity: 'slope', digits: 3 },
    { key: 'peakGainDb', label: 'Worst resonant gain', quantity: 'decibel', digits: 3 },
    { key: 'peakHz', label: 'at', quantity: 'frequency', digits: 4 },
  ],
  ...told(compute),
}
