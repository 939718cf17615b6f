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

/**
 * Repetition of the pulse. `laterPowerShare`: power of every later pulse against the first. `counted`: belongs to the
 * test this row describes; otherwise it is another test with the same shape and is only mentioned.
 */
export type Repeats = {
  readonly id: string
  readonly words: string
  readonly count: number
  readonly spacingSec: number
  readonly laterPowerShare: number
  readonly counted: boolean
  readonly source: WaveCitation
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
  readonly ring?: { readonly hz: number; readonly q: number; readonly why: string; readonly source: WaveCitation }
  readonly repeats: readonly Repeats[]
}
