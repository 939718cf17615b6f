/** The shape of the question tree. Everything is plain JSON-clonable data: it is stored and read back from IndexedDB. */
import type { CheckId, FactKey, LineKindId, Source, Topology } from '../calc/types.ts'

/** Permanent, kebab-case. Questions and outcomes share one id space. */
export type NodeId = string

/** All parts must hold. `answered`: an earlier answer is one of these; `kindIn`: the chosen line kind is in a family. */
export type Condition = {
  readonly answered?: { readonly node: NodeId; readonly options: readonly string[] }
  readonly kindFamily?: readonly string[]
}

/** Where an option leads: one node, or the first branch whose condition holds (the last has none). */
export type Next = NodeId | readonly { readonly when?: Condition; readonly go: NodeId }[]

export type SetFact = { readonly fact: FactKey; readonly text: string; readonly why?: string }

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

export type OutcomeClass = 'filter' | 'not-a-filter' | 'suppressor' | 'stop' | 'measure'

export type OutcomeCheck = {
  readonly check: CheckId
  /** input key -> text; facts of the line fill the rest */
  readonly prefill: Readonly<Record<string, string>>
  readonly why: string
}

export type Outcome = {
  readonly is: 'outcome'
  readonly id: NodeId
  readonly class: OutcomeClass
  readonly headline: string
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

export type GuideNode = Question | Outcome

export type Guide = {
  readonly version: number
  readonly edition: string
  readonly start: NodeId
  readonly nodes: readonly GuideNode[]
}

/** node id -> option id (or line-kind id at a picker) */
export type Answers = Readonly<Record<NodeId, string>>

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
  readonly items: readonly AdviceItem[]
}

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
