/** What is known of one circuit: facts as typed, each with where it came from. */
import type { SourceId } from '../reference/sources.ts'
import type { CheckId, FactKey } from './ids.ts'
import type { Trial } from './trial/note.ts'

/** Where the text of a fact came from; the resolver ranks them. */
export type Origin =
  | { readonly by: 'user' }
  | { readonly by: 'kind'; readonly source: SourceId }
  | { readonly by: 'answer'; readonly node: string }
  | { readonly by: 'trial'; readonly id: string }
  | { readonly by: 'check'; readonly check: CheckId }
  | { readonly by: 'assumed'; readonly why: string; readonly favourable: boolean }

export type Fact = { readonly text: string; readonly origin: Origin }

/** What is typed about a line: a fact, or its name. */
export type LineText = FactKey | 'name'

/** Another text for a fact or the name, typed in another window on the same text; kept until one of them is taken. */
export type Rival = { readonly fact: LineText; readonly text: string; readonly at: string }

/** Facts about one circuit. Holds what was typed and where it came from, never results. */
export type Line = {
  readonly id: string
  readonly name: string
  readonly gate: 'unknown' | 'clear' | 'barred'
  readonly trials: readonly Trial[]
  readonly facts: { readonly [K in FactKey]?: Fact }
  readonly rivals?: readonly Rival[]
}
