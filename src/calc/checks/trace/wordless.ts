/** A measured trace against a limit: what must come off, over all of it at once. */
import type { WordlessCheck } from '../../types.ts'
import { type TraceFigures, traceFigures } from './figures.ts'
import { traceInputs } from './inputs.ts'

export const wordlessTrace: WordlessCheck<typeof traceInputs, TraceFigures> = {
  id: 'trace',
  title: 'Trace',
  question: 'How far is a measured spectrum over its limit, and what must come off where?',
  inputs: traceInputs,
  outputs: [
    { key: 'neededDb', label: 'Needed at its worst', quantity: 'decibel', digits: 3, side: 'least', lead: true },
    { key: 'worstExcessDb', label: 'Worst over the limit', quantity: 'decibel', digits: 3, side: 'least', lead: true },
    { key: 'worstAtHz', label: 'Worst at', quantity: 'frequency', digits: 4 },
  ],
  lists: [
    { key: 'traceNeedHz', quantity: 'frequency', provides: 'traceNeedHz' },
    { key: 'traceNeedDb', quantity: 'decibel', provides: 'traceNeedDb' },
  ],
  whileUnread: {
    facts: ['traceHz', 'traceDb'],
    sentence: 'The trace on this line cannot be read, and what it needs counts here.',
  },
  figures: traceFigures,
}
