/** What the surge check asks: the pulse, the suppressor, the filter, and what each part stands. */
import type { Given, Input } from '../../types.ts'
import { spreadInputs } from '../spread-inputs.ts'
import { filterInputs } from './filter-inputs.ts'
import { lineInputs } from './line-inputs.ts'
import { morePartInputs, partInputs } from './part-inputs.ts'
import { ownPulseInputs, pulseInputs, VOLTS } from './pulse-inputs.ts'

export const surgeInputs = [
  ...pulseInputs,
  ...partInputs,
  {
    key: 'withstandV',
    fact: 'circuitWithstandV',
    label: 'Circuit withstands',
    help: 'Peak volts the input behind the connector stands for the length of the pulse.',
    type: VOLTS,
    whenEmpty: {
      do: 'ask',
      how: 'From the maker of the box, or the absolute maximum of the first part behind the contact.',
      name: 'what the circuit withstands',
    },
  },
  ...filterInputs,
  ...lineInputs,
  ...morePartInputs,
  ...spreadInputs,
  ...ownPulseInputs,
] as const satisfies readonly Input[]

export type SurgeGiven = Given<typeof surgeInputs>
