/** What a rule knows: the outcome, the facts of the line as numbers, its kind, and words for the two sides. */
import type { Express } from '../../calc/line/fields.ts'
import { type Resolution, resolve } from '../../calc/line/resolver.ts'
import type { Quantity } from '../../calc/quantity/quantity.ts'
import type { FactKey, Line, Source } from '../../calc/types.ts'
import { type LineKind, lineKindById } from '../../reference/line-kinds.ts'
import type { AdviceItem, Answers, Outcome } from '../types.ts'

/** Everything a rule may look at; all of it derived from the outcome and the line. */
export type Context = {
  readonly outcome: Outcome
  readonly facts: Resolution
  readonly kind: LineKind | undefined
  readonly mode: 'common' | 'differential' | 'unknown'
  /** the answer to whether the box can be changed */
  readonly box: string | undefined
}

/** One piece of advice code. `advisesPart`: says to fit, try or place something, so it waits for a clear gate. */
export type Rule = {
  readonly id: string
  readonly advisesPart: boolean
  /** undefined = has nothing to say about this line */
  readonly say: (context: Context) => Omit<AdviceItem, 'rule'> | undefined
}

/** Source of what is common practice without a printed source. */
export const PRACTICE: Source = { id: 'practice', standing: 'practice' }
/** Source of what is computed here from stated inputs. */
export const DERIVED: Source = { id: 'derived', standing: 'derived' }

type Asked = {
  readonly outcome: Outcome
  readonly line: Line
  readonly answers?: Answers | undefined
  readonly express?: Express | undefined
}

/** Gathers what the rules need from a line, each fact decided as every check decides it. */
export function contextOf({ outcome, line, answers, express }: Asked): Context {
  const facts = resolve(line, express)
  const mode = facts.fact('noiseMode')?.text
  return {
    outcome,
    facts,
    kind: lineKindById(facts.fact('lineKind')?.text ?? ''),
    mode: mode === 'common' || mode === 'differential' ? mode : 'unknown',
    box: answers?.['box'],
  }
}

/** The numbers of a fact in SI units, all of them; empty when it is missing or refused. */
export function numbersOf(facts: Resolution, fact: FactKey, quantity: Quantity): readonly number[] {
  return facts.numbers(facts.fact(fact), quantity)
}

/** The first number of a fact, or undefined. */
export function numberOf(facts: Resolution, fact: FactKey, quantity: Quantity): number | undefined {
  return numbersOf(facts, fact, quantity)[0]
}

/** The capacitor on offer: stated, not what the window proposes. */
export function offeredF(facts: Resolution): number | undefined {
  return facts.numbers(facts.stated('markedF'), 'capacitance')[0]
}

/** Why a fact cannot be used as a number: missing, or written in a way that is not read here. */
export function missingWords(facts: Resolution, fact: FactKey, name: string): string {
  const text = facts.fact(fact)?.text.trim() ?? ''
  return text === '' ? name : `${name} (“${text}” is not read as a number here; open the check)`
}

/** The end of the connector a side of the network faces: "the box", "the cable", or the side in words when not known. */
export function sideWords({ outcome }: Context, side: 'source' | 'load'): string {
  if (outcome.noiseFrom === undefined) return side === 'source' ? 'the side the noise comes from' : 'the other side'
  const source = outcome.noiseFrom
  const load = source === 'box' ? 'cable' : 'box'
  return `the ${side === 'source' ? source : load}`
}
