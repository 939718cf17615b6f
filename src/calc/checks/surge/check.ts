/** A surge through line, suppressor and filter: does the circuit live, does the suppressor live, does the signal live? */
import { waveformById } from '../../../reference/waveforms.ts'
import { plainShapePlot } from '../../surge/plots.ts'
import { setUpSurge } from '../../surge/setup.ts'
import { asOnePart } from '../../surge/stack.ts'
import type { Check, Progress, Result } from '../../types.ts'
import { type Told, told } from '../told.ts'
import { answerSurge } from './answer.ts'
import { type SurgeGiven, surgeInputs } from './inputs.ts'

function* compute(asked: SurgeGiven): Generator<Progress, Result> {
  const given = asOnePart(asked)
  const answer = setUpSurge(given)
  if (answer.is === 'refused') return { ok: false, issues: [answer.issue] }
  if (answer.is === 'missing') return waiting(answer.words, given.waveform)
  return yield* answerSurge(given, answer.setup)
}

/** What is missing, with the shape of the waveform chosen so far. */
function waiting(words: readonly string[], waveform: string | undefined): Result {
  const row = waveform === undefined ? undefined : waveformById(waveform)
  const shape = row && plainShapePlot(row)
  return {
    ok: true,
    headline: `Enter ${words.join(' and ')}.`,
    findings: row ? [{ verdict: 'ok', sentence: row.note }] : [],
    outputs: {},
    bounds: [],
    rungs: [],
    pictures: shape ? [shape] : [],
    cautions: ['lightning-hirf-fuel', 'screening'],
  }
}

export const surgeCheck: Check<typeof surgeInputs, Told> = {
  id: 'surge',
  title: 'Surge',
  question: 'Does the circuit live, does the suppressor live, does the signal live?',
  inputs: surgeInputs,
  outputs: [
    { key: 'loadPeakV', label: 'Peak at the load', quantity: 'voltage', digits: 4, lead: true },
    { key: 'circuitVerdict', label: 'Circuit', is: 'words' },
    { key: 'suppressorVerdict', label: 'Suppressor', is: 'words' },
    { key: 'capacitorVerdict', label: 'Filter capacitor', is: 'words' },
    { key: 'signalVerdict', label: 'Signal', is: 'words' },
    { key: 'usedFrac', label: 'Rating used', quantity: 'fraction', digits: 3 },
    { key: 'suppressorPeakV', label: 'Clamp (across the junction)', quantity: 'voltage', digits: 4 },
    { key: 'connectorPeakV', label: 'Peak at the connector', quantity: 'voltage', digits: 4 },
    { key: 'capacitorPeakV', label: 'Peak on a filter capacitor', quantity: 'voltage', digits: 4 },
    { key: 'peakA', label: 'Peak current of the suppressor', quantity: 'current', digits: 4 },
    { key: 'energyJ', label: 'Energy in the suppressor', quantity: 'energy', digits: 4 },
    { key: 'overshootV', label: 'Overshoot of its lead', quantity: 'voltage', digits: 3 },
    { key: 'overshootSec', label: 'Overshoot lasts', quantity: 'time', digits: 3 },
    { key: 'heldAfterSec', label: 'Held below what the circuit withstands after', quantity: 'time', digits: 3 },
    { key: 'letThroughVs', label: 'Let through above it (V·s)', quantity: 'number', digits: 3 },
    { key: 'loadPeakSec', label: 'Load peaks at', quantity: 'time', digits: 3 },
    { key: 'connectorPeakSec', label: 'Connector peaks at', quantity: 'time', digits: 3 },
    { key: 'suppressorPeakSec', label: 'Clamp peaks at', quantity: 'time', digits: 3 },
    { key: 'peakASec', label: 'Current peaks at', quantity: 'time', digits: 3 },
  ],
  ...told(compute),
}
