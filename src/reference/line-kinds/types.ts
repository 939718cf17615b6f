/** What a kind of line is: its signal, what the standards budget and permit, and what decides how much it can stand. */
import type { SourceId } from '../sources.ts'
import type { Cited } from '../standing.ts'

export type Citation = Cited<SourceId>

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
  /** I²C: 30–70 % rise within a limit, through the pull-up */
  | { readonly rule: 'i2c-rise'; readonly riseSec: number }
  /** CAN: recessive decay 2.0 → 0.5 V within a share of the unit interval */
  | { readonly rule: 'can-recessive'; readonly shareOfInterval: number }
  /** RS-232: ±3 V band crossed within a share of the unit interval, never longer than `mostSec`, at the driver's current */
  | {
      readonly rule: 'slew'
      readonly bandV: number
      readonly driverA: number
      readonly shareOfInterval: number
      readonly mostSec: number
      readonly limitVPerSec: number
    }
  /** |Z| of the added capacitance stays above a terminal impedance up to a frequency */
  | { readonly rule: 'terminal-impedance'; readonly leastOhm: number; readonly fromHz: number; readonly atHz: number }
  /**
   * return loss mask of a shunt capacitance in a line terminated in `referenceOhm`. `overOhm`: ends of the cable range the
   * document itself asks it for, so that it has to hold there too; `cornerOhm`: worst impedance it is tested with elsewhere
   */
  | {
      readonly rule: 'return-loss'
      readonly mask: readonly [MaskSegment, ...MaskSegment[]]
      readonly referenceOhm: number
      readonly overOhm?: readonly number[]
      readonly cornerOhm?: number
    }
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
  /** who allows it, and what one figure is for: "practice allows 100 pF a node" */
  readonly allows: { readonly by: string; readonly of: string }
  readonly farads: number
  /** `dm`: differential (or the single line's) total; `leg`: each leg to chassis */
  readonly counts: 'dm' | 'leg'
  /** of a bus: what one node may put on it in all, where the figure is one of a node */
  readonly nodeF?: number
  readonly source: Citation
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
  | 'other'

/** Resistance the signal sees at the capacitor; where a range is known, `ohm` is its top (the least room). */
export type SignalOhm = {
  readonly ohm: number
  readonly leastOhm?: number
  readonly mostOhm?: number
  readonly why: string
  readonly source: Citation
}

/** Values for an in-line trial, small to large; `leg`: each leg to chassis, `dm`: across the pair. */
export type TrialLadder = {
  readonly lowF: number
  readonly mediumF: number
  readonly highF: number
  readonly counts: 'dm' | 'leg'
}

/** Voltages of a power line for the checks that need them; frequency 0 = DC. */
export type Supply = {
  readonly nominalRmsV: number
  readonly nominalHz: number
  readonly worstRmsV: number
  readonly worstHz: number
  readonly source: Citation
}

/** Lowest and highest instantaneous volts a working line reaches by itself. */
export type OwnSwing = readonly [lowV: number, highV: number]

/** What the line itself puts on a contact: a suppressor must stand between these without conducting. */
export type OwnPeaks = {
  /** each leg to chassis */
  readonly leg: OwnSwing
  /** between the legs of a pair */
  readonly pair?: OwnSwing
  /** it holds these volts while a surge comes: a supply, or a contact fed from one */
  readonly isPowered?: true
  /** kind of supply whose long surges reach this line */
  readonly surgesOf?: string
  /** several systems share the kind and the highest is taken: which one may be lower */
  readonly milderWhy?: string
  readonly source: Citation
}

/** A transformer behind the contacts; its insulation stands what both legs carry alike. */
export type LineTransformer = { readonly insulationPeakV?: number; readonly source: Citation }

export type LineKind = {
  readonly id: string
  readonly name: string
  readonly family: LineFamily
  /** words a searcher would type */
  readonly aliases: readonly string[]
  readonly isPair: boolean
  /** no trial and no filter advice ever: the triage stops with this reason */
  readonly barredWhy?: string
  /** never a trial part in it, because it would be live; figures and a permanent design remain possible */
  readonly noTrialWhy?: string
  readonly signalOhm?: SignalOhm
  readonly z0Ohm?: number
  /** the only bit rate this kind has; absent = the rate is asked for where the rule needs one */
  readonly bitRateHz?: number
  /** highest useful frequency of the signal (0.35 / fastest edge for digital lines) */
  readonly usefulHz?: { readonly hz: number; readonly source: Citation }
  readonly loading: LoadingRule
  readonly loadingSource: Citation
  readonly permitted: readonly Permitted[]
  readonly trial?: TrialLadder
  readonly supply?: Supply
  readonly ownPeaks?: OwnPeaks
  readonly transformer?: LineTransformer
  /** highest steady voltage, peak (to chassis, or across the pair for pairs) */
  readonly steadyPeakV?: number
  /** highest voltage of the normal transient envelope, peak */
  readonly transientPeakV?: number
  readonly notes: readonly string[]
  readonly sources: readonly [Citation, ...Citation[]]
}
