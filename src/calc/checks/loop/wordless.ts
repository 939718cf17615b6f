/** What a clamp, a current probe and trial capacitors say of the impedance the noise works in. */
import type { WordlessCheck } from '../../types.ts'
import { type LoopFigures, loopFigures } from './figures.ts'
import { loopInputs } from './inputs.ts'

const OHMS = { quantity: 'resistance', digits: 3 } as const

export const wordlessLoop: WordlessCheck<typeof loopInputs, LoopFigures> = {
  id: 'loop',
  title: 'Loop',
  question: 'What impedance does the noise come from and go into?',
  inputs: loopInputs,
  outputs: [
    { key: 'loopOhm', label: 'Source and load together', ...OHMS, lead: true },
    { key: 'loopLeastOhm', label: 'At least, whatever the phase', ...OHMS },
    { key: 'loopMostOhm', label: 'At most, whatever the phase', ...OHMS },
    { key: 'parallelOhm', label: 'Source and load side by side', ...OHMS, lead: true },
    { key: 'parallelLeastOhm', label: 'Side by side at least, readings off', ...OHMS },
    { key: 'parallelMostOhm', label: 'Side by side at most, readings off', ...OHMS },
    { key: 'higherOhm', label: 'One end', ...OHMS },
    { key: 'higherLeastOhm', label: 'One end at least, readings off', ...OHMS },
    { key: 'higherMostOhm', label: 'One end at most, readings off', ...OHMS },
    { key: 'lowerOhm', label: 'The other end', ...OHMS },
    { key: 'lowerLeastOhm', label: 'The other end at least, readings off', ...OHMS },
    { key: 'lowerMostOhm', label: 'The other end at most, readings off', ...OHMS },
    { key: 'loadOhm', label: 'Load, handed to the checks', ...OHMS, lead: true, provides: 'noiseLoadOhm' },
    {
      key: 'sourceLeastOhm',
      label: 'Source at least, handed to the checks',
      ...OHMS,
      provides: 'noiseSourceOhm',
      spanTo: 'sourceMostOhm',
    },
    { key: 'sourceMostOhm', label: 'Source at most', ...OHMS },
  ],
  figures: loopFigures,
}
