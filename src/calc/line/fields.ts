/** Reads the texts of a check's fields against its descriptor: value, assumption, omission, question or refusal. */

import { usualLoadOf } from '../../reference/line-kinds/usual-load.ts'
import type { LineKind } from '../../reference/line-kinds.ts'
import { levelInCategory } from '../quantity/category.ts'
import { formatQuantity, printText } from '../quantity/format.ts'
import { levelUnitOf } from '../quantity/level-unit.ts'
import { parseFlag, parseList, parseQuantity, parseTolerance, type Reading } from '../quantity/parse.ts'
import { QUANTITIES, type Quantity } from '../quantity/quantity.ts'
import { quote } from '../quantity/reading.ts'
import type { Fact, GivenValue, Input, Issue, Origin, Rival, WordlessCheck } from '../types.ts'
import { readColumn } from './columns.ts'
import { otherVolts } from './peak-or-rms.ts'

export type FieldState = 'value' | 'assumed' | 'omitted' | 'missing' | 'refused' | 'pending'

/** What a Line says of a field before its text is read. */
export type Said = {
  /** where the text comes from; absent: nothing is known, or it is the usual value the field starts with */
  readonly origin?: Origin
  /** what else claims to know it, best first: shown beside the field, never hidden */
  readonly others?: readonly Fact[]
  /** what the Line holds that this field cannot take: several values where it takes one, a choice of another check */
  readonly unsuited?: Fact
  /** texts typed into the same field in other windows, kept until one is taken */
  readonly rivals?: readonly Rival[]
}

/** One field after reading. `text` is what was typed (or the default it started with), never altered. */
export type Field = Said & {
  readonly key: string
  readonly input: Input
  readonly text: string
  readonly state: FieldState
  readonly value?: GivenValue
  readonly issue?: Issue
  readonly assumed?: { readonly text: string; readonly why: string; readonly favourable: boolean }
}

/** Evaluates a typed expression; `undefined` while the evaluator is still loading. */
export type Express = (text: string, quantity: Quantity) => Reading | undefined

type Value = { readonly value: GivenValue } | { readonly issue: Issue } | 'pending' | 'empty'

/**
 * Reads every field of `check`. `texts[key]` undefined = key absent: takes the descriptor's default;
 * '' = known to be empty. Never throws.
 */
export function readFields(
  check: WordlessCheck,
  texts: Readonly<Record<string, string | undefined>>,
  express?: Express,
): readonly Field[] {
  return check.inputs.map((input) => readField(input, texts[input.key], {}, express))
}

/** Reads one field; `typed` undefined = takes the descriptor's default. */
export function readField(input: Input, typed: string | undefined, said: Said, express?: Express): Field {
  const text = typed ?? input.defaultText ?? ''
  const base = { key: input.key, input, text, ...said }
  const read = typed === undefined ? readOwn(input, text) : readTyped(input, text, express)
  if (read === 'pending') return { ...base, state: 'pending' }
  if (read !== 'empty')
    return 'issue' in read
      ? { ...base, state: 'refused', issue: read.issue }
      : { ...base, state: 'value', value: read.value }
  const rule = input.whenEmpty
  if (rule.do !== 'assume') return { ...base, state: rule.do === 'ask' ? 'missing' : 'omitted' }
  const assumed = { text: rule.text, why: rule.why, favourable: rule.favourable }
  const value = readOwn(input, rule.text)
  if (value === 'pending' || value === 'empty') return { ...base, state: 'omitted', assumed }
  return 'issue' in value
    ? { ...base, state: 'refused', issue: value.issue }
    : { ...base, state: 'assumed', value: value.value, assumed }
}

/** What the texts of a descriptor read as: the same for every line, so read once. They hold no calculations. */
const ownTexts = new WeakMap<Input, Map<string, Value>>()

function readOwn(input: Input, text: string): Value {
  const known = ownTexts.get(input) ?? new Map<string, Value>()
  const read = known.get(text) ?? readText(input, text, undefined)
  known.set(text, read)
  ownTexts.set(input, known)
  return read
}

/** Typed texts read last, by input: the lines of a connector say much alike. What waits for the calculator is not kept. */
const typedTexts = new WeakMap<Input, Map<string, Value>>()
const MOST_TYPED = 256
/** A longer one is a list of its own, hardly found again. */
const SHORT_LETTERS = 64

function readTyped(input: Input, text: string, express: Express | undefined): Value {
  if (text.length > SHORT_LETTERS) return readText(input, text, express)
  const known = typedTexts.get(input) ?? new Map<string, Value>()
  typedTexts.set(input, known)
  const before = known.get(text)
  if (before !== undefined) return before
  const plain = readText(input, text, undefined)
  if (plain === 'pending') return express === undefined ? plain : readText(input, text, express)
  if (known.size >= MOST_TYPED) known.clear()
  known.set(text, plain)
  return plain
}

/** A field as if its favourable assumption had gone the other way, and the text that says so. */
export type Contrary = { readonly field: Field; readonly text: string }

/** Undefined when the field rests on no favourable assumption, or none whose contrary is known (for this kind of line). */
export function contraryOf(field: Field, kind: LineKind | undefined): Contrary | undefined {
  const rule = field.input.whenEmpty
  if (field.state !== 'assumed' || rule.do !== 'assume' || !rule.favourable) return undefined
  const usual = rule.contraryOfKind && kind && usualLoadOf(kind)[rule.contraryOfKind]
  const text = usual === undefined ? rule.contrary : printText(usual, quantityOf(field.input))
  if (text === undefined) return undefined
  const read = usual === undefined ? readOwn(field.input, text) : readText(field.input, text, undefined)
  return typeof read === 'object' && 'value' in read ? { field: { ...field, value: read.value }, text } : undefined
}

const quantityOf = ({ type }: Input): Quantity => (type.is === 'number' ? type.quantity : 'number')

/** A list of the most numbers, each as long as it may be: nothing longer is even looked through. */
const MOST_LETTERS = 20_100

function readText(input: Input, text: string, express: Express | undefined): Value {
  if (text.trim() === '') return 'empty'
  const refuse = (code: string, message: string): Value => ({ issue: { key: input.key, code, message } })
  if (text.length > MOST_LETTERS)
    return refuse('too-long', `That is ${text.length} characters; no field takes more than ${MOST_LETTERS}.`)
  switch (input.type.is) {
    case 'choice': {
      const wanted = text.trim()
      const found = input.type.options.find((o) => o.value === wanted)
      if (found) return { value: found.value }
      const some = input.type.options.slice(0, 3).map((o) => o.label)
      return refuse(
        'unknown-choice',
        `“${quote(wanted)}” is not one of the choices; choose one such as ${some.join('; ')}.`,
      )
    }
    case 'flag': {
      const read = parseFlag(text)
      if (read.is === 'flag') return { value: read.on }
      return read.is === 'refused' ? refuse(read.code, read.message) : 'empty'
    }
    case 'tolerance': {
      const read = parseTolerance(text)
      if (read.is === 'tolerance') return { value: { lowFrac: read.lowFrac, highFrac: read.highFrac } }
      return read.is === 'refused' ? refuse(read.code, read.message) : 'empty'
    }
    case 'level':
      return readLevel(input, input.type, text, express)
    case 'column': {
      const read = readColumn(input.type, text)
      return read.is === 'entries' ? { value: read.entries } : refuse(read.code, read.message)
    }
    case 'number':
      return input.type.many ? readList(input, text, express) : readNumber(input, text, express)
  }
}

/** A level is read as a number of dB, and its unit beside it. */
function readLevel(
  input: Input,
  { min, max }: { readonly min: number; readonly max: number },
  text: string,
  express: Express | undefined,
): Value {
  const read = readNumber({ ...input, type: { is: 'number', quantity: 'level', min, max } }, text, express)
  if (typeof read !== 'object' || !('value' in read) || typeof read.value !== 'number') return read
  const unit = levelUnitOf(text)
  return { value: { db: read.value, ...(unit === undefined ? {} : { unit }) } }
}

function readNumber(input: Input, text: string, express: Express | undefined): Value {
  if (input.type.is !== 'number') return 'empty'
  const { quantity, category } = input.type
  const first = parseQuantity(category === undefined ? text : levelInCategory(text, category), quantity)
  const read = first.is === 'expression' ? express?.(first.text, quantity) : first
  if (read === undefined) return 'pending'
  if (read.is === 'empty') return 'empty'
  if (read.is === 'refused') return { issue: { key: input.key, code: read.code, message: read.message } }
  if (read.is === 'expression') return 'pending'
  const other = otherVolts(input.type.volts, text, read.si)
  if (other !== undefined) return { issue: { key: input.key, code: 'other-volts', message: other } }
  const out = rangeIssue(input, read.si)
  return out ? { issue: out } : { value: read.si }
}

/** A list that holds expressions is read item by item, so that each may be calculated and each refusal names its item. */
function readList(input: Input, text: string, express: Express | undefined): Value {
  if (input.type.is !== 'number') return 'empty'
  const plain = parseList(text, input.type.quantity)
  if (plain.is === 'empty') return 'empty'
  if (plain.is === 'refused') return { issue: { key: input.key, code: plain.code, message: plain.message } }
  const values: number[] = []
  for (const item of text.split(';')) {
    const read = readNumber(input, item, express)
    if (read === 'pending' || (typeof read === 'object' && 'issue' in read)) return read
    if (read !== 'empty' && typeof read.value === 'number') values.push(read.value)
  }
  return values.length === 0 ? 'empty' : { value: values }
}

function rangeIssue(input: Input, si: number): Issue | undefined {
  if (input.type.is !== 'number') return undefined
  const { min, max, quantity } = input.type
  if (si >= min && si <= max) return undefined
  const from = formatQuantity(min, quantity)
  const to = formatQuantity(max, quantity)
  return {
    key: input.key,
    code: 'out-of-range',
    message: `${formatQuantity(si, quantity)} is outside what this field works with; give ${QUANTITIES[quantity].word} from ${from} to ${to}.`,
  }
}

/**
 * Whether a field still holds the usual value it started with: an assumption, though it stands in the field where it can
 * be changed. False where the descriptor gives no reason for the value.
 */
export function isUsual({ state, text, input }: Field): boolean {
  return state === 'value' && input.whenEmpty.do === 'assume' && text.trim() === input.defaultText
}

/** Whether two texts say the same in this field: "36" and "36 dB". */
export function saySame(input: Input, one: string, other: string, express?: Express): boolean {
  if (one.trim() === other.trim()) return true
  const [first, second] = [readText(input, one, express), readText(input, other, express)]
  const isRead = (read: Value): read is { value: GivenValue } => typeof read === 'object' && 'value' in read
  return isRead(first) && isRead(second) && JSON.stringify(first.value) === JSON.stringify(second.value)
}

/** The numbers a text gives, in SI units, calculations worked out; none where it is refused or not worked out yet. */
export function numbersIn(text: string, quantity: Quantity, express?: Express): readonly number[] {
  const plain = parseList(text, quantity)
  if (plain.is === 'values') return plain.si
  if (plain.is !== 'expression') return []
  const readings = plain.text.split(';').map((item) => {
    const read = parseQuantity(item, quantity)
    return read.is === 'expression' ? express?.(read.text, quantity) : read
  })
  const values = readings.flatMap((read) => (read?.is === 'value' ? [read.si] : []))
  return values.length === readings.length ? values : []
}

const unclaimedFields = new WeakMap<Input, Field>()

/** An input no fact of the line is for: what its descriptor says of it, the same object for every line. */
export function unclaimed(input: Input): Field {
  const known = unclaimedFields.get(input) ?? readField(input, undefined, {})
  unclaimedFields.set(input, known)
  return known
}
