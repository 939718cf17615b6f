/** From the fields of the trace check to a spectrum and a limit that can be compared, or why they cannot. */
import { type Detector, methodLineById, READS_MOST } from '../../../reference/method-lines.ts'
import { levelConflict } from '../../level.ts'
import type { LevelUnit } from '../../quantity/level-unit.ts'
import type { Reading } from '../../trace/judge.ts'
import { type Emission, limitOf, segmentsOf, type TraceLimit } from '../../trace/limit.ts'
import { inOrder } from '../../trace/order.ts'
import type { Spectrum } from '../../trace/types.ts'
import type { Issue } from '../../types.ts'
import { OWN_LIMIT, type TraceGiven } from './inputs.ts'

const UNIT_OF: Readonly<Record<string, LevelUnit>> = {
  dbuv: 'dBµV',
  dbua: 'dBµA',
  dbm: 'dBm',
  dbv: 'dBV',
  'dbuv-m': 'dBµV/m',
}

/** The unit a choice stands for; undefined where none is chosen. */
export const unitOfChoice = (value: string | undefined): LevelUnit | undefined =>
  value === undefined ? undefined : UNIT_OF[value]

/** The choice for a unit a file names. */
export const choiceOfUnit = (unit: LevelUnit): string =>
  Object.entries(UNIT_OF).find(([, one]) => one === unit)?.[0] ?? ''

export type TraceSetup = {
  readonly spectrum: Spectrum
  readonly reading: Reading
  /** fields without which there is no need, though there may be an excess */
  readonly lacks: readonly ('bandwidthHz' | 'detector' | 'clamp')[]
  /** the detector reads at least as much as the one the limit is written for, and more of some emissions */
  readonly isStrict: boolean
  /** a clamp showed that another cable or the box radiates */
  readonly isOtherCable: boolean
}

export type TraceOutcome = { readonly issues: readonly Issue[] } | TraceSetup | 'incomplete'

/** What a level of power is across, where nobody says otherwise. */
const RECEIVER_OHM = 50

const issue = (key: string, code: string, message: string): { readonly issues: readonly Issue[] } => ({
  issues: [{ key, code, message }],
})

export function setUpTrace(given: TraceGiven): TraceOutcome {
  const { traceHz, traceDb } = given
  const unit = unitOfChoice(given.traceUnit)
  if (traceHz === undefined || traceDb === undefined || unit === undefined || given.limit === undefined)
    return 'incomplete'
  if (traceHz.length !== traceDb.length)
    return issue(
      'traceDb',
      'length-mismatch',
      `${countOf(traceDb.length, 'level')} for ${countOf(traceHz.length, 'frequency', 'frequencies')}; give one for each, separated by “;”.`,
    )
  const limit = limitFor(given, unit)
  if (limit === 'incomplete' || 'issues' in limit) return limit
  const conflict = conflictOf(unit, limit.unit, given.impedanceOhm)
  if (conflict) return conflict
  const spectrum = inOrder(Float64Array.from(traceHz), Float64Array.from(traceDb))
  if (spectrum === undefined) return 'incomplete'
  const detector = given.detector as Detector | undefined
  const wrongDetector = detectorIssue(limit, detector)
  if (wrongDetector) return wrongDetector
  const isPublished = given.limit !== OWN_LIMIT
  const isField = limit.unit === 'dBµV/m'
  return {
    spectrum: { ...spectrum, unit },
    reading: {
      limit,
      marginDb: given.marginDb,
      impedanceOhm: given.impedanceOhm ?? (unit === 'dBm' || limit.unit === 'dBm' ? RECEIVER_OHM : undefined),
      bandwidthHz: given.bandwidthHz,
      emission: given.emission as Emission | undefined,
    },
    lacks: [
      ...(limit.bandwidths.length > 0 && given.bandwidthHz === undefined ? (['bandwidthHz'] as const) : []),
      ...(isPublished && limit.side === 'emission' && detector === undefined ? (['detector'] as const) : []),
      ...(isField && given.clamp !== 'dominates' ? (['clamp'] as const) : []),
    ],
    isStrict:
      detector !== undefined && limit.reads !== undefined && limit.side === 'emission' && detector !== limit.reads,
    isOtherCable: isField && given.clamp === 'not',
  }
}

const countOf = (count: number, word: string, many = `${word}s`): string => `${count} ${count === 1 ? word : many}`

function limitFor(
  given: TraceGiven,
  unit: LevelUnit,
): TraceLimit | 'incomplete' | { readonly issues: readonly Issue[] } {
  const published = methodLineById(given.limit ?? '')
  if (published) return limitOf(published, given.nominalV)
  const { ownHz, ownDb } = given
  if (ownHz === undefined || ownDb === undefined) return 'incomplete'
  if (ownHz.length !== ownDb.length)
    return issue(
      'ownDb',
      'length-mismatch',
      `${countOf(ownDb.length, 'level')} for ${countOf(ownHz.length, 'corner')}; give one for each, separated by “;”.`,
    )
  const segments = segmentsOf(ownHz.map((hz, i) => ({ hz, db: ownDb[i] as number })))
  if (segments.length === 0)
    return issue('ownHz', 'too-few', 'A line has at least two corners at two frequencies, such as 150k;30M.')
  return {
    name: 'your limit',
    unit: unitOfChoice(given.ownUnit) ?? unit,
    side: given.ownSide === 'susceptibility' ? 'susceptibility' : 'emission',
    segments,
    relaxedDb: 0,
    bandwidths: given.ownBandwidthHz === undefined ? [] : [{ fromHz: 0, bandwidthHz: given.ownBandwidthHz }],
    reads: given.ownDetector as Detector | undefined,
  }
}

function conflictOf(
  unit: LevelUnit,
  limitUnit: LevelUnit,
  ohm: number | undefined,
): { readonly issues: readonly Issue[] } | undefined {
  const isPower = unit === 'dBm' || limitUnit === 'dBm'
  const conflict = levelConflict(
    { db: 0, unit },
    { db: 0, unit: limitUnit },
    ohm ?? (isPower ? RECEIVER_OHM : undefined),
  )
  if (conflict === undefined) return undefined
  return conflict === 'field-and-voltage'
    ? issue(
        'traceUnit',
        conflict,
        `The trace is in ${unit} and the limit in ${limitUnit}: no impedance turns one into the other. A receiver reading becomes a field with the antenna factor: enter the trace in dBµV/m.`,
      )
    : issue(
        'impedanceOhm',
        conflict,
        `The trace is in ${unit} and the limit in ${limitUnit}: enter the impedance they meet in; dBµV = dBµA + 20·log10(R).`,
      )
}

function detectorIssue(
  { reads, side }: TraceLimit,
  detector: Detector | undefined,
): { readonly issues: readonly Issue[] } | undefined {
  if (reads === undefined || detector === undefined || side !== 'emission') return undefined
  if (READS_MOST.indexOf(detector) <= READS_MOST.indexOf(reads)) return undefined
  return issue(
    'detector',
    'detector-other',
    `The limit is written for ${reads} and ${detector} can read less of the same emission: measure it again with ${reads}, or with peak.`,
  )
}
