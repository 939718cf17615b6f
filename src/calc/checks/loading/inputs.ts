/** What the loading check asks. */
import { TOPOLOGIES, TOPOLOGY_LABEL } from '../../network/circuit.ts'
import type { Given, Input } from '../../types.ts'
import { chokeHInput, chokeLeakageHInput, chokeWiresInput } from '../choke-inputs.ts'
import { FARADS, HENRIES } from '../noise-inputs.ts'
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
import { spreadInputs } from '../spread-inputs.ts'

/** The same field without a usual value: left empty, the part counts as entered. */
function asEntered<I extends Input>({ defaultText: _usual, ...input }: I) {
  return { ...input, whenEmpty: { do: 'omit' } as const }
}

const [tolerance, temperature, bias, ageing, ageingPerDecade] = spreadInputs

const FILTER = 'Rest of the filter'

export const loadingInputs = [
  lineKindInput,
  {
    key: 'capacitanceF',
    fact: 'legF',
    label: 'Capacitance per leg',
    help: 'All the filter puts from one leg to chassis (both capacitors of a Pi), before tolerance. Empty: only the most it may be.',
    type: FARADS,
    whenEmpty: { do: 'omit' },
  },
  { ...crossInput, group: FILTER },
  {
    key: 'inductanceH',
    fact: 'inductanceH',
    label: 'Filter inductance per leg',
    help: 'In series with each leg. With a capacitor it can ring. Empty: none.',
    type: HENRIES,
    whenEmpty: { do: 'omit' },
    group: FILTER,
  },
  {
    key: 'topology',
    fact: 'topology',
    label: 'Topology',
    help: 'Matters with an inductor: a T has two of them. Empty: one inductor at the driver side.',
    type: { is: 'choice', options: TOPOLOGIES.map((t) => ({ value: t, label: TOPOLOGY_LABEL[t] })) },
    whenEmpty: { do: 'omit' },
    group: FILTER,
  },
  suppressorInput,
  existingInput,
  nodeCountInput,
  bitRateInput,
  driverEdgeInput,
  signalOhmInput,
  ...ownCeilingInputs,
  asEntered(tolerance),
  asEntered(temperature),
  asEntered(bias),
  asEntered(ageing),
  asEntered(ageingPerDecade),
  chokeHInput,
  chokeLeakageHInput,
  chokeWiresInput,
] as const satisfies readonly Input[]

export type LoadingGiven = Given<typeof loadingInputs>
