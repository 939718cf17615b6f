/** What a rule knows: the outcome, the facts of the line as numbers, its kind, and words for the two sides. */
import { parseList } from '../../calc/quantity/parse.ts'
import type { Quantity } from '../../calc/quantity/quantity.ts'
import type { FactKey, Line, Source } from '../../calc/types.ts'
import { type LineKind, lineKindById } from '../../reference/line-kinds.ts'
import type { AdviceItem, Outcome } from '../types.ts'

/** Everything a rule may look at; all of it derived from the outcome and the line. */
export type Context = {
  readonly outcome: Outcome
  readonly line: Line
  readonly kind: LineKind | undefined
  readonly mode: 'common' | 'differential' | 'unknown'
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

/** Gathers what the rules need from a line. */
export function contextOf({ outcome, line }: { readonly outcome: Outcome; readonly line: Line }): Context {
  const mode = line.facts.noiseMode?.text
  return {
    outcome,
    line,
    kind: lineKindById(line.facts.lineKind?.text ?? ''),
    mode: mode === 'common' || mode === 'differential' ? mode : 'unknown',
  }
}

/** The numbers of a fact in SI units, all of them; empty when it is missing, refused or still an expression. */
export function numbersOf(line: Line, fact: FactKey, quantity: Quantity): readonly number[] {
  const reading = parseList(line.facts[fact]?.text ?? '', quantity)
  return reading.is === 'values' ? reading.si : []
}

/** The first number of a fact, or undefined. */
export function numberOf(line: Line, fact: FactKey, quantity: Quantity): number | undefined {
  return numbersOf(line, fact, quantity)[0]
}

/** Why a fact cannot be used as a number: missing, or written in a way that is not read here. */
export function missingWords(line: Line, fact: FactKey, name: string): string {
  const text = line.facts[fact]?.text.trim() ?? ''
  return text === '' ? name : `${name} (“${text}” is not read as a number here; open the check)`
}

/** The end of the connector a side of the network faces: "the box", "the cable", or the side in words when not known. */
export function sideWords({ outcome }: Context, side: 'source' | 'load'): string {
  if (outcome.noiseFrom === undefined) return side === 'source' ? 'the side the noise comes from' : 'the other side'
  const source = outcome.noiseFrom
  const load = source === 'box' ? 'cable' : 'box'
  return `the ${side === 'source' ? source : load}`
}
