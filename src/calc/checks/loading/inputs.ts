/** What the loading check asks. */
import type { Given, Input } from '../../types.ts'
import { FARADS, HENRIES } from '../noise-inputs.ts'
import {
  bitRateInput,
  crossInput,
  driverEdgeInput,
  existingInput,
  lineKindInput,
  signalOhmInput,
  suppressorInput,
} from '../signal-inputs.ts'

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
  crossInput,
  {
    key: 'inductanceH',
    fact: 'inductanceH',
    label: 'Filter inductance per leg',
    help: 'In series with each leg. With a capacitor it can ring. Empty: none.',
    type: HENRIES,
    whenEmpty: { do: 'omit' },
  },
  suppressorInput,
  existingInput,
  bitRateInput,
  driverEdgeInput,
  signalOhmInput,
] as const satisfies readonly Input[]

export type LoadingGiven = Given<typeof loadingInputs>
