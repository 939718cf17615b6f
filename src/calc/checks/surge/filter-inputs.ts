/** Inputs about the filter beside the suppressor and the circuit behind it. */
import { TOPOLOGIES, TOPOLOGY_LABEL } from '../../network/circuit.ts'
import type { Input } from '../../types.ts'
import { FARADS, HENRIES } from '../noise-inputs.ts'
import { VOLTS } from './pulse-inputs.ts'

const FILTER = 'Filter'

export const filterInputs = [
  {
    key: 'topology',
    fact: 'surgeTopology',
    label: 'Filter topology',
    help: 'Connector to load.',
    type: {
      is: 'choice',
      options: [
        { value: 'none', label: 'no filter' },
        ...TOPOLOGIES.map((t) => ({ value: t, label: TOPOLOGY_LABEL[t] })),
      ],
    },
    defaultText: 'none',
    whenEmpty: { do: 'assume', text: 'none', why: 'no filter named', favourable: false },
    group: FILTER,
  },
  {
    key: 'placement',
    fact: 'suppressorPlacement',
    label: 'Suppressor sits',
    help: 'At the connector ahead of the filter, or behind the filter at the load.',
    type: {
      is: 'choice',
      options: [
        { value: 'connector', label: 'at the connector, ahead of the filter' },
        { value: 'behind', label: 'behind the filter' },
      ],
    },
    defaultText: 'connector',
    whenEmpty: { do: 'assume', text: 'connector', why: 'the usual place', favourable: false },
    group: FILTER,
  },
  {
    key: 'capacitanceF',
    fact: 'markedF',
    label: 'Capacitance',
    help: 'One capacitor as marked; of a Pi the one at the connector.',
    type: FARADS,
    whenEmpty: { do: 'omit' },
    group: FILTER,
  },
  {
    key: 'capacitance2F',
    fact: 'marked2F',
    label: 'Load-side capacitance',
    help: 'Only for an unequal Pi. Empty = the same as the first.',
    type: FARADS,
    whenEmpty: { do: 'omit' },
    group: FILTER,
  },
  {
    key: 'inductanceH',
    fact: 'inductanceH',
    label: 'Inductance',
    help: 'At the surge current: an inductor that saturates is no inductor then.',
    type: HENRIES,
    whenEmpty: { do: 'omit' },
    group: FILTER,
  },
  {
    key: 'inductance2H',
    fact: 'inductance2H',
    label: 'Load-side inductance',
    help: 'Only for an unequal T. Empty = the same as the first.',
    type: HENRIES,
    whenEmpty: { do: 'omit' },
    group: FILTER,
  },
  {
    key: 'dcrOhm',
    fact: 'dcrOhm',
    label: 'Winding resistance',
    help: 'Of each inductor.',
    type: { is: 'number', quantity: 'resistance', min: 0, max: 1e6 },
    whenEmpty: { do: 'assume', text: '0', why: 'less damping rings higher', favourable: false },
    group: FILTER,
  },
  {
    key: 'capacitorWithstandV',
    fact: 'capacitorWithstandV',
    label: 'Filter capacitor withstands',
    help: 'Peak volts for the length of the pulse. Held against clamp and ring-up, not against the working voltage.',
    type: VOLTS,
    whenEmpty: {
      do: 'omit',
      name: 'what the filter capacitor withstands',
      how: 'Its withstand test in the data sheet, or measured on a spare part.',
    },
    group: FILTER,
  },
  {
    key: 'loadOhm',
    fact: 'surgeLoadOhm',
    label: 'Load resistance',
    help: 'Of the circuit behind the filter, during the pulse.',
    type: { is: 'number', quantity: 'resistance', min: 1e-3, max: 1e12 },
    whenEmpty: { do: 'assume', text: '10k', why: 'a light load lets a filter ring highest', favourable: false },
    group: FILTER,
  },
  {
    key: 'loadF',
    fact: 'surgeLoadF',
    label: 'Load capacitance',
    help: 'Across that load.',
    type: FARADS,
    whenEmpty: { do: 'omit' },
    group: FILTER,
  },
] as const satisfies readonly Input[]
