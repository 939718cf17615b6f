/**
 * The vocabulary every check speaks: a Line of typed facts in, bounds, rungs, figures and pictures out.
 * Plain numbers are SI base units; prefixes exist only in quantity/parse.ts and quantity/format.ts.
 */
import type { LineKindId } from '../reference/line-kinds.ts'
import type { SourceId } from '../reference/sources.ts'
import type { Standing } from '../reference/standing.ts'
import type { ColumnEntry, ColumnType } from './column.ts'
import type { CheckId, FactKey } from './ids.ts'
import type { Fact, Line, LineText, Origin, Rival } from './line-type.ts'
import type { NumberType } from './number-type.ts'
import type { LadderRung, Picture, PlotCurve, StripMark, StripRow, Use } from './picture.ts'
import type { LimitSide } from './quantity/format.ts'
import type { Level } from './quantity/level-unit.ts'
import type { Quantity } from './quantity/quantity.ts'
import type { Finding, Issue, Refused, Resting, Result, Success } from './said.ts'
import type { Cell, Topology, Verdict } from './terms.ts'
import type { Trial } from './trial/note.ts'

export type Option = { readonly value: string; readonly label: string }

/** What happens when a field is left empty. `how`: to find it out. `contrary` is the unfavourable text tried to see whether the verdict turns. */
export type WhenEmpty =
  | {
      readonly do: 'ask'
      readonly how: string
      /** the thing as a sentence names it: "the noise frequency"; absent = the label in small letters */
      readonly name?: string
      readonly offer?: { readonly text: string; readonly why: string }
    }
  /** `name` and `how` where an answer can turn on it after all */
  | { readonly do: 'omit'; readonly name?: string; readonly how?: string }
  | {
      readonly do: 'assume'
      readonly name?: string
      readonly how?: string
      readonly text: string
      readonly why: string
      readonly favourable: boolean
      readonly contrary?: string
      /** the contrary as the kind of line has it, where a kind is chosen that knows it: before `contrary` */
      readonly contraryOfKind?: 'existingF' | 'suppressorF' | 'saturationFrac' | 'beadBiasFrac' | 'biasFrac'
      /** key of the field without which it does not matter: nothing is doubted while that is empty */
      readonly beside?: string
    }

export type InputType =
  | NumberType
  | { readonly is: 'tolerance' }
  /** a level that keeps the unit it was typed with; min and max in dB of any unit */
  | { readonly is: 'level'; readonly min: number; readonly max: number }
  | { readonly is: 'choice'; readonly options: readonly Option[] }
  | { readonly is: 'flag' }
  | ColumnType

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
  : I['type'] extends { is: 'level' }
    ? Level
    : I['type'] extends { is: 'choice' }
      ? string
      : I['type'] extends { is: 'flag' }
        ? boolean
        : I['type'] extends { is: 'column' }
          ? readonly ColumnEntry[]
          : I['type'] extends { is: 'number'; many: true }
            ? readonly number[]
            : number

export type GivenValue = number | Level | readonly number[] | readonly ColumnEntry[] | Tolerance | string | boolean

/** An assumed input always has a value: no compute function repeats a default. */
type GivenOf<I extends Input> = I['whenEmpty'] extends { do: 'assume' } ? ValueOf<I> : ValueOf<I> | undefined

/** Values by key; `undefined` = empty and not assumed. For a check whose inputs are not known statically: a plain record. */
export type Given<I extends readonly Input[]> = string extends I[number]['key']
  ? Readonly<Record<string, GivenValue | undefined>>
  : { readonly [K in I[number] as K['key']]: GivenOf<K> }

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

/** What would move a bound; computed numbers only. */
export type Opener = { readonly id: string; readonly sentence: string }

/** Who says so: a check computed it, a trial showed it, a document prints it, or the user set it. */
export type BoundBy =
  | { readonly is: 'check'; readonly check: CheckId }
  | { readonly is: 'trial'; readonly trial: string }
  | { readonly is: 'document'; readonly document: SourceId }
  | { readonly is: 'user'; readonly fact: FactKey }

/**
 * A limit on capacitance, numbers only; `isTooMuch`: it ends a window, and less than it is not shown to be harmless.
 * `works`: physics; `permitted`: a document's figure (above it = marginal); `need`: attenuation; `fits`: what can be built.
 * `per` says what the farads are counted of: one capacitor as marked, one leg to chassis, or the pair of wires
 * (differential), the last two before tolerance and with all that is on the line (a trial: the trial part alone).
 */
export type Bound = {
  readonly id: string
  readonly by: BoundBy
  readonly side: 'least' | 'most'
  readonly nature: 'need' | 'works' | 'permitted' | 'fits'
  readonly farads: number
  readonly per: 'capacitor' | 'leg' | 'pair'
  readonly topology: Topology | 'any'
  /** a figure of what fits that stands as the ceiling itself, because the line has no signal to ask */
  readonly alone?: true
  readonly isTooMuch?: true
  /** a need only: capacitances above its farads where it is lost again (resonance), ascending; the last may have no end */
  readonly holes?: readonly (readonly [number, number])[]
}

/** A bound as a screen says it: a limit on the marked capacitance of one capacitor (or farads per leg where `appliesTo` says so). */
export type SaidBound = {
  readonly id: string
  readonly side: 'least' | 'most'
  readonly nature: Bound['nature']
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

/** A voltage on the ladder, numbers only; the role says which rail it stands on: what comes, or what holds. */
export type RungFigure = {
  readonly id: string
  readonly role: RungRole
  readonly minV: number
  readonly maxV: number
  readonly forSec?: number
}

/** A rung as a screen says it. */
export type Rung = RungFigure & {
  readonly label: string
  readonly side: 'comes' | 'holds'
  readonly basis: Basis
}

export type Output = {
  readonly key: string
  readonly label: string
  /** the fact of the Line this figure provides to the other checks */
  readonly provides?: FactKey
  /** the output that is the other end of a span: the fact is then both ends, and the worse of them decides */
  readonly spanTo?: string
  /** the one figure shown largest; the first with `lead` that has a value wins */
  readonly lead?: true
} & (
  | {
      readonly quantity: Quantity
      /** significant digits: three for an estimate, more only where a frequency needs them */
      readonly digits: number
      /** a limit: a most is printed cut down, a least brought up */
      readonly side?: LimitSide
    }
  | { readonly is: 'words' }
)

export type Progress = { readonly doneFrac: number }

/**
 * What a check finds out, as numbers only: enough for schedules, for facts handed to other checks and for doubting an
 * assumption, without a sentence being written. `values` are outputs by key, in SI units; absent = does not exist. `lists`: several values by key.
 */
export type Figures = {
  readonly verdict?: Verdict
  readonly values: Readonly<Record<string, number>>
  readonly lists?: Readonly<Record<string, readonly number[]>>
  readonly bounds: readonly Bound[]
  readonly rungs: readonly RungFigure[]
  /** keys of the favourable assumptions that a yes would rest on: the verdict is then no yes */
  readonly restsOn?: readonly string[]
}

/**
 * A check as other checks run it: its figures, and no word of its answer, so that a page of one check carries no words of
 * another. `figures` may be a generator that reports progress and may be abandoned between yields.
 */
export interface WordlessCheck<I extends readonly Input[] = readonly Input[], F extends Figures = Figures> {
  readonly id: CheckId
  readonly title: string
  readonly question: string
  readonly inputs: I
  readonly outputs: readonly Output[]
  /** the same without the words of its answer, where this one has them and others run it without */
  readonly wordless?: WordlessCheck
  readonly lists?: readonly { readonly key: string; readonly quantity: Quantity; readonly provides: FactKey }[]
  /** a check that reads what this one provides does not answer as if nothing were there while it refuses these facts */
  readonly whileUnread?: { readonly facts: readonly FactKey[]; readonly sentence: string }
  figures(given: Given<I>): F | Refused | Generator<Progress, F | Refused>
  /**
   * The same answer (the same topology, the same part) under other facts, for doubting an assumption: an answer that
   * would be another part says nothing about this one. Absent: `figures` on the other facts says the same.
   */
  doubted?(given: Given<I>, figures: F): Figures | Refused
  /** Whether an assumed field is no part of the answer that was found, whatever it is: nothing is tried with another value. */
  ignores?(figures: F, key: string): boolean
  /**
   * What an answer is that would be a yes and rests on these assumed inputs, where that is more than `unknown`: never
   * `ok`. Absent or undefined: unknown.
   */
  resting?(given: Given<I>, figures: F, keys: readonly string[]): Resting | undefined
}

/** A pure check of a Line. `figures` computes, `explain` writes words and pictures on demand from what was computed. */
export interface Check<I extends readonly Input[] = readonly Input[], F extends Figures = Figures>
  extends WordlessCheck<I, F> {
  explain(given: Given<I>, figures: F): Success
}

export type {
  Cell,
  CheckId,
  ColumnEntry,
  ColumnType,
  Fact,
  FactKey,
  Finding,
  Issue,
  LadderRung,
  Level,
  Line,
  LineKindId,
  LineText,
  Origin,
  Picture,
  PlotCurve,
  Quantity,
  Refused,
  Resting,
  Result,
  Rival,
  SourceId,
  Standing,
  StripMark,
  StripRow,
  Success,
  Topology,
  Trial,
  Use,
  Verdict,
}
