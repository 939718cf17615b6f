/** What the need check asks. */
import type { Given, Input } from '../../types.ts'

const LEVEL_DB = { is: 'level', min: -300, max: 400 } as const

export const needInputs = [
  {
    key: 'measuredDb',
    fact: 'measuredDb',
    label: 'Measured level',
    help: 'Worst reading without a filter. Susceptibility: the level injected. Same bandwidth and detector as the limit; a level keeps its unit: 105 dBµV, 40 dBm, 60 dBµA, 46 dBµV/m. A field is a need of this line only after a clamp on its cable made the worst fall.',
    type: LEVEL_DB,
    whenEmpty: {
      do: 'ask',
      name: 'the measured level',
      how: 'Read it in the receiver or analyser bandwidth the limit is written for. A current-probe reading in dBµA is compared with dBµV across the impedance below.',
    },
  },
  {
    key: 'limitDb',
    fact: 'limitDb',
    label: 'Allowed level',
    help: 'The limit line at that frequency. Susceptibility: the level at which the equipment is upset.',
    type: LEVEL_DB,
    whenEmpty: {
      do: 'ask',
      name: 'the allowed level',
      how: 'Take it from the test plan or specification in force, at the same frequency and detector.',
    },
  },
  {
    key: 'marginDb',
    fact: 'marginDb',
    label: 'Margin',
    help: 'How far below the limit you want to be.',
    type: { is: 'number', quantity: 'decibel', min: 0, max: 100 },
    defaultText: '6',
    whenEmpty: { do: 'assume', text: '6', why: 'a factor of two in voltage, common practice', favourable: false },
  },
  {
    key: 'impedanceOhm',
    fact: 'levelOhm',
    label: 'Measured in',
    help: 'Impedance across which both levels are meant. Only where one is in dBm or dBµA and the other is not: a receiver or line network has 50 Ω.',
    type: { is: 'number', quantity: 'resistance', min: 1e-3, max: 1e9 },
    whenEmpty: { do: 'omit' },
  },
] as const satisfies readonly Input[]

export type NeedGiven = Given<typeof needInputs>
