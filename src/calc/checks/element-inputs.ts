/** What a filter is made of beside ideal parts: current through its inductor, a bead, damping. Asked alike by `filter` and `window`. */
import type { Input } from '../types.ts'

const CURRENT = 'Inductor at the line current'
const BEAD = 'Ferrite bead'
const DAMPING = 'Damping'
const AMPERES = { is: 'number', quantity: 'current', min: 0, max: 1e5 } as const
const OHM_LIST = { is: 'number', quantity: 'resistance', min: -1e6, max: 1e6, many: true } as const
const LOST = { is: 'number', quantity: 'fraction', min: 0, max: 0.99 } as const

export const elementInputs = [
  {
    key: 'saturationFrac',
    fact: 'saturationFrac',
    label: 'Inductance lost to the current',
    help: 'Where the inductance above is the rated one: the share that is gone at the line current, or at the saturation current below. Empty: the inductance is the one at the line current.',
    type: LOST,
    whenEmpty: {
      do: 'assume',
      text: '0',
      why: 'the inductance is taken as the one at the line current',
      favourable: true,
      contraryOfKind: 'saturationFrac',
    },
    group: CURRENT,
  },
  {
    key: 'saturationA',
    fact: 'saturationA',
    label: 'Saturation current',
    help: 'Where that share is gone, from the part’s sheet (often 20 or 30 %). Up to it all of the loss is counted; above it nothing is known.',
    type: AMPERES,
    whenEmpty: { do: 'omit' },
    group: CURRENT,
  },
  {
    key: 'lineA',
    fact: 'lineA',
    label: 'Line current',
    help: 'Largest steady current of the line, peak or DC. Empty on a power line: from the connected load.',
    type: AMPERES,
    whenEmpty: { do: 'omit' },
    group: CURRENT,
  },
  {
    key: 'beadHz',
    fact: 'beadHz',
    label: 'Bead frequencies',
    help: 'Three or more at which the part’s curve is read, rising: 1M;25M;100M. The bead then stands for every inductor; beyond them it is not known.',
    type: { is: 'number', quantity: 'frequency', min: 1, max: 1e11, many: true },
    whenEmpty: { do: 'omit' },
    group: BEAD,
  },
  {
    key: 'beadOhm',
    fact: 'beadOhm',
    label: 'Bead resistance R',
    help: 'R at each of them, from the curve without current.',
    type: OHM_LIST,
    whenEmpty: { do: 'omit' },
    group: BEAD,
  },
  {
    key: 'beadReactanceOhm',
    fact: 'beadReactanceOhm',
    label: 'Bead reactance X',
    help: 'X at each of them; negative above its resonance. Or the magnitude below.',
    type: OHM_LIST,
    whenEmpty: { do: 'omit' },
    group: BEAD,
  },
  {
    key: 'beadImpedanceOhm',
    fact: 'beadImpedanceOhm',
    label: 'Bead impedance |Z|',
    help: 'Instead of X: inductive below the largest one, of either sign from there on.',
    type: OHM_LIST,
    whenEmpty: { do: 'omit' },
    group: BEAD,
  },
  {
    key: 'beadBiasFrac',
    fact: 'beadBiasFrac',
    label: 'Bead impedance lost to the current',
    help: 'At the line current. At half its rated current up to 90 % can be gone. Empty: none.',
    type: LOST,
    whenEmpty: {
      do: 'assume',
      text: '0',
      why: 'no current worth the name flows',
      favourable: true,
      contraryOfKind: 'beadBiasFrac',
      beside: 'beadHz',
    },
    group: BEAD,
  },
  {
    key: 'dampOhm',
    fact: 'dampOhm',
    label: 'Damping resistor',
    help: 'In series with the damping capacitor, both across the filter’s (load-side) capacitor: √(L/C).',
    type: { is: 'number', quantity: 'resistance', min: 1e-6, max: 1e9 },
    whenEmpty: { do: 'omit' },
    group: DAMPING,
  },
  {
    key: 'dampF',
    fact: 'dampF',
    label: 'Damping capacitor',
    help: 'As marked, at least four times the filter’s. It uses room like any other.',
    type: { is: 'number', quantity: 'capacitance', min: 0, max: 1 },
    whenEmpty: { do: 'omit' },
    group: DAMPING,
  },
] as const satisfies readonly Input[]
