/** Inputs that `filter` and `window` ask in the same words: noise ends and the parasitics of real parts. */
import type { Input } from '../types.ts'

const PARTS = 'Real parts'
const ENDS = 'Reactive ends'

export const FARADS = { is: 'number', quantity: 'capacitance', min: 0, max: 1 } as const
export const HENRIES = { is: 'number', quantity: 'inductance', min: 0, max: 100 } as const
export const OHMS = { is: 'number', quantity: 'resistance', min: 0, max: 1e12 } as const

export const SPREAD_OFFER = {
  text: '1;10;50;150',
  why: 'nobody knows it: the worst of a spread from 1 Ω to 150 Ω then governs',
} as const

export const sourceHInput = {
  key: 'sourceH',
  fact: 'noiseSourceH',
  label: 'Source inductance',
  help: 'Inductance in series with the noise source, for example the harness. It can resonate with the capacitor.',
  type: HENRIES,
  whenEmpty: { do: 'omit' },
  group: ENDS,
} as const satisfies Input

export const loadFInput = {
  key: 'loadF',
  fact: 'noiseLoadF',
  label: 'Load capacitance',
  help: 'Capacitance across the load at the noise frequency.',
  type: FARADS,
  whenEmpty: { do: 'omit' },
  group: ENDS,
} as const satisfies Input

export const loadHInput = {
  key: 'loadH',
  fact: 'noiseLoadH',
  label: 'Load inductance',
  help: 'Inductance across the load (a line network has 50 µH or 5 µH).',
  type: { is: 'number', quantity: 'inductance', min: 1e-12, max: 100 },
  whenEmpty: { do: 'omit' },
  group: ENDS,
} as const satisfies Input

export const esrInput = {
  key: 'esrOhm',
  fact: 'esrOhm',
  label: 'Capacitor series resistance',
  help: 'ESR. Ceramics: 5 to 50 mΩ at self-resonance.',
  type: { is: 'number', quantity: 'resistance', min: 0, max: 1e6 },
  whenEmpty: { do: 'assume', text: '0', why: 'none entered', favourable: true },
  group: PARTS,
} as const satisfies Input

export const eslInput = {
  key: 'eslH',
  fact: 'eslH',
  label: 'Capacitor series inductance',
  help: 'ESL with its leads: feed-through 0.01–0.05 nH, mounted chip 1–2 nH, leaded 5–15 nH, wire about 1 nH per mm.',
  type: { is: 'number', quantity: 'inductance', min: 0, max: 1 },
  whenEmpty: { do: 'assume', text: '0', why: 'an ideal feed-through', favourable: true, contrary: '0.05n' },
  group: PARTS,
} as const satisfies Input

export const bondOhmInput = {
  key: 'bondOhm',
  fact: 'bondOhm',
  label: 'Bond resistance',
  help: 'From the connector shell to structure, shared by every shunt part. A class-R style bond is 2.5 mΩ.',
  type: { is: 'number', quantity: 'resistance', min: 0, max: 1e6 },
  whenEmpty: { do: 'assume', text: '0', why: 'a perfect bond', favourable: true, contrary: '2.5m' },
  group: PARTS,
} as const satisfies Input

export const bondHInput = {
  key: 'bondH',
  fact: 'bondH',
  label: 'Bond inductance',
  help: 'Full-perimeter contact: well under 1 nH. A 100 mm strap: 56 nH. One inch of wire: 20 nH.',
  type: { is: 'number', quantity: 'inductance', min: 0, max: 1 },
  whenEmpty: { do: 'assume', text: '0', why: 'a perfect bond', favourable: true, contrary: '0.5n' },
  group: PARTS,
} as const satisfies Input

export const dcrInput = {
  key: 'dcrOhm',
  fact: 'dcrOhm',
  label: 'Winding resistance',
  help: 'DC resistance of the inductor.',
  type: { is: 'number', quantity: 'resistance', min: 0, max: 1e6 },
  whenEmpty: { do: 'assume', text: '0', why: 'none entered', favourable: false },
  group: PARTS,
} as const satisfies Input

export const inductorParallelOhmInput = {
  key: 'inductorParallelOhm',
  fact: 'inductorParallelOhm',
  label: 'Inductor loss resistance',
  help: 'Resistance across the inductor: the plateau of a bead.',
  type: { is: 'number', quantity: 'resistance', min: 1e-3, max: 1e12 },
  whenEmpty: { do: 'omit' },
  group: PARTS,
} as const satisfies Input

export const inductorResonanceInput = {
  key: 'inductorResonanceHz',
  fact: 'inductorResonanceHz',
  label: 'Inductor self-resonance',
  help: 'From its data sheet: counts instead of the self-capacitance, as 1/((2π·f)²·L).',
  type: { is: 'number', quantity: 'frequency', min: 1, max: 1e12 },
  whenEmpty: { do: 'omit' },
  group: PARTS,
} as const satisfies Input

export const inductorParallelFInput = {
  key: 'inductorParallelF',
  fact: 'inductorParallelF',
  label: 'Inductor self-capacitance',
  help: 'Above its own resonance an inductor is a capacitor.',
  type: FARADS,
  whenEmpty: { do: 'assume', text: '0', why: 'an ideal inductor', favourable: true, contrary: '2p' },
  group: PARTS,
} as const satisfies Input
