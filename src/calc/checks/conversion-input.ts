/** What may become signal of a common mode, asked in the same words by every check that works it out. */
import type { Input } from '../types.ts'

export const mostConversionInput = {
  key: 'mostConversionDb',
  fact: 'mostConversionDb',
  label: 'Conversion allowed',
  help: 'Most of the common mode that may become signal, in dB below it, negative: -40. No kind of line states one here. Empty: shown, not judged.',
  type: { is: 'number', quantity: 'decibel', min: -200, max: 0 },
  whenEmpty: { do: 'omit' },
  group: 'Balance of the pair',
} as const satisfies Input
