/** What a trial came to: the rows of the usual reading of a progressive trial, each by its condition, as ids only. */
import { dropDb, parallelFromOne } from '../network/capacitor-trial.ts'
import type { OhmSpan } from '../network/clamp.ts'
import { countedNumbers, isHelped, type JudgedStep, type TrialReading } from './four-numbers.ts'
import { isCapacitorAt } from './solve.ts'

export const TRIAL_OUTCOMES = [
  'contact',
  'repeat-differs',
  'bare-differs',
  'between-wires',
  'worse',
  'cleared-first',
  'cleared-between',
  'levelled',
  'improved',
  'no-change',
  'degraded',
  'window-empty',
  'larger-loses',
] as const
export type TrialOutcome = (typeof TRIAL_OUTCOMES)[number]

/** A fall below this is too near to nothing to foresee the next one. */
const FORESEEN_FROM_DB = 3

/** Every row that fits, those that leave no number first. `offDb`: what one reading may be off. */
export function outcomesOf(reading: TrialReading, offDb: number): readonly TrialOutcome[] {
  const { voids, steps, place, isDifferential } = reading
  const counted = steps.filter((step) => step.part === 'capacitor' && step.place === place)
  const read = counted.filter(({ heard }) => heard !== 'unread')
  const { notClearedF, clearedF, degradedF } = countedNumbers(reading)
  const isVoid = voids.length > 0
  const held: Readonly<Record<TrialOutcome, boolean>> = {
    contact: voids.includes('contact'),
    'repeat-differs': voids.includes('repeat-differs'),
    'bare-differs': voids.includes('bare-differs'),
    'between-wires': isDifferential,
    worse: counted.some(({ heard }) => heard === 'more'),
    'cleared-first': !isVoid && Number.isFinite(clearedF) && notClearedF === 0,
    'cleared-between': !isVoid && Number.isFinite(clearedF) && notClearedF > 0,
    levelled: !isVoid && isLevelled(counted, offDb),
    improved: !isVoid && !Number.isFinite(clearedF) && counted.some(isHelped),
    'no-change': !isVoid && read.length > 0 && read.every(({ heard }) => heard === 'same'),
    degraded: !isVoid && Number.isFinite(degradedF),
    'window-empty': !isVoid && degradedF <= Math.max(notClearedF, Number.isFinite(clearedF) ? clearedF : 0),
    'larger-loses': voids.includes('not-monotonic'),
  }
  return TRIAL_OUTCOMES.filter((outcome) => held[outcome])
}

/** Whether the largest does no more than the next smaller, though one resistance would have made it more. */
function isLevelled(counted: readonly JudgedStep[], offDb: number): boolean {
  const [last, before] = counted
    .filter(({ fallDb, heard }) => fallDb !== undefined && heard !== 'unread')
    .sort((a, b) => b.farads - a.farads)
  if (last?.fallDb === undefined || before?.fallDb === undefined || last.farads <= before.farads) return false
  if (before.fallDb < FORESEEN_FROM_DB) return false
  // the frequency cancels: any will do
  const ohm = parallelFromOne({ farad: before.farads, dropDb: before.fallDb }, 1)
  if (ohm === undefined) return false
  const foreseen = dropDb({ ohm, siemens: 0 }, last.farads, 1)
  return foreseen - last.fallDb > 4 * offDb
}

/** What was taken of the circuit before the trial, and what the trial says against it. */
export type Refuted = 'path' | 'mode' | 'impedance' | 'lead'

export type Supposed = {
  readonly hz: number | undefined
  readonly leadH: number
  readonly offDb: number
  /** Zs ∥ Zl as entered, least and most of what was named; undefined where it was not */
  readonly parallel: OhmSpan | undefined
  /** the mode that was taken; undefined where it does not matter */
  readonly mode: 'common' | 'differential' | undefined
  /** Zs ∥ Zl as the trial has it */
  readonly measured: OhmSpan | undefined
}

/** Enough decibels that a part that should have given them and gave none refutes its path. */
const TELLING_DB = 10

/**
 * Which assumption the trial refutes. Path: on the impedances entered the largest capacitor should have taken 10 dB and
 * more, and nothing changed. Mode: only the other place did something. Impedance: what was measured and what was entered
 * have no value in common, over the whole error. Lead: the larger part gave less than the smaller foresaw.
 */
export function refutedBy(reading: TrialReading, outcomes: readonly TrialOutcome[], q: Supposed): readonly Refuted[] {
  const { steps, place, voids } = reading
  if (voids.some((reason) => reason !== 'not-monotonic')) return []
  const refuted: Refuted[] = []
  const largest = steps
    .filter(({ part, place: at, heard }) => part === 'capacitor' && at === place && heard !== 'unread')
    .reduce((most, { farads }) => Math.max(most, farads), 0)
  const { hz, parallel, leadH, offDb, measured } = q
  if (
    outcomes.includes('no-change') &&
    hz !== undefined &&
    parallel !== undefined &&
    isCapacitorAt(largest, leadH, hz)
  ) {
    const foreseen = dropDb({ ohm: parallel.least, siemens: 0 }, largest, hz)
    if (foreseen > TELLING_DB + 2 * offDb) refuted.push('path')
  }
  if (outcomes.includes('between-wires') && q.mode !== 'differential') refuted.push('mode')
  if (
    parallel !== undefined &&
    measured !== undefined &&
    (measured.most < parallel.least * ROUNDED || measured.least > parallel.most / ROUNDED)
  )
    refuted.push('impedance')
  if (outcomes.includes('levelled') || (hz !== undefined && largest > 0 && isHelpedBeyond(reading, leadH, hz)))
    refuted.push('lead')
  return refuted
}

/** Figures are typed with two or three digits: a touch is no contradiction. */
const ROUNDED = 0.995

/** A larger part above half its own resonance that did less than a smaller one. */
function isHelpedBeyond({ steps, place }: TrialReading, leadH: number, hz: number): boolean {
  const counted = steps.filter((step) => step.part === 'capacitor' && step.place === place && step.fallDb !== undefined)
  return counted.some(
    (large) =>
      !isCapacitorAt(large.farads, leadH, hz) &&
      counted.some((small) => small.farads < large.farads && (small.fallDb ?? 0) > (large.fallDb ?? 0)),
  )
}
