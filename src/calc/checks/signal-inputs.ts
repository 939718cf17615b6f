/** Inputs about the signal and what is already on the line, asked in the same words by `loading` and `window`. */
import type { Input } from '../types.ts'
import { lineKindOptions } from './kind-options.ts'
import { FARADS } from './noise-inputs.ts'

const SIGNAL = 'Signal'
const OWN = 'Your own ceiling'

export const lineKindInput = {
  key: 'lineKind',
  fact: 'lineKind',
  label: 'Line',
  help: 'What the contact carries. It decides how much capacitance the signal stands.',
  type: { is: 'choice', options: lineKindOptions },
  whenEmpty: {
    do: 'ask',
    name: 'the line',
    how: 'The wiring diagram names it; the connector pin-out of the equipment does too.',
  },
} as const satisfies Input

export const suppressorInput = {
  key: 'suppressorF',
  fact: 'suppressorF',
  label: 'Suppressor',
  help: 'Capacitance of the suppressor at 0 V, per leg. It uses room and earns no attenuation.',
  type: FARADS,
  whenEmpty: {
    do: 'assume',
    name: 'the suppressor',
    how: 'The data sheet of the suppressor gives its capacitance at 0 V; 0 if none is fitted.',
    text: '0',
    why: 'no suppressor',
    favourable: true,
    contraryOfKind: 'suppressorF',
  },
} as const satisfies Input

export const existingInput = {
  key: 'existingF',
  fact: 'existingF',
  label: 'Already on the line',
  help: 'Stubs, a filter at the far end, other nodes that are not counted as nodes: between the wires of a pair, to chassis on a single line. Terminated cable does not count.',
  type: FARADS,
  whenEmpty: {
    do: 'assume',
    name: 'what is already on the line',
    how: 'Add up the other nodes, stubs and filters, or measure with the line unpowered and every other box connected.',
    text: '0',
    why: 'nothing else on the line',
    favourable: true,
    contraryOfKind: 'existingF',
  },
} as const satisfies Input

export const nodeCountInput = {
  key: 'nodeCount',
  fact: 'nodeCount',
  label: 'Nodes on the bus',
  help: 'This one included. Each other node takes from the room of the whole bus what its document allows one node; only for buses with such a figure. Empty: enter what they add under “Already on the line”.',
  type: { is: 'number', quantity: 'count', min: 1, max: 1000 },
  whenEmpty: { do: 'omit' },
} as const satisfies Input

export const crossInput = {
  key: 'crossF',
  fact: 'crossF',
  label: 'Line-to-line capacitor',
  help: 'Between the two wires of a pair, or from a supply to its return. Loads the signal in full and does nothing for common mode.',
  type: FARADS,
  whenEmpty: { do: 'omit' },
} as const satisfies Input

export const bitRateInput = {
  key: 'bitRateHz',
  fact: 'bitRateHz',
  label: 'Bit rate',
  help: 'Only for kinds that run at several rates: 500 kbit/s, 1M.',
  type: { is: 'number', quantity: 'bitRate', min: 1, max: 1e11 },
  whenEmpty: {
    do: 'omit',
    name: 'the bit rate',
    how: 'The interface document of the bus names it; on a scope it is one over the shortest bit.',
  },
  group: SIGNAL,
} as const satisfies Input

export const driverEdgeInput = {
  key: 'driverEdgeSec',
  fact: 'driverEdgeSec',
  label: 'Driver edge',
  help: '10–90 % edge of the driver without added capacitance. Empty: the nominal edge of the standard.',
  type: { is: 'number', quantity: 'time', min: 1e-13, max: 10 },
  whenEmpty: { do: 'omit' },
  group: SIGNAL,
} as const satisfies Input

export const signalOhmInput = {
  key: 'signalOhm',
  fact: 'signalOhm',
  label: 'Signal resistance',
  help: 'Resistance the signal sees at the capacitor (pull-up, driver, source and load in parallel). Empty: the kind’s own.',
  type: { is: 'number', quantity: 'resistance', min: 1e-3, max: 1e9 },
  whenEmpty: {
    do: 'omit',
    name: 'the signal resistance',
    how: 'Pull-up, driver, source and load at the contact in parallel, from the data of the two boxes.',
  },
  group: SIGNAL,
} as const satisfies Input

export const ownCeilingInputs = [
  {
    key: 'ownCeilingF',
    fact: 'ownCeilingF',
    label: 'Most it may see',
    help: 'From your specification or the maker of the box: in all, between the wires of a pair, to chassis on a single line.',
    type: FARADS,
    whenEmpty: {
      do: 'omit',
      name: 'a limit of your own',
      how: 'The specification or the maker of the box names the most capacitance its contact may see.',
    },
    group: OWN,
  },
  {
    key: 'usefulHz',
    fact: 'usefulHz',
    label: 'Highest useful frequency',
    help: 'Of your signal. Empty: that of the kind.',
    type: { is: 'number', quantity: 'frequency', min: 1e-3, max: 1e11 },
    whenEmpty: {
      do: 'omit',
      name: 'the highest useful frequency',
      how: 'From the specification of the signal; 0.35 over its fastest edge where it is digital.',
    },
    group: OWN,
  },
  {
    key: 'ownLossDb',
    fact: 'ownLossDb',
    label: 'Loss allowed there',
    help: 'Most the signal may lose at that frequency. Needs the signal resistance.',
    type: { is: 'number', quantity: 'decibel', min: 1e-3, max: 60 },
    whenEmpty: { do: 'omit' },
    group: OWN,
  },
  {
    key: 'ownPhaseDeg',
    fact: 'ownPhaseDeg',
    label: 'Phase allowed there',
    help: 'Most the signal may turn at that frequency. Needs the signal resistance.',
    type: { is: 'number', quantity: 'angle', min: 1e-3, max: 89 },
    whenEmpty: { do: 'omit' },
    group: OWN,
  },
] as const satisfies readonly Input[]
