/** The need of a trace in the window: every point of it counts beside what is typed. */

import type { Need } from '../../bounds/surroundings.ts'
import { missingInputs } from '../../line/missing.ts'
import { heldForInput, isUntried, rowCountInput } from '../../trace/mark.ts'
import type { Input, Issue } from '../../types.ts'
import type { WindowGiven } from './inputs.ts'

const FROM_TRACE = 'From a trace'

export const traceNeedInputs = [
  {
    key: 'traceNeedHz',
    fact: 'traceNeedHz',
    label: 'Frequencies of the trace',
    help: 'The trace check fills them: where attenuation is needed. All of them are met at once, beside those above.',
    type: { is: 'number', quantity: 'frequency', min: 1e-3, max: 1e12, many: true },
    whenEmpty: { do: 'omit' },
    group: FROM_TRACE,
  },
  {
    key: 'traceNeedDb',
    fact: 'traceNeedDb',
    label: 'Attenuation at each',
    help: 'One for each of them.',
    type: { is: 'number', quantity: 'decibel', min: 0, max: 400, many: true },
    whenEmpty: { do: 'omit' },
    group: FROM_TRACE,
  },
  rowCountInput,
  heldForInput,
] as const satisfies readonly Input[]

/** Pairs each frequency with its need; an issue where the lists have different lengths, or the need is one for all. */
export type Pairing = (hz: readonly number[], db: readonly number[], key: string) => readonly Need[] | Issue

/** What is typed and what the trace needs, together. */
export function allNeeds(given: WindowGiven, pair: Pairing): readonly Need[] | Issue {
  const typed = pair(given.frequencyHz ?? [], given.neededDb ?? [], 'neededDb')
  if ('code' in typed) return typed
  const traced = pair(given.traceNeedHz ?? [], given.traceNeedDb ?? [], 'traceNeedDb')
  return 'code' in traced ? traced : [...typed, ...traced]
}

const isTraced = ({ traceNeedHz, traceNeedDb }: WindowGiven): boolean =>
  (traceNeedHz?.length ?? 0) > 0 && (traceNeedDb?.length ?? 0) > 0

/** A trace stands on the line and what it needs is not known: frequencies without an attenuation. */
export const isTraceOpen = ({ traceNeedHz, traceNeedDb }: WindowGiven): boolean =>
  (traceNeedHz?.length ?? 0) > 0 && (traceNeedDb?.length ?? 0) === 0

/** A need of an opened trace whose other rows were not tried under these facts, or not all of them were met. */
export const isTraceUntried = (given: WindowGiven): boolean => isTraced(given) && isUntried(given, given.traceHeldFor)

const NEED_KEYS: readonly string[] = ['frequencyHz', 'neededDb']

/** What the window still waits for: a need of its own not where a trace has one. */
export const missingWindowInputs = (inputs: readonly Input[], given: WindowGiven): readonly Input[] =>
  missingInputs(inputs, given).filter(({ key }) => !(isTraced(given) && NEED_KEYS.includes(key)))
