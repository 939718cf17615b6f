/** The shape of the question tree. Everything is plain JSON-clonable data: it is stored and read back from IndexedDB. */
import type { CheckId, FactKey, LineKindId, Source, Topology } from '../calc/types.ts'

/** Permanent, kebab-case. Questions and outcomes share one id space. */
export type NodeId = string

/**
 * All parts must hold, judged on the answers of the present path only. `answered`: that question was answered with one
 * of these options; `kindFamily`: the family of the line kind chosen last is one of these.
 */
export type Condition = {
  readonly answered?: { readonly node: NodeId; readonly options: readonly string[] }
  readonly kindFamily?: readonly string[]
}

/** Where an option leads: one node, or the first branch whose condition holds (the last has none). */
export type Next = NodeId | readonly { readonly when?: Condition; readonly go: NodeId }[]

/** `assumed`: the answer did not state it; the fact is carried as an (unfavourable) assumption and says `why`. */
export type SetFact = {
  readonly fact: FactKey
  readonly text: string
  readonly why?: string
  readonly assumed?: true
}

/** One answer to a question. */
export type GuideOption = {
  readonly id: string
  readonly label: string
  /** one line under the label: what one would see or hear */
  readonly hint?: string
  readonly sets?: readonly SetFact[]
  /** what this answer does to the safety gate */
  readonly gate?: 'clear' | 'barred'
  readonly next: Next
}

/** A node that asks. */
export type Question = {
  readonly is: 'question'
  readonly id: NodeId
  readonly chapter: string
  readonly text: string
  readonly why: string
  /** how to find out when the answer is "don't know" */
  readonly findOut: string
  readonly options: readonly GuideOption[]
  /** `kind-picker`: options are the line kinds, searchable; every option leads to `pickerNext` */
  readonly picker?: { readonly fact: 'lineKind'; readonly next: Next; readonly barredNext: NodeId }
  /** safety texts shown with the question */
  readonly cautions?: readonly string[]
}

/** What kind of end a path has; all of full rank. */
export type OutcomeClass = 'filter' | 'not-a-filter' | 'suppressor' | 'stop' | 'measure'

/** A check an outcome opens. */
export type OutcomeCheck = {
  readonly check: CheckId
  /** input key -> text; facts of the line fill the rest */
  readonly prefill: Readonly<Record<string, string>>
  readonly why: string
}

/** A node that ends a path: the decision, its reason, and what to do now. */
export type Outcome = {
  readonly is: 'outcome'
  readonly id: NodeId
  readonly class: OutcomeClass
  readonly headline: string
  /** the side of the connector the noise comes from; absent = not known. Turns LC and CL into "box" and "cable". */
  readonly noiseFrom?: 'box' | 'cable'
  /** why: at least one sentence */
  readonly reason: string
  readonly sources: readonly [Source, ...Source[]]
  /** rules that guide code evaluates with the line's facts (rules.ts) */
  readonly rules: readonly string[]
  /** what to do now, in order */
  readonly steps: readonly string[]
  readonly checks: readonly OutcomeCheck[]
  readonly cautions: readonly string[]
  readonly nextMeasurement: string
}

/** Questions and outcomes. */
export type GuideNode = Question | Outcome

/** The whole tree. `version` grows with every change of content; `start` is the first question. */
export type Guide = {
  readonly version: number
  readonly edition: string
  readonly start: NodeId
  readonly nodes: readonly GuideNode[]
}

/** node id -> option id (or line-kind id at a picker) */
export type Answers = Readonly<Record<NodeId, string>>

/** One answered question of the path. */
export type TrailStep = { readonly node: Question; readonly optionId: string; readonly label: string }

/** Derived by replay from the start; never stored. */
export type Position = {
  readonly trail: readonly TrailStep[]
  readonly current: GuideNode
  /** answers kept but not on the present path */
  readonly unusedAnswers: readonly NodeId[]
  readonly gate: 'unknown' | 'clear' | 'barred'
}

/** One section of advice a rule produced from the line's facts. */
export type AdviceItem = {
  readonly rule: string
  readonly title: string
  readonly text: string
  readonly basis: readonly Source[]
  /** facts to collect before this can be said with numbers */
  readonly missing: readonly string[]
  readonly topology?: Topology
}

export type Advice = {
  readonly outcome: Outcome
  /** false until the gate is clear: figures may be shown, advice to fit or try a part may not */
  readonly mayAdviseParts: boolean
  /** what to do now, in order: the outcome's own steps, or the gate first where it is not clear */
  readonly steps: readonly string[]
  readonly items: readonly AdviceItem[]
}

/** What an address `#/ask/<node>` shows: a node of the present path, or another one with a notice why it is here. */
export type Shown = {
  readonly node: GuideNode
  readonly position: Position
  readonly onPath: boolean
  /** the answer this node has on the path */
  readonly chosen?: string
  readonly notice?: string
}

/** One fault the linter found in a guide. */
export type Problem = { readonly code: string; readonly node: NodeId; readonly message: string }

/** A field note: short, readable offline, with its source. */
export type FieldNote = {
  readonly id: string
  readonly title: string
  readonly paragraphs: readonly string[]
  readonly table?: { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] }
  readonly sources: readonly [Source, ...Source[]]
  readonly related?: readonly { readonly check?: CheckId; readonly note?: string }[]
}

export type { LineKindId }
