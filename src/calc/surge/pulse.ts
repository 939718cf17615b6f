/** From the waveform, level and overrides entered to the pulse that is run, or to what it still waits for. */
import {
  type RingEnvelope,
  type ShapeSpec,
  type Waveform,
  type WaveLevel,
  waveformById,
} from '../../reference/waveforms.ts'
import type { Source } from '../types.ts'
import { fitPulse, LEAST_RATIO } from './fit.ts'
import { type Ring, type Shape, shapeOf } from './shape.ts'
import { type Refusing, refuse, type Waiting, type Wanted } from './wanted.ts'

export type PulseAsked = {
  readonly waveform: string | undefined
  readonly level: number | undefined
  readonly bundleLevel: number | undefined
  readonly bundleShareFrac: number | undefined
  readonly openCircuitV: number | undefined
  readonly sourceOhm: number | undefined
  readonly peakSec: number | undefined
  readonly halfSec: number | undefined
  readonly ringHz: number | undefined
  readonly decayQ: number | undefined
}

/** What the pulse took from its row because nothing was entered. */
export type TakenFromRow = { readonly ohm: boolean; readonly hz: boolean; readonly q: boolean }

export type Pulse = {
  readonly row: Waveform
  readonly shape: Shape
  readonly ring: Ring | undefined
  /** frequencies the document allows for this ring, in Hz; low = high: just that one */
  readonly ringRangeHz: readonly [low: number, high: number] | undefined
  /** open-circuit volts (form `voltage`) or what drives the short-circuit current (form `current`) */
  readonly openCircuitV: number
  readonly shortCircuitA: number
  readonly sourceOhm: number
  /** the whole bundle's amperes and the share of one contact, where it is sized from a bundle test */
  readonly bundle: { readonly bundleA: number; readonly shareFrac: number } | undefined
  readonly taken: TakenFromRow
  readonly sources: readonly [Source, ...Source[]]
}

export type PulseAnswer = { readonly is: 'pulse'; readonly pulse: Pulse } | Waiting | Refusing

type Drive = {
  readonly openCircuitV: number
  readonly shortCircuitA: number
  readonly sourceOhm: number
  readonly bundle?: Pulse['bundle']
  readonly sources: readonly Source[]
}

/** The pulse to run. Volts, ohms and seconds as entered; the level decides both volts and ohms unless overridden. */
export function pulseOf(asked: PulseAsked): PulseAnswer {
  const row = asked.waveform === undefined ? undefined : waveformById(asked.waveform)
  if (!row) return { is: 'missing', wanted: [['waveform']] }
  const shaped = specOf(row, asked)
  const ring = ringOf(row, asked)
  const drive = driveOf(row, asked, ring && 'is' in ring ? undefined : ring)
  if ('is' in drive && drive.is === 'refused') return drive
  if ('is' in shaped && shaped.is === 'refused') return shaped
  if (ring && 'is' in ring) return ring
  if ('is' in shaped || 'is' in drive)
    return {
      is: 'missing',
      wanted: [...('is' in shaped ? shaped.wanted : []), ...('is' in drive ? drive.wanted : [])],
    }
  return {
    is: 'pulse',
    pulse: {
      row,
      shape: shapeOf(shaped.spec, ring),
      ring,
      ringRangeHz: ring && rangeOf(row, asked, ring),
      openCircuitV: drive.openCircuitV,
      shortCircuitA: drive.shortCircuitA,
      sourceOhm: drive.sourceOhm,
      bundle: drive.bundle,
      taken: {
        ohm: asked.sourceOhm === undefined && row.sourceOhm !== undefined && drive.bundle === undefined,
        hz: ring !== undefined && asked.ringHz === undefined,
        q: ring !== undefined && asked.decayQ === undefined,
      },
      sources: [
        row.shapeSource,
        ...drive.sources,
        ...(ring && asked.decayQ === undefined && row.ring ? [row.ring.source] : []),
      ],
    },
  }
}

/** The same pulse ringing at another frequency; amperes follow the envelope where there is one. Hz. */
export function atRingHz(pulse: Pulse, hz: number): Pulse {
  const { row, ring } = pulse
  if (!ring || !row.shape || hz === ring.hz) return pulse
  const envelope = row.ring?.envelope
  const times = envelope ? envelopeA(envelope, hz) / envelopeA(envelope, ring.hz) : 1
  const moved = { ...ring, hz }
  return {
    ...pulse,
    ring: moved,
    shape: shapeOf(row.shape, moved),
    openCircuitV: pulse.openCircuitV * times,
    shortCircuitA: pulse.shortCircuitA * times,
  }
}

/** Peak current in A of an envelope: rising with f, flat, falling with 1/f. Hz. */
export const envelopeA = ({ flatA, flatFromHz, flatToHz }: RingEnvelope, hz: number): number =>
  flatA * Math.min(1, hz / flatFromHz, flatToHz / hz)

function driveOf(row: Waveform, asked: PulseAsked, ring: Ring | undefined): Drive | Waiting | Refusing {
  if (asked.bundleLevel !== undefined) return bundleDrive(row, asked, asked.bundleLevel)
  const level = levelOf(row, asked.level)
  if (level && 'is' in level) return level
  const sourceOhm = asked.sourceOhm ?? row.sourceOhm?.ohm
  const envelope = row.ring?.envelope
  const rung = envelope && ring && sourceOhm !== undefined ? envelopeA(envelope, ring.hz) * sourceOhm : undefined
  const openCircuitV = asked.openCircuitV ?? level?.openCircuitV ?? row.only?.openCircuitV ?? rung
  const wanted: Wanted[] = [
    ...(openCircuitV === undefined
      ? [row.levels.length > 0 ? (['level', 'openCircuitV'] as const) : (['openCircuitV'] as const)]
      : []),
    ...(sourceOhm === undefined ? [['sourceOhm'] as const] : []),
  ]
  if (openCircuitV === undefined || sourceOhm === undefined) return { is: 'missing', wanted }
  const levelA = asked.openCircuitV === undefined ? level?.shortCircuitA : undefined
  return {
    openCircuitV,
    shortCircuitA:
      row.amperePerVolt === undefined ? openCircuitV / sourceOhm : (levelA ?? openCircuitV * row.amperePerVolt),
    sourceOhm,
    sources: [
      ...(level ? [level.source] : []),
      ...(asked.openCircuitV === undefined && row.only ? [row.only.source] : []),
      ...(asked.sourceOhm === undefined && row.sourceOhm ? [row.sourceOhm.source] : []),
    ],
  }
}

/**
 * One contact of a cable bundle: its share of the bundle's amperes, driven by the volts that limit the test.
 * I = share·I_bundle, R = V_limit/I. Source: a test holds either volts or amperes and limits the other (memory).
 */
function bundleDrive(row: Waveform, asked: PulseAsked, wantedLevel: number): Drive | Waiting | Refusing {
  if (asked.level !== undefined) return refuse({ code: 'both-levels', key: 'bundleLevel' })
  const level = row.bundleLevels?.find((each) => each.level === wantedLevel)
  if (!level) return refuse({ code: 'no-bundle-level', key: 'bundleLevel', row })
  const { bundleShareFrac: shareFrac } = asked
  if (shareFrac === undefined) return { is: 'missing', wanted: [['bundleShareFrac']] }
  const openCircuitV = asked.openCircuitV ?? level.openCircuitV
  const shortCircuitA = shareFrac * level.shortCircuitA
  const sourceOhm = asked.sourceOhm ?? openCircuitV / shortCircuitA
  return {
    openCircuitV,
    shortCircuitA: openCircuitV / sourceOhm,
    sourceOhm,
    bundle: { bundleA: level.shortCircuitA, shareFrac },
    sources: [level.source],
  }
}

function levelOf(row: Waveform, level: number | undefined): WaveLevel | Refusing | undefined {
  if (level === undefined) return undefined
  if (row.levels.length === 0) return refuse({ code: 'no-level', key: 'level', row })
  const found = row.levels.find((each) => each.level === level)
  return found ?? refuse({ code: 'unknown-level', key: 'level', row, levels: row.levels.map((each) => each.level) })
}

function specOf(row: Waveform, { peakSec, halfSec }: PulseAsked): { spec: ShapeSpec } | Waiting | Refusing {
  if (row.shape) return { spec: row.shape }
  if (peakSec === undefined || halfSec === undefined)
    return {
      is: 'missing',
      wanted: [
        ...(peakSec === undefined ? [['peakSec'] as const] : []),
        ...(halfSec === undefined ? [['halfSec'] as const] : []),
      ],
    }
  if (halfSec < LEAST_RATIO * peakSec) return refuse({ code: 'half-too-early', key: 'halfSec', halfSec, peakSec })
  if (halfSec > 1e6 * peakSec) return refuse({ code: 'too-steep', key: 'peakSec' })
  return { spec: fitPulse({ peakSec, halfSec }) }
}

function ringOf(row: Waveform, { ringHz, decayQ }: PulseAsked): Ring | Refusing | undefined {
  if (!row.ring) return undefined
  const hz = ringHz ?? row.ring.hz
  const { envelope } = row.ring
  if (envelope && (hz < envelope.lowHz || hz > envelope.highHz))
    return refuse({ code: 'outside-envelope', key: 'ringHz', lowHz: envelope.lowHz, highHz: envelope.highHz })
  return { hz, q: decayQ ?? row.ring.q }
}

/** A frequency entered stands within the document's tolerance; none entered, where the document runs over a band: all of it. */
function rangeOf(row: Waveform, { ringHz }: PulseAsked, { hz }: Ring): readonly [number, number] {
  const { envelope, spread } = row.ring ?? {}
  if (envelope && ringHz === undefined) return [envelope.lowHz, envelope.highHz]
  const frac = spread?.frac ?? 0
  return [hz * (1 - frac), hz * (1 + frac)]
}
