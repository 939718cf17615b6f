/** Which harmonics and third-order products of what runs on board land where somebody listens. */
import type { Check } from '../../types.ts'
import { type HarmonicsFigures, harmonicsFigures } from './figures.ts'
import { harmonicsInputs } from './inputs.ts'
import { explainHarmonics } from './words.ts'

const HERTZ = { quantity: 'frequency', digits: 4 } as const

export const harmonicsCheck: Check<typeof harmonicsInputs, HarmonicsFigures> = {
  id: 'harmonics',
  title: 'Harmonics',
  question: 'Does a clock, converter or transmitter keep clear of the receivers?',
  inputs: harmonicsInputs,
  outputs: [
    { key: 'worstAt', label: 'Nearest to', is: 'words', lead: true },
    { key: 'landingCount', label: 'Landings', quantity: 'count', digits: 3 },
    { key: 'order', label: 'Harmonic', quantity: 'count', digits: 3 },
    { key: 'productHz', label: 'It lies at', ...HERTZ },
    { key: 'fromChannelHz', label: 'From the channel', ...HERTZ },
    { key: 'levelDb', label: 'Below its fundamental', quantity: 'decibel', digits: 3 },
    { key: 'exactHz', label: 'Exactly on it from', ...HERTZ },
    { key: 'shiftHz', label: 'Shift that avoids it', ...HERTZ },
    { key: 'cornerHz', label: 'Corner of its envelope', ...HERTZ },
  ],
  figures: harmonicsFigures,
  explain: explainHarmonics,
}
