/** What a surge waveform is: its shape, how it is driven, and the levels printed for it. */
import type { SourceId } from '../sources.ts'
import type { Cited } from '../standing.ts'

export type WaveCitation = Cited<SourceId>

export const WAVEFORM_IDS = [
  'wf1',
  'wf2',
  'wf3',
  'wf4',
  'wf5a',
  'wf5b',
  'wf6',
  'iec-esd',
  'iec-burst',
  'iec-1.2-50',
  'iec-8-20',
  'cs115',
  'cs116',
  'rs105',
  'custom',
] as const
export type WaveformId = (typeof WAVEFORM_IDS)[number]

/** A shape over time, peak 1. Times in s, rates in 1/s. `damped-sine` takes its frequency and Q from the run. */
export type ShapeSpec =
  /** k·(e^(−a·t) − e^(−b·t)) */
  | { readonly form: 'double-exponential'; readonly k: number; readonly aPerSec: number; readonly bPerSec: number }
  /** k·(1 − e^(−t/front))·e^(−t/tail) */
  | { readonly form: 'front-tail'; readonly k: number; readonly frontSec: number; readonly tailSec: number }
  /** k·(t/unit)³·e^(−t/tail) */
  | { readonly form: 'cubic'; readonly k: number; readonly unitSec: number; readonly tailSec: number }
  /** (x·e^(1−x))^n with x = t/peak */
  | { readonly form: 'gamma'; readonly peakSec: number; readonly power: number }
  /** N·sin(2π·f·t)·e^(−π·f·t/Q) */
  | { readonly form: 'damped-sine' }
  /** Σ w·x/(1+x)·e^(−t/tail), x = (t/rise)^n */
  | {
      readonly form: 'steep-sum'
      readonly power: number
      readonly terms: readonly { readonly weight: number; readonly riseSec: number; readonly tailSec: number }[]
    }
  /** straight between its points, zero after the last */
  | { readonly form: 'lines'; readonly points: readonly (readonly [sec: number, value: number])[] }

/** One level as printed: open-circuit volts and short-circuit amperes. */
export type WaveLevel = {
  readonly level: number
  readonly openCircuitV: number
  readonly shortCircuitA: number
  readonly source: WaveCitation
}

/** So many, so far apart: of pulses, or of trains of the next inner row. */
export type Gap = { readonly count: number; readonly spacingSec: number }

/**
 * Repetition of the pulse. `gaps`: innermost first, each at the closest spacing the document allows.
 * `laterDriveShare`: volts or amperes of the generator at every later pulse against the first; what that leaves of the
 * power behind a clamp is computed, not assumed. `of`: the test it belongs to, on a pin or on a whole cable bundle; only
 * those of the test that is run are counted, the others are mentioned.
 */
export type Repeats = {
  readonly id: string
  readonly words: string
  readonly gaps: readonly [Gap, ...Gap[]]
  readonly laterDriveShare: number
  readonly of: 'pin' | 'bundle'
  readonly source: WaveCitation
}

/** Peak amperes of a damped sine over its frequency: rising with f, flat, falling with 1/f. */
export type RingEnvelope = {
  readonly lowHz: number
  readonly flatFromHz: number
  readonly flatToHz: number
  readonly highHz: number
  readonly flatA: number
  readonly source: WaveCitation
}

export type RingRow = {
  readonly hz: number
  readonly q: number
  readonly why: string
  readonly source: WaveCitation
  /** frequencies the document allows about the one that is meant, as a share of it */
  readonly spread?: { readonly frac: number; readonly source: WaveCitation }
  /** frequencies and amplitudes from end to end, for a test without one frequency */
  readonly envelope?: RingEnvelope
}

export type Waveform = {
  readonly id: WaveformId
  readonly name: string
  /** what the standard prescribes: an open-circuit voltage or a short-circuit current */
  readonly form: 'voltage' | 'current'
  readonly shape: ShapeSpec | undefined
  readonly shapeSource: WaveCitation
  /** nominal time to peak and to half value (for wf2: to the zero crossing), as printed */
  readonly nominal?: { readonly peakSec: number; readonly halfSec: number; readonly source: WaveCitation }
  readonly note: string
  readonly sourceOhm?: { readonly ohm: number; readonly why: string; readonly source: WaveCitation }
  readonly levels: readonly WaveLevel[]
  /** why there is no level to choose, and what to enter instead */
  readonly noLevelWhy?: string
  /** amplitude where the standard has just one */
  readonly only?: { readonly openCircuitV: number; readonly source: WaveCitation }
  readonly ring?: RingRow
  /** a discharge: amperes into a short per volt of charge; the open volts cannot exceed the charge */
  readonly amperePerVolt?: number
  /** a test on whole cable bundles: no contact is sized from it unless its share of the current is known */
  readonly isBundleOnly?: true
  /** levels of the cable-bundle test: limit in volts, amperes of the whole bundle */
  readonly bundleLevels?: readonly WaveLevel[]
  readonly repeats: readonly Repeats[]
}
