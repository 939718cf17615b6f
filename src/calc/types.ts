/**
 * The vocabulary every check speaks: a Line of typed facts in, bounds, rungs, figures and pictures out.
 * Plain numbers are SI base units; prefixes exist only in quantity/parse.ts and quantity/format.ts.
 */
import type { LineKindId } from '../reference/line-kinds.ts'
import type { SourceId } from '../reference/sources.ts'
import type { Standing } from '../reference/standing.ts'
import type { CheckId, FactKey } from './ids.ts'
import type { Quantity } from './quantity/quantity.ts'

/** `ok` means inside the bounds that were entered, never more. */
export type Verdict = 'ok' | 'marginal' | 'fails' | 'unknown'

/** Filter topologies, named source to load. */
export type Topology = 'C' | 'L' | 'LC' | 'CL' | 'PI' | 'T'

/** Where the text of a fact came from; the resolver ranks them. */
export type Origin =
  | { readonly by: 'user' }
  | { readonly by: 'kind'; readonly source: SourceId }
  | { readonly by: 'answer'; readonly node: string }
  | { readonly by: 'trial'; readonly id: string }
  | { readonly by: 'check'; readonly check: CheckId }
  | { readonly by: 'assumed'; readonly why: string; readonly favourable: boolean }

export type Fact = { readonly text: string; readonly origin: Origin }

/** One in-line trial on a line (largest that failed to clear, smallest that cleared, largest harmless, smallest harmful). */
export type Trial = {
  readonly id: string
  readonly legF: number
  readonly cleared: boolean
  readonly harmedSignal: boolean
  readonly repeatAgreed: boolean
}

/** Another text for a fact, typed in another window on the same text; kept until one of them is taken. */
export type Rival = { readonly fact: FactKey; readonly text: string; readonly at: string }

/** Facts about one circuit. Holds what was typed and where it came from, never results. */
export type Line = {
  readonly id: string
  readonly name: string
  readonly gate: 'unknown' | 'clear' | 'barred'
  readonly trials: readonly Trial[]
  readonly facts: { readonly [K in FactKey]?: Fact }
  readonly rivals?: readonly Rival[]
}

export type Option = { readonly value: string; readonly label: string }

/** What happens when a field is left empty. `contrary` is the unfavourable text tried to see whether the verdict turns. */
export type WhenEmpty =
  | { readonly do: 'ask'; readonly how: string; readonly offer?: { readonly text: string; readonly why: string } }
  | { readonly do: 'omit' }
  | {
      readonly do: 'assume'
      readonly text: string
      readonly why: string
      readonly favourable: boolean
      readonly contrary?: string
    }

export type InputType =
  | {
      readonly is: 'number'
      readonly quantity: Quantity
      readonly min: number
      readonly max: number
      readonly many?: true
    }
  | { readonly is: 'tolerance' }
  | { readonly is: 'choice'; readonly options: readonly Option[] }
  | { readonly is: 'flag' }

export type Input = {
  readonly key: string
  readonly fact: FactKey
  readonly label: string
  readonly help: string
  readonly type: InputType
  /** Text a fresh field starts with (a missing address key takes it too); absent = starts empty. */
  readonly defaultText?: string
  readonly whenEmpty: WhenEmpty
  /** Fields of the same group fold together under this heading. Absent = always visible. */
  readonly group?: string
}

export type Tolerance = { readonly lowFrac: number; readonly highFrac: number }

/** The value a compute function receives for one input. */
export type ValueOf<I extends Input> = I['type'] extends { is: 'tolerance' }
  ? Tolerance
  : I['type'] extends { is: 'choice' }
    ? string
    : I['type'] extends { is: 'flag' }
      ? boolean
      : I['type'] extends { is: 'number'; many: true }
        ? readonly number[]
        : number

export type GivenValue = number | readonly number[] | Tolerance | string | boolean

/** Values by key; `undefined` = empty and not assumed. For a check whose inputs are not known statically: a plain record. */
export type Given<I extends readonly Input[]> = string extends I[number]['key']
  ? Readonly<Record<string, GivenValue | undefined>>
  : { readonly [K in I[number] as K['key']]: ValueOf<K> | undefined }

export type Source = { readonly id: SourceId; readonly clause?: string; readonly standing: Standing }

export type Step = {
  readonly formula: string
  readonly withNumbers: string
  readonly si: number
  readonly quantity: Quantity
}

/** How a figure came about: shown in one tap. */
export type Basis = {
  readonly steps: readonly Step[]
  readonly assumptions: readonly string[]
  readonly sources: readonly [Source, ...Source[]]
}

export type Cell =
  | { readonly is: 'si'; readonly si: number }
  | { readonly is: 'word'; readonly word: string; readonly verdict?: Verdict }
  | { readonly is: 'none'; readonly why: string }

/** What would move a bound; `sentence` carries computed numbers only. */
export type Opener = { readonly id: string; readonly sentence: string }

/** A limit on the marked capacitance of one capacitor (or farads per leg where `appliesTo` says so). */
export type Bound = {
  readonly id: string
  readonly side: 'least' | 'most'
  /** `works`: physics; `permitted`: a document's figure (above it = marginal); `need`: attenuation. */
  readonly nature: 'need' | 'works' | 'permitted'
  readonly topology: Topology | 'any'
  readonly markedF: number
  readonly why: string
  readonly appliesTo: string
  readonly openedBy: readonly Opener[]
  readonly basis: Basis
}

export type RungRole =
  | 'working-peak'
  | 'bus-surge'
  | 'stand-off'
  | 'breakdown'
  | 'clamp'
  | 'ring-up'
  | 'inrush'
  | 'circuit-withstand'
  | 'capacitor-withstand'

/** A voltage on the ladder. `side` says which rail: what comes, or what holds. */
export type Rung = {
  readonly id: string
  readonly role: RungRole
  readonly label: string
  readonly side: 'comes' | 'holds'
  readonly minV: number
  readonly maxV: number
  readonly forSec?: number
  readonly basis: Basis
}

export type StripRow = {
  readonly topology: Topology
  readonly label: string
  readonly best: boolean
  /** open: leastF <= mostF; shut: they cross; half: only one side known; none: no capacitor or no bound. */
  readonly state: 'open' | 'shut' | 'half' | 'none'
  readonly leastF?: number
  readonly mostF?: number
  /** where the most would stand without the suppressor: between the two lies the suppressor's share */
  readonly takenToF?: number
  readonly permittedF?: number
  /** Capacitance intervals where the need is lost again (resonance). */
  readonly holes: readonly (readonly [number, number])[]
  readonly proposedF?: number
  readonly verdict: Verdict
  readonly note: string
}

export type StripMark = { readonly kind: 'failed' | 'cleared' | 'harmed'; readonly atF: number; readonly label: string }

export type LadderRung = {
  readonly id: string
  readonly label: string
  readonly side: 'comes' | 'holds'
  readonly minV: number
  readonly maxV: number
  /** id of the rung on the other rail that this one exceeds */
  readonly exceeds?: string
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
      readonly columns: readonly { readonly key: string; readonly label: string; readonly quantity?: Quantity }[]
      readonly rows: readonly {
        readonly id: string
        readonly strong?: boolean
        readonly cells: readonly Cell[]
      }[]
    }

export type Output = {
  readonly key: string
  readonly label: string
  readonly quantity: Quantity
  readonly digits: number
  /** the one figure shown largest; the first with `lead` that has a value wins */
  readonly lead?: true
}

export type Issue = { readonly key: string; readonly code: string; readonly message: string }

export type Finding = { readonly verdict: Verdict; readonly sentence: string }

export type Success = {
  readonly ok: true
  readonly verdict?: Verdict
  /** The verdict and its margin in one sentence, numbers included. */
  readonly headline: string
  /** Reasons, worst first: limits named, what opens a shut window, dips, cautions that follow from the numbers. */
  readonly findings: readonly Finding[]
  readonly outputs: Readonly<Record<string, { readonly cell: Cell; readonly basis: Basis }>>
  readonly bounds: readonly Bound[]
  readonly rungs: readonly Rung[]
  readonly pictures: readonly Picture[]
  /** keys of fields that may stay empty in general but are needed for this answer */
  readonly asks?: readonly string[]
  /** ids of safety texts (reference/safety.ts) that fit this result */
  readonly cautions: readonly string[]
}

export type Result = { readonly ok: false; readonly issues: readonly Issue[] } | Success

export type Progress = { readonly doneFrac: number }

/** A pure check of a Line. Long ones are generators that report progress and may be abandoned between yields. */
export interface Check<I extends readonly Input[] = readonly Input[]> {
  readonly id: CheckId
  readonly title: string
  readonly question: string
  readonly inputs: I
  readonly outputs: readonly Output[]
  compute(given: Given<I>): Result | Generator<Progress, Result>
}

export type { CheckId, FactKey, LineKindId, Quantity, SourceId, Standing }
