/** From the waveform, level and overrides entered to the pulse that is run, or the reason why it cannot be. */
import { CS116_ENVELOPE } from '../../reference/waveforms/military.ts'
import { type Repeats, type ShapeSpec, type Waveform, waveformById } from '../../reference/waveforms.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Issue, Source } from '../types.ts'
import { fitPulse, LEAST_RATIO } from './fit.ts'
import { type Ring, type Shape, shapeOf } from './shape.ts'

export type PulseGiven = {
  readonly waveform?: string | undefined
  readonly level?: number | undefined
  readonly openCircuitV?: number | undefined
  readonly sourceOhm?: number | undefined
  readonly peakSec?: number | undefined
  readonly halfSec?: number | undefined
  readonly ringHz?: number | undefined
  readonly decayQ?: number | undefined
}

export type Pulse = {
  readonly row: Waveform
  readonly shape: Shape
  readonly isRing: boolean
  readonly ring: Ring | undefined
  /** open-circuit volts (form `voltage`) or what drives the short-circuit current (form `current`) */
  readonly openCircuitV: number
  readonly shortCircuitA: number
  readonly sourceOhm: number
  /** the impedance was entered, not taken from the row */
  readonly ohmEntered: boolean
  readonly repeats: readonly Repeats[]
  /** what the shape is and is not */
  readonly note: string
  /** figures of the row taken because none were entered, as sentences */
  readonly assumed: readonly string[]
  readonly sources: readonly [Source, ...Source[]]
}

export type PulseAnswer =
  | { readonly is: 'pulse'; readonly pulse: Pulse }
  | { readonly is: 'missing'; readonly words: readonly string[] }
  | { readonly is: 'refused'; readonly issue: Issue }

const refused = (key: string, code: string, message: string): PulseAnswer => ({
  is: 'refused',
  issue: { key, code, message },
})

/** The pulse to run. Volts, ohms and seconds as entered; the level decides both volts and ohms unless overridden. */
export function pulseOf(given: PulseGiven): PulseAnswer {
  const row = given.waveform === undefined ? undefined : waveformById(given.waveform)
  if (!row) return { is: 'missing', words: ['the waveform'] }
  const level = levelOf(row, given.level)
  if (level && 'is' in level) return level
  const shaped = specOf(row, given)
  if ('is' in shaped) return shaped
  const ring = ringOf(row, given)
  if (ring && 'is' in ring) return ring
  const openCircuitV =
    given.openCircuitV ?? level?.openCircuitV ?? row.only?.openCircuitV ?? ringVolts(row, ring, given)
  const sourceOhm = given.sourceOhm ?? row.sourceOhm?.ohm
  const words = [
    ...(openCircuitV === undefined
      ? [row.levels.length > 0 ? 'the level or the open-circuit volts' : 'the open-circuit volts']
      : []),
    ...(sourceOhm === undefined ? ['the source impedance'] : []),
  ]
  if (openCircuitV === undefined || sourceOhm === undefined) return { is: 'missing', words }
  const levelA = given.openCircuitV === undefined ? level?.shortCircuitA : undefined
  const perVolt =
    row.id === 'iec-esd' ? (row.levels[0]?.shortCircuitA ?? 0) / (row.levels[0]?.openCircuitV ?? 1) : 1 / sourceOhm
  const sources: readonly [Source, ...Source[]] = [
    row.shapeSource,
    ...(level ? [level.source] : []),
    ...(given.openCircuitV === undefined && row.only ? [row.only.source] : []),
    ...(given.sourceOhm === undefined && row.sourceOhm ? [row.sourceOhm.source] : []),
    ...(ring && given.decayQ === undefined && row.ring ? [row.ring.source] : []),
  ]
  return {
    is: 'pulse',
    pulse: {
      row,
      shape: shapeOf(shaped.spec, ring),
      isRing: ring !== undefined,
      ring,
      openCircuitV,
      shortCircuitA: row.id === 'iec-esd' ? (levelA ?? openCircuitV * perVolt) : openCircuitV / sourceOhm,
      sourceOhm,
      ohmEntered: given.sourceOhm !== undefined,
      repeats: row.repeats,
      note: row.note,
      assumed: assumedOf(row, given, ring),
      sources,
    },
  }
}

function levelOf(row: Waveform, level: number | undefined) {
  if (level === undefined) return undefined
  if (row.levels.length === 0)
    return refused('level', 'no-level', row.noLevelWhy ?? 'This waveform has no level: enter volts and impedance.')
  const found = row.levels.find((each) => each.level === level)
  if (found) return found
  const offered = row.levels.map((each) => each.level)
  return refused(
    'level',
    'unknown-level',
    `${row.name} has the levels ${offered.join(', ')}; enter one of them, or the open-circuit volts instead.`,
  )
}

function specOf(row: Waveform, { peakSec, halfSec }: PulseGiven): { spec: ShapeSpec } | PulseAnswer {
  if (row.shape) return { spec: row.shape }
  const words = [
    ...(peakSec === undefined ? ['the time to peak'] : []),
    ...(halfSec === undefined ? ['the time to half value'] : []),
  ]
  if (peakSec === undefined || halfSec === undefined) return { is: 'missing', words }
  if (halfSec < LEAST_RATIO * peakSec)
    return refused(
      'halfSec',
      'too-short',
      `Half value at ${formatQuantity(halfSec, 'time')} must come after the peak at ${formatQuantity(peakSec, 'time')}: at least 1.1 times as late.`,
    )
  if (halfSec > 1e6 * peakSec)
    return refused('peakSec', 'too-steep', 'The peak may come at most a million times sooner than half value.')
  return { spec: fitPulse({ peakSec, halfSec }) }
}

function ringOf(row: Waveform, { ringHz, decayQ }: PulseGiven): Ring | PulseAnswer | undefined {
  if (!row.ring) return undefined
  const hz = ringHz ?? row.ring.hz
  if (row.id === 'cs116' && (hz < CS116_ENVELOPE.lowHz || hz > CS116_ENVELOPE.highHz))
    return refused(
      'ringHz',
      'outside-envelope',
      'The CS116 envelope runs from 10 kHz to 100 MHz; enter a frequency inside it.',
    )
  return { hz, q: decayQ ?? row.ring.q }
}

/** CS116: amperes of the envelope at the ring frequency, times the loop resistance. */
function ringVolts(row: Waveform, ring: Ring | undefined, { sourceOhm }: PulseGiven): number | undefined {
  const ohm = sourceOhm ?? row.sourceOhm?.ohm
  return row.id === 'cs116' && ring && ohm !== undefined ? cs116PeakA(ring.hz) * ohm : undefined
}

/** Peak current of CS116 in A: 0.1 A at 10 kHz rising with f to 10 A at 1 MHz, flat to 30 MHz, falling with 1/f. */
export function cs116PeakA(hz: number): number {
  const { flatFromHz, flatToHz, flatA } = CS116_ENVELOPE
  return flatA * Math.min(1, hz / flatFromHz, flatToHz / hz)
}

function assumedOf(row: Waveform, given: PulseGiven, ring: Ring | undefined): string[] {
  const words: string[] = []
  if (given.sourceOhm === undefined && row.sourceOhm)
    words.push(`Source impedance taken as ${formatQuantity(row.sourceOhm.ohm, 'resistance')}: ${row.sourceOhm.why}.`)
  if (ring && row.ring) {
    if (given.ringHz === undefined) words.push(`Ring frequency taken as ${formatQuantity(ring.hz, 'frequency')}.`)
    if (given.decayQ === undefined) words.push(`Decay taken as Q = ${ring.q}, the ${row.ring.why}.`)
  }
  return words
}
