/**
 * The one resolver: decides each fact of a Line, typed > trial > another check's result > answer > line kind > assumed >
 * ask. One pass over a Line, each derived fact computed when it is first asked for, remembered as long as the Line
 * object and the expression evaluator are the same: a changed fact is a new Line.
 */
import { lineKindById } from '../../reference/line-kinds.ts'
import { PROVIDERS, providerById } from '../providers.ts'
import { printText } from '../quantity/format.ts'
import { TRIAL_NOTED } from '../trial/note.ts'
import type {
  Check,
  CheckId,
  Fact,
  FactKey,
  Figures,
  Input,
  Line,
  Origin,
  Quantity,
  Refused,
  Result,
  WordlessCheck,
} from '../types.ts'
import { evaluateNow, isRefused } from './evaluate.ts'
import { type Express, type Field, numbersIn, readField, saySame, unclaimed } from './fields.ts'
import { notedFact, triedOn } from './put-away.ts'
import { figuresOf } from './remembered-figures.ts'
import { unreadFor } from './unread.ts'
import { withFact } from './with-fact.ts'

export type Resolved = Fact & {
  /** other values of the same fact that lost, shown rather than hidden */
  readonly conflicts: readonly Fact[]
}

const RANK: Readonly<Record<Origin['by'], number>> = { user: 0, trial: 1, check: 2, answer: 3, kind: 4, assumed: 5 }

export type Derived = {
  readonly fact: FactKey
  readonly check: CheckId
  readonly output: string
  readonly quantity: Quantity
  readonly spanTo?: string
  /** a list of the figures, not one of the values */
  readonly isList?: true
}

/** Facts that a check's output provides, as the checks declare them. Recomputed each time, never stored; free of cycles. */
export const DERIVED: readonly Derived[] = PROVIDERS.flatMap((check) => [
  ...check.outputs.flatMap((output) =>
    output.provides !== undefined && 'quantity' in output
      ? [
          {
            fact: output.provides,
            check: check.id,
            output: output.key,
            quantity: output.quantity,
            ...(output.spanTo === undefined ? {} : { spanTo: output.spanTo }),
          },
        ]
      : [],
  ),
  ...(check.lists ?? []).map(
    ({ key, quantity, provides }): Derived => ({
      fact: provides,
      check: check.id,
      output: key,
      quantity,
      isList: true,
    }),
  ),
])

/** The rule that provides a fact, by the fact. */
const RULES = new Map<FactKey, Derived>()
for (const rule of DERIVED) if (!RULES.has(rule.fact)) RULES.set(rule.fact, rule)

/** The check that works a fact out for others, if one does. */
export const giverOf = (fact: FactKey): WordlessCheck | undefined => {
  const rule = RULES.get(fact)
  return rule && providerById(rule.check)
}

/** A Line with its facts decided. */
export type Resolution = {
  readonly line: Line
  /** the value of one fact with its origin, and what else claims to know it; undefined = ask */
  readonly fact: (key: FactKey) => Resolved | undefined
  /** the same, without what other checks work out */
  readonly stated: (key: FactKey) => Fact | undefined
  /** a text in numbers, calculations worked out; none where it is refused or not worked out yet */
  readonly numbers: (fact: Fact | undefined, quantity: Quantity) => readonly number[]
  /** everything that claims to know a fact, best first; a text the user emptied says "not known" and stands first */
  readonly claims: (key: FactKey) => readonly Fact[]
  /** the fields of a check as this Line fills them */
  readonly fields: (check: WordlessCheck) => readonly Field[]
  /** some inputs as this Line fills them: no other fact is looked for, and no check runs that only another would ask */
  readonly filled: (inputs: readonly Input[]) => readonly Field[]
  /** the numbers of a check on this Line */
  readonly figures: (check: WordlessCheck) => Figures | Refused
  /** the numbers of a check as others count them: those of a trial with what was put away before it */
  readonly counted: (check: WordlessCheck) => Figures | Refused
}

const remembered = new WeakMap<Line, { readonly express: Express | undefined; readonly resolution: Resolution }>()

/** The resolution of a Line; the same one for the same Line object and evaluator. */
export function resolve(line: Line, express?: Express): Resolution {
  const known = remembered.get(line)
  if (known && known.express === express) return known.resolution
  const asked = express && whileFinal(express, () => remembered.delete(line))
  const resolution = createResolution(line, asked)
  remembered.set(line, { express, resolution })
  return resolution
}

/** The evaluator, which tells when it could not answer yet: what rests on that must not be remembered. */
function whileFinal(express: Express, onPending: () => void): Express {
  return (text, quantity) => {
    const reading = express(text, quantity)
    if (reading === undefined || (reading.is === 'refused' && reading.code === 'calculator-missing')) onPending()
    return reading
  }
}

function createResolution(line: Line, express: Express | undefined): Resolution {
  const claims = new Map<FactKey, readonly Fact[]>()
  const fields = new Map<CheckId, readonly Field[]>()
  const figures = new Map<CheckId, Figures | Refused>()
  const counted = new Map<CheckId, Figures | Refused>()
  const once = <K, V>(map: Map<K, V>, key: K, work: () => V): V => {
    if (map.has(key)) return map.get(key) as V
    const value = work()
    map.set(key, value)
    return value
  }
  const resolution: Resolution = {
    line,
    fact: (key) => decided(resolution.claims(key)),
    stated: (key) => decided(ranked([line.facts[key], notedFact(line, key), kindFact(line, key)])),
    numbers: (fact, quantity) => numbersIn(fact?.text ?? '', quantity, express),
    claims: (key) =>
      once(claims, key, () =>
        ranked([line.facts[key], notedFact(line, key), derivedFact(resolution, key), kindFact(line, key)]),
      ),
    fields: (check) => once(fields, check.id, () => resolution.filled(check.inputs)),
    filled: (inputs) => inputs.map((input) => filled(resolution, input, express)),
    figures: (check) => once(figures, check.id, () => figuresOf(check, resolution.fields(check))),
    counted: (check) => once(counted, check.id, () => countedOn(resolution, check, express)),
  }
  return resolution
}

function countedOn(resolution: Resolution, check: WordlessCheck, express: Express | undefined): Figures | Refused {
  const { line } = resolution
  if (check.id !== 'trial' || line.trials.length === 0) return resolution.figures(check)
  return triedOn(line, (one) => (one === line ? resolution : createResolution(one, express)).figures(check))
}

const isEmptied = (fact: Fact): boolean => fact.origin.by === 'user' && fact.text.trim() === ''

const UNCLAIMED: readonly Fact[] = []

function ranked(claims: readonly (Fact | undefined)[]): readonly Fact[] {
  // most facts nobody knows
  if (claims.every((fact) => fact === undefined)) return UNCLAIMED
  return claims
    .filter((fact): fact is Fact => fact !== undefined && (fact.text.trim() !== '' || isEmptied(fact)))
    .sort((a, b) => RANK[a.origin.by] - RANK[b.origin.by])
}

function decided([best, ...others]: readonly Fact[]): Resolved | undefined {
  if (best === undefined || isEmptied(best)) return undefined
  return { ...best, conflicts: others.filter((other) => other.text !== best.text) }
}

/** One input as the Line fills it, with where its text comes from and what else claims to know it. */
function filled(resolution: Resolution, input: Input, express: Express | undefined): Field {
  const claims = resolution.claims(input.fact)
  if (claims.length === 0) {
    const unread = unreadFor(resolution, input, giverOf(input.fact))
    if (unread !== undefined) return unread
    if (resolution.line.rivals === undefined) return unclaimed(input)
  }
  const [first, ...rest] = claims
  const isSuited = (claim: Fact) => isEmptied(claim) || suits(input, claim.text)
  // What ranks first and cannot stand here is not known here: a lower claim does not slip into its place.
  const unsuited = first !== undefined && !isSuited(first) ? first : undefined
  const best = unsuited === undefined ? first : undefined
  const text = unsuited === undefined ? best?.text : ''
  const others = rest.filter((other) => isSuited(other) && !saySame(input, text ?? '', other.text, express))
  const rivals = resolution.line.rivals?.filter((rival) => rival.fact === input.fact) ?? []
  const said = {
    ...(rivals.length === 0 ? {} : { rivals }),
    ...(best === undefined ? {} : { origin: best.origin }),
    ...(others.length === 0 ? {} : { others }),
    ...(unsuited === undefined ? {} : { unsuited }),
  }
  const field = readField(input, text, said, express)
  return input.fact === 'trialSteps' && resolution.line.gate === 'barred' ? barred(field) : field
}

/** No trial of a barred line is judged: its check refuses it, others leave it out; what was typed stays as it stands. */
function barred({ value: _value, ...field }: Field): Field {
  if (field.state !== 'value') return field
  if (field.input.whenEmpty.do !== 'ask') return { ...field, state: 'omitted' }
  const message = 'The safety questions bar this line: no trial of it is judged. Nothing is fitted in it.'
  return { ...field, state: 'refused', issue: { key: field.key, code: 'barred', message } }
}

/** Without the last binary digits of a sum of decimals: 29.7, not 29.700000000000003. */
const readable = (value: number): number => Number(value.toPrecision(12))

function derivedFact(resolution: Resolution, fact: FactKey): Fact | undefined {
  const rule = RULES.get(fact)
  const check = giverOf(fact)
  if (!rule || !check) return undefined
  const figures = resolution.counted(check)
  if (rule.isList) {
    const all = figures.lists?.[rule.output] ?? []
    const text = all.map((one) => printText(readable(one), rule.quantity)).join('; ')
    return text === '' ? undefined : { text, origin: originOf(rule.check) }
  }
  if (isRefused(figures)) return undefined
  const value = figures.values[rule.output]
  const far = rule.spanTo === undefined ? undefined : figures.values[rule.spanTo]
  if (value === undefined || (rule.spanTo !== undefined && far === undefined)) return undefined
  const ends = [...new Set([value, far ?? value])].map((end) => printText(readable(end), rule.quantity))
  return { text: ends.join('; '), origin: originOf(rule.check) }
}

/** What a trial shows ranks with what was noted in it, above what is computed. */
const originOf = (check: CheckId): Origin =>
  check === 'trial' ? { by: 'trial', id: TRIAL_NOTED } : { by: 'check', check }

/** What the kind of line alone says: the supply of a power line. */
function kindFact(line: Line, fact: FactKey): Fact | undefined {
  if (fact !== 'workingRmsV' && fact !== 'supplyHz') return undefined
  const supply = lineKindById(line.facts.lineKind?.text ?? '')?.supply
  if (!supply) return undefined
  const origin = { by: 'kind', source: supply.source.id } as const
  if (fact === 'workingRmsV') return { text: printText(supply.worstRmsV, 'voltage'), origin }
  return { text: printText(supply.worstHz, 'frequency'), origin }
}

/**
 * Whether a text can stand in this input: not where another input of the same fact takes it and this one does not, as
 * several values where this takes one, or a choice only the other has. A text that no input takes is refused here.
 */
export function suits(input: Input, text: string): boolean {
  return takes(input, text) || !inputsOf(input.fact).some((other) => takes(other, text))
}

/** Of the checks that provide facts: where inputs of a fact differ in what they take, the one that takes most is theirs. */
const inputsOf = (fact: FactKey): readonly Input[] =>
  PROVIDERS.flatMap((check) => check.inputs.filter((input) => input.fact === fact))

function takes(input: Input, text: string): boolean {
  if (input.type.is === 'choice') return input.type.options.some((option) => option.value === text.trim())
  return !text.includes(';') || input.type.is === 'column' || (input.type.is === 'number' && input.type.many === true)
}

/** The fact as a field leaves it when it is emptied: gone, or known to be unknown where something else would fill it. */
export function emptied(line: Line, input: Input, express?: Express): Fact | undefined {
  const without = resolve(withFact(line, input.fact, undefined), express)
  const isFilled = without.claims(input.fact).length > 0 || (input.defaultText ?? '') !== ''
  return isFilled ? { text: '', origin: { by: 'user' } } : undefined
}

export const resolveFact = (line: Line, fact: FactKey, express?: Express): Resolved | undefined =>
  resolve(line, express).fact(fact)

/** Runs a check on a Line at once. */
export function checkLine(check: Check, line: Line, express?: Express): Result {
  return evaluateNow(check, resolve(line, express).fields(check))
}
