/** The shape of an investigation: suspects, evidence and events. Plain JSON-clonable data; the engine is in investigate/. */
import type { FactKey, Source } from '../calc/types.ts'
import type { DrawingId } from './drawing-ids.ts'
import type { FillInId } from './fill-ins.ts'
import type { NodeId, SetFact } from './types.ts'

/** What goes wrong, as the caller says it: the answers to the question `wrong`. */
export const SYMPTOMS = [
  'noise',
  'receiver',
  'gnss',
  'complain',
  'reading',
  'data',
  'reset',
  'compass',
  'broken',
  'plan',
] as const
export type SymptomId = (typeof SYMPTOMS)[number]

/** Every complaint has a source, a path and a victim; an answer about one settles nothing about another. */
export type Part = 'source' | 'path' | 'victim'

/** Permanent, kebab-case. */
export type SuspectId = string
/** Permanent, kebab-case; shares one id space with outcomes. */
export type EvidenceId = NodeId

/** What is done about a cause; each of full rank. */
export type CureId =
  | 'source'
  | 'bond'
  | 'shield'
  | 'return'
  | 'separate'
  | 'choke'
  | 'filter'
  | 'suppressor'
  | 'decouple'
  | 'bus'
  | 'antenna'
  | 'remove'
  | 'procedure'
  | 'box'
  | 'inspect'
  | 'supply'
  | 'contact'

/**
 * One thing that may be the cause. `effort` of its cure: 1 taken away, cleaned or closed; 2 a repair or a new route;
 * 3 a part is added or a place changed; 4 it has no cure of its own, its path is treated. `shows`: by definition it can
 * appear as nothing else. `paths`: for a source, the ways that go together with it; empty = it needs none. `alone`: a path at fault by itself.
 */
export type Suspect = {
  readonly id: SuspectId
  readonly part: Part
  readonly name: string
  readonly oneLine: string
  readonly usual: 'often' | 'sometimes' | 'rarely'
  readonly cure: CureId
  readonly effort: 1 | 2 | 3 | 4
  readonly outcome: NodeId
  readonly proof: EvidenceId
  readonly shows: readonly SymptomId[]
  readonly paths?: readonly SuspectId[]
  readonly alone?: readonly SymptomId[]
  readonly sources: readonly [Source, ...Source[]]
}

/** What a reading says of a suspect. `rules-out` and `proves` only by physics or definition. */
export type Say = 'rules-out' | 'against' | 'for' | 'proves'

/** `asked` when the symptom is one of these (or not known) and one of the named answers was given. */
export type When = {
  readonly symptoms?: readonly SymptomId[]
  readonly answered?: readonly { readonly evidence: EvidenceId; readonly options: readonly string[] }[]
}

/** One reading of an item. `cites`: the source of a cell; a cell without one is practice. */
export type Reading = {
  readonly id: string
  readonly label: string
  readonly hint?: string
  readonly says: Readonly<Record<SuspectId, Say>>
  readonly cites?: Readonly<Record<SuspectId, Source>>
  readonly sets?: readonly SetFact[]
  readonly gate?: 'clear' | 'barred'
  /** a stop this answer leads to first; looking and thinking may go on behind it */
  readonly stop?: NodeId
  /** what this result means, one sentence */
  readonly means: string
  /** kept for stored answers and addresses of earlier editions, not offered any more */
  readonly retired?: true
}

export type Tool =
  | 'headset'
  | 'torch'
  | 'milliohm meter'
  | 'multimeter'
  | 'clamp ferrite'
  | 'current probe'
  | 'oscilloscope'
  | 'dummy load'
  | 'fused battery'
  | 'handheld receiver'
  | 'hand compass'
  | 'insulation tester'
  | 'spare unit'
  | 'phone spectrum'

/** How a test is done, and what is to be expected. */
export type TestCard = {
  readonly do: readonly string[]
  readonly with: readonly { readonly instrument: string; readonly setting: string }[]
  readonly expect: string
  /** a reading may be typed in this unit */
  readonly unit?: string
  /** the reading is this fact of the line, where one of these answers is given with it */
  readonly reads?: { readonly fact: FactKey; readonly options: readonly string[] }
}

/** A question, a look or a test. `opens`: it opens or loads a circuit, so it waits for a clear gate. */
export type Evidence = {
  readonly id: EvidenceId
  readonly chapter: string
  readonly kind: 'ask' | 'look' | 'test'
  /** the part of the complaint it may settle */
  readonly about: Part | 'safety' | 'line'
  readonly text: string
  readonly why: string
  readonly findOut: string
  readonly minutes: number
  readonly opens?: true
  readonly needs?: readonly Tool[]
  readonly when?: When
  readonly card?: TestCard
  readonly options: readonly Reading[]
  readonly picker?: 'lineKind'
  readonly cautions?: readonly string[]
  readonly note?: string
  /** drawn on its card */
  readonly picture?: DrawingId
  /** a table that is filled in on its card */
  readonly fillIn?: FillInId
}

/**
 * One answer, appended and never changed. The newest of each item counts; older ones stay as history. An option
 * `set-aside` means: cannot be done now; it stays in the list of open tests.
 */
export type Event = {
  readonly at: string
  readonly evidence: EvidenceId
  readonly option: string
  readonly reading?: string
  readonly note?: string
  readonly repeats?: 'agreed' | 'differed' | 'once'
}
