/** The pictures an answer can hold; the screens have one part for each kind. */
import type { LimitSide } from './quantity/format.ts'
import type { Quantity } from './quantity/quantity.ts'
import type { Cell, Topology, Verdict } from './terms.ts'

export type StripRow = {
  readonly topology: Topology
  readonly label: string
  readonly best: boolean
  /**
   * open: leastF <= mostF; shut: they cross; half: only one side known; none: no capacitor or no bound; harmed: the
   * bounds leave room, but the inductor harms the signal.
   */
  readonly state: 'open' | 'shut' | 'half' | 'none' | 'harmed'
  readonly leastF?: number
  readonly mostF?: number
  /** where the most would stand if nothing were taken of it (suppressor, existing): between the two lies their share */
  readonly takenToF?: number
  /** the ceiling itself, who takes what of it, and what is left, in one sentence */
  readonly takenWhy?: string
  readonly permittedF?: number
  /** what is between the limits is with care as well: carried by a resonance, or not proved */
  readonly isWithCare?: true
  /** Capacitance intervals where the need is lost again (resonance). */
  readonly holes: readonly (readonly [number, number])[]
  readonly proposedF?: number
  readonly verdict: Verdict
  readonly note: string
}

export type StripMark = { readonly kind: 'failed' | 'cleared' | 'harmed'; readonly atF: number; readonly label: string }

/** A value one tap puts into a field of the check: as text, the way it would be typed; '' empties the field. */
export type Use = { readonly key: string; readonly text: string }

export type LadderRung = {
  readonly id: string
  readonly label: string
  readonly side: 'comes' | 'holds'
  readonly minV: number
  readonly maxV: number
  /** id of the rung on the other rail that this one exceeds */
  readonly exceeds?: string
  /** what a tap on it enters */
  readonly use?: readonly Use[]
}

export type PlotCurve = {
  readonly id: string
  readonly label: string
  readonly style: 'solid' | 'dashed'
  readonly x: Float64Array
  readonly y: Float64Array
}

export type Picture =
  | {
      readonly is: 'strip'
      readonly title: string
      readonly minF: number
      readonly maxF: number
      readonly rows: readonly StripRow[]
      readonly marks: readonly StripMark[]
      readonly chosenF?: number
    }
  | {
      readonly is: 'ladder'
      readonly title: string
      readonly rungs: readonly LadderRung[]
      readonly faults: readonly string[]
    }
  | {
      readonly is: 'plot'
      readonly title: string
      readonly xLabel: string
      readonly xQuantity: Quantity
      readonly xScale: 'log' | 'linear'
      readonly yLabel: string
      readonly yQuantity: Quantity
      /** curves are drawn up to here: above it figures are mathematics, not hardware */
      readonly yCeiling?: number
      readonly curves: readonly PlotCurve[]
      readonly bands: readonly { readonly label: string; readonly from: number; readonly to: number }[]
      /** `least`: the curve must pass above it at x; `most`: below it. */
      readonly limits: readonly {
        readonly label: string
        readonly x: number
        readonly y: number
        readonly must: 'least' | 'most'
      }[]
      readonly flags: readonly string[]
    }
  | {
      readonly is: 'table'
      readonly title: string
      readonly columns: readonly {
        readonly key: string
        readonly label: string
        readonly quantity?: Quantity
        /** its figures are limits: printed so that who keeps them keeps the limit */
        readonly side?: LimitSide
      }[]
      readonly rows: readonly {
        readonly id: string
        readonly strong?: boolean
        /** what a tap on the row enters */
        readonly use?: readonly Use[]
        readonly cells: readonly Cell[]
      }[]
    }
