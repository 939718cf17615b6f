/** A common-mode choke, asked in the same words by every check that counts one. */
import type { Input } from '../types.ts'
import { FARADS, HENRIES } from './noise-inputs.ts'

const CHOKE = 'Common-mode choke'

export const chokeHInput = {
  key: 'chokeH',
  fact: 'chokeH',
  label: 'Choke inductance',
  help: 'Least value of one winding, the other open; a sheet that measures both in parallel gives the same within the leakage. Empty: no choke.',
  type: HENRIES,
  whenEmpty: { do: 'omit' },
  group: CHOKE,
} as const satisfies Input

export const chokeLeakageHInput = {
  key: 'chokeLeakageH',
  fact: 'chokeLeakageH',
  label: 'Choke leakage inductance',
  help: 'Its most, both windings in series, opposing: what the signal sees. A quarter of it may be all there is. Empty: 0.5 to 2 % of the inductance (from memory).',
  type: HENRIES,
  whenEmpty: { do: 'omit' },
  group: CHOKE,
} as const satisfies Input

export const chokeWiresInput = {
  key: 'chokeWires',
  fact: 'chokeWires',
  label: 'Wires through the core',
  help: 'A common-mode choke takes every wire of the circuit, the return included. Around one wire it saturates. Empty: every wire.',
  type: {
    is: 'choice',
    options: [
      { value: 'all', label: 'every wire, return included' },
      { value: 'one', label: 'one wire' },
    ],
  },
  whenEmpty: { do: 'omit' },
  group: CHOKE,
} as const satisfies Input

export const chokeSideInput = {
  key: 'chokeSide',
  fact: 'chokeSide',
  label: 'Side of the choke',
  help: 'On which side of the other parts it stands. Empty: where the noise comes from.',
  type: {
    is: 'choice',
    options: [
      { value: 'source', label: 'noise source' },
      { value: 'load', label: 'load' },
    ],
  },
  whenEmpty: { do: 'omit' },
  group: CHOKE,
} as const satisfies Input

export const chokeOhmInput = {
  key: 'chokeOhm',
  fact: 'chokeOhm',
  label: 'Choke winding resistance',
  help: 'DC resistance of one winding.',
  type: { is: 'number', quantity: 'resistance', min: 0, max: 1e6 },
  whenEmpty: { do: 'assume', text: '0', why: 'none entered', favourable: false },
  group: CHOKE,
} as const satisfies Input

export const chokeFInput = {
  key: 'chokeF',
  fact: 'chokeF',
  label: 'Choke self-capacitance',
  help: 'Capacitance across each winding. Above its own resonance a choke is a capacitor.',
  type: FARADS,
  whenEmpty: { do: 'assume', text: '0', why: 'an ideal choke', favourable: true, contrary: '2p', beside: 'chokeH' },
  group: CHOKE,
} as const satisfies Input

export const chokeMismatchInput = {
  key: 'chokeMismatchFrac',
  fact: 'chokeMismatchFrac',
  label: 'Mismatch of the windings',
  help: 'Most the windings differ, as a share of their mean: common mode then becomes signal. Empty: equal windings.',
  type: { is: 'number', quantity: 'fraction', min: 0, max: 0.5 },
  whenEmpty: { do: 'omit' },
  group: CHOKE,
} as const satisfies Input
