/** The shape of the guide. Everything is plain JSON-clonable data: it is stored and read back from IndexedDB. */
import type { CheckId, FactKey, Source, Topology } from '../calc/types.ts'
import type { DrawingId } from './drawing-ids.ts'
import type { FillInId } from './fill-ins.ts'
import type { Found } from './investigate/ending.ts'
import type { Standing } from './investigate/standing.ts'
import type { Evidence, Suspect } from './investigation.ts'

/** Permanent, kebab-case. Questions and outcomes share one id space. */
export type NodeId = string

/** `assumed`: the answer did not state it; the fact is carried as an (unfavourable) assumption and says `why`. */
export type SetFact = {
  readonly fact: FactKey
  readonly text: string
  readonly why?: string
  readonly assumed?: true
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

/** What can stand at an address: an item of evidence, or an outcome. */
export type GuideNode = Evidence | Outcome

/** The whole guide. `version` grows with every change of content; `start` is the first question. */
export type Guide = {
  readonly version: number
  readonly edition: string
  readonly start: NodeId
  readonly suspects: readonly Suspect[]
  readonly evidence: readonly Evidence[]
  readonly outcomes: readonly Outcome[]
}

/** node id -> option id (or line-kind id at a picker); the newest answer to each item, in the order first given */
export type Answers = Readonly<Record<NodeId, string>>

/** One answered item of the complaint. */
export type TrailStep = {
  readonly node: Evidence
  readonly optionId: string
  readonly label: string
  readonly means: string
  /** repeated, it came out otherwise: it counts as not known */
  readonly isVoid?: true
}

/** An answer that speaks for the cause found: the clause of the reason that it carries. */
export type Reason = { readonly step: TrailStep; readonly suspect: Suspect }

/** Derived from the answers by replay; never stored. */
export type Position = {
  readonly answers: Answers
  readonly trail: readonly TrailStep[]
  /** what is asked next, or what the answers lead to */
  readonly current: GuideNode
  readonly gate: 'unknown' | 'clear' | 'barred'
  /** design on paper: the line is on the list, dead and measured; nothing is fitted or tried */
  readonly isPaperOnly: boolean
  /** the stop that an answer asks for; looking and thinking may go on behind it */
  readonly stop?: Outcome
  readonly standings: readonly Standing[]
  /** how many suspects still fit */
  readonly fits: number
  readonly found?: Found
  /** the suspect this complaint was closed with, while the proof of its repair stands */
  readonly closed?: string
  readonly reasons: readonly Reason[]
  /** what may still decide, the best first; what was set aside or not known stands among it */
  readonly openTests: readonly Evidence[]
  /** tests set aside, in the order set aside */
  readonly setAside: readonly Evidence[]
  /** answers kept that belong to no item of this guide */
  readonly unusedAnswers: readonly NodeId[]
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
  /** what was decided, to stand in the sentence of the decision */
  readonly decided?: string
  /** items of the guide that answer what is missing */
  readonly asks?: readonly NodeId[]
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
  /** drawn under its paragraphs */
  readonly picture?: DrawingId
  /** a table that is filled in on its page, for the triage under way */
  readonly fillIn?: FillInId
  readonly sources: readonly [Source, ...Source[]]
  readonly related?: readonly { readonly check?: CheckId; readonly note?: string }[]
}
