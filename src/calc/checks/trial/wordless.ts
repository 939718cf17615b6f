/** What capacitors tried on a line show, leave open and exclude, and which assumption they refute. */
import type { WordlessCheck } from '../../types.ts'
import { type TrialFigures, trialFigures } from './figures.ts'
import { trialInputs } from './inputs.ts'

const FARADS = { quantity: 'capacitance', digits: 3 } as const
const OHMS = { quantity: 'resistance', digits: 3 } as const

export const wordlessTrial: WordlessCheck<typeof trialInputs, TrialFigures> = {
  id: 'trial',
  title: 'Trial',
  question: 'What did the capacitors tried on the line show?',
  inputs: trialInputs,
  outputs: [
    {
      key: 'provenLeastF',
      label: 'Shown from, per leg',
      ...FARADS,
      side: 'least',
      lead: true,
      provides: 'trialLeastF',
    },
    { key: 'provenMostF', label: 'Shown up to, per leg', ...FARADS, side: 'most', provides: 'trialMostF' },
    { key: 'notClearedF', label: 'Largest that did not clear', ...FARADS },
    { key: 'clearedF', label: 'Smallest that cleared', ...FARADS },
    { key: 'goodF', label: 'Largest without harm', ...FARADS },
    { key: 'degradedF', label: 'Smallest that harmed', ...FARADS },
    { key: 'belowF', label: 'Excluded up to, per leg', ...FARADS, side: 'least', provides: 'trialBelowF' },
    { key: 'fromF', label: 'Excluded from, per leg', ...FARADS, side: 'most', provides: 'trialFromF' },
    { key: 'nextF', label: 'To try next', ...FARADS },
    { key: 'parallelOhm', label: 'Source and load side by side', ...OHMS },
    { key: 'parallelLeastOhm', label: 'At least, readings off', ...OHMS },
    { key: 'parallelMostOhm', label: 'At most, readings off', ...OHMS },
    { key: 'sideLeastOhm', label: 'Its size at least, whatever its phase', ...OHMS, side: 'most' },
    { key: 'sideMostOhm', label: 'Its size at most', ...OHMS, side: 'least' },
    { key: 'sideLeastDeg', label: 'Its angle from', quantity: 'angle', digits: 3 },
    { key: 'sideMostDeg', label: 'Its angle to', quantity: 'angle', digits: 3 },
    { key: 'readLeastF', label: 'The need takes, per leg', ...FARADS, side: 'least' },
  ],
  lists: [
    { key: 'sideReOhm', quantity: 'resistance', provides: 'trialSideReOhm' },
    { key: 'sideImOhm', quantity: 'resistance', provides: 'trialSideImOhm' },
  ],
  whileUnread: {
    facts: ['trialSteps'],
    sentence: 'The trial on this line cannot be read, and what it shows counts here.',
  },
  figures: trialFigures,
}
