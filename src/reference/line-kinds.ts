/** Placeholder head replaced by the full table: kinds of line, what each budgets, permits and stands. */
import type { Cited } from './standing.ts'

/** What decides how much capacitance the signal can stand. */
export type LoadingRule =
  /** slowest permitted edge by root-sum-square with the driver's own edge */
  | {
      readonly rule: 'edge-rss'
      readonly driverEdgeSec: number
      readonly slowestEdgeSec: number
      readonly slowestDriverSec: number
    }
  /** the capacitance's own edge within a share of the unit interval */
  | { readonly rule: 'own-edge'; readonly shareOfInterval: number; readonly nrzEye: boolean }
  /** I2C: 30–70 % rise within a limit, through the pull-up */
  | { readonly rule: 'i2c-rise'; readonly riseSec: number }
  /** CAN: recessive decay 2.0 -> 0.5 V within a share of the unit interval */
  | { readonly rule: 'can-recessive'; readonly shareOfInterval: number }
  /** RS-232: ±3 V band crossed within a share of the unit interval at the driver's current */
  | {
      readonly rule: 'slew'
      readonly bandV: number
      readonly driverA: number
      readonly shareOfInterval: number
      readonly limitVPerSec: number
    }
  /** |Z| of the added capacitance stays above a terminal impedance up to a frequency */
  | { readonly rule: 'terminal-impedance'; readonly leastOhm: number; readonly fromHz: number; readonly atHz: number }
  /** return loss mask in a line matched both ways */
  | { readonly rule: 'return-loss'; readonly mask: readonly MaskSegment[]; readonly cornerOhm?: number }
  /** loss at the highest useful frequency */
  | { readonly rule: 'band-loss'; readonly mostDb: number }
  /** phase at the highest carrier */
  | { readonly rule: 'phase'; readonly mostDeg: number }
  /** 10–90 % edge within a fixed time */
  | { readonly rule: 'fixed-edge'; readonly mostSec: number }
  /** no criterion that can be shipped; `why` says so */
  | { readonly rule: 'none'; readonly why: string }

/** Least return loss = atDb − slopeDbPerDecade·log10(f/refHz) between two frequencies. */
export type MaskSegment = {
  readonly fromHz: number
  readonly toHz: number
  readonly atDb: number
  readonly refHz: number
  readonly slopeDbPerDecade: number
}

/** A published per-node or per-bus figure: above it = marginal, document named. */
export type Permitted = {
  readonly id: string
  readonly label: string
  readonly farads: number
  /** `dm`: differential (or the single line's) total; `leg`: each leg to chassis */
  readonly counts: 'dm' | 'leg'
  readonly source: Cited
}

export type LineFamily =
  | 'power-dc'
  | 'power-ac'
  | 'ground'
  | 'discrete'
  | 'sensor'
  | 'carrier'
  | 'audio'
  | 'drive'
  | 'data-pair'
  | 'data-single'
  | 'video'
  | 'coax'
  | 'barred'

export type LineKind = {
  readonly id: string
  readonly name: string
  readonly family: LineFamily
  /** words a searcher would type */
  readonly aliases: readonly string[]
  readonly isPair: boolean
  /** no trial part may ever be fitted: the reason */
  readonly barredWhy?: string
  readonly signalOhm?: { readonly ohm: number; readonly why: string; readonly source: Cited }
  readonly z0Ohm?: number
  /** bit rate the kind starts with, if the user gives none */
  readonly bitRateHz?: number
  /** highest useful frequency of the signal */
  readonly usefulHz?: { readonly hz: number; readonly source: Cited }
  readonly loading: LoadingRule
  readonly loadingSource: Cited
  readonly permitted: readonly Permitted[]
  /** highest steady voltage to chassis, peak */
  readonly steadyPeakV?: number
  readonly notes: readonly string[]
  readonly sources: readonly [Cited, ...Cited[]]
}

export const LINE_KINDS: readonly LineKind[] = []
export type LineKindId = string
