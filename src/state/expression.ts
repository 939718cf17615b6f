/** Works out calculations typed into fields. The one place that loads mathjs, and only when it is first needed. */
import { signal } from '@preact/signals'
import { acceptValue } from '../calc/quantity/accept.ts'
import { formatQuantity } from '../calc/quantity/format.ts'
import { bracketLiterals } from '../calc/quantity/literals.ts'
import type { Quantity } from '../calc/quantity/quantity.ts'
import { MAX_TEXT_LENGTH, type Reading, type Refused, refuse } from '../calc/quantity/reading.ts'
import {
  ConstantNode,
  FunctionNode,
  type Node,
  OperatorNode,
  Other,
  ParenthesisNode,
  SymbolNode,
} from './arithmetic.ts'

/** Takes a calculation of plain numbers; gives a finite value or a refusal. Never throws. */
export type Calculator = (text: string) => number | Refused

const PLAIN_SIGNS = /^[\da-z.+\-*/^(), ]*$/u
const CACHE_SIZE = 500
// literals grow when prefixes become powers of ten
const MAX_READY_LENGTH = 8 * MAX_TEXT_LENGTH
const RETRY_MS = 5_000

const NOT_ARITHMETIC = refuse(
  'not-allowed',
  'That is more than a calculation; use numbers, + - * / ^, brackets, pi and functions such as sqrt or log10.',
)
const NOT_COMPLETE = refuse(
  'cannot-calculate',
  'That calculation is not complete; write it like 2*(4.7n+330p), with every bracket closed.',
)
const MISSING = refuse(
  'calculator-missing',
  'Calculations are not on this device yet; go online once to fetch them, or write the result as a plain number.',
)

type Parse = (text: string) => Node

/** A type of function has one signature here: a text. */
const typed = Object.assign((_name: string, forms: Readonly<Record<string, unknown>>) => forms['string'], {
  addConversion: () => undefined,
})

/** The parser of mathjs on nodes of our own: its functions, units, matrices and their types stay out of the app. */
async function openParser(): Promise<Parse> {
  const { createParse } = await import('mathjs/number')
  return createParse({
    typed,
    numeric: (text: string) => Number(text),
    config: { number: 'number', numberFallback: 'number' },
    ConstantNode,
    FunctionNode,
    OperatorNode,
    ParenthesisNode,
    SymbolNode,
    AccessorNode: Other,
    ArrayNode: Other,
    AssignmentNode: Other,
    BlockNode: Other,
    ConditionalNode: Other,
    FunctionAssignmentNode: Other,
    IndexNode: Other,
    ObjectNode: Other,
    RangeNode: Other,
    RelationalNode: Other,
  })
}

function calculatorOn(parse: Parse): Calculator {
  return (text) => {
    if (text.length > MAX_READY_LENGTH) {
      return refuse('too-long', `That is ${text.length} characters; write at most ${MAX_TEXT_LENGTH}.`)
    }
    if (!PLAIN_SIGNS.test(text)) return NOT_ARITHMETIC
    try {
      const root = parse(text)
      if (!root.isArithmetic()) return NOT_ARITHMETIC
      let reason = 'comes out too large to calculate with; write smaller numbers.'
      const value = root.value((because) => {
        reason = because
      })
      return Number.isFinite(value) ? value : refuse('not-finite', `That ${reason}`)
    } catch {
      return NOT_COMPLETE
    }
  }
}

type Engine = Calculator | 'failed' | undefined

const engine = signal<Engine>(undefined)
let loading: Promise<Engine> | undefined
let failedAtMs = Number.NEGATIVE_INFINITY

/** Fetches the calculator once; a fetch that failed is tried again on a later call. */
function load(): Promise<Engine> {
  loading ??= openParser().then(
    (parse) => {
      engine.value = calculatorOn(parse)
      return engine.value
    },
    () => {
      failedAtMs = Date.now()
      loading = undefined
      engine.value = 'failed'
      return engine.value
    },
  )
  return loading
}

/** The locked-down calculator, for tests of its locks. Undefined when it cannot be fetched. */
export async function openCalculator(): Promise<Calculator | undefined> {
  const opened = await load()
  return typeof opened === 'function' ? opened : undefined
}

function evaluateWith(calculate: Calculator, text: string, quantity: Quantity): Reading {
  const ready = bracketLiterals(text, quantity)
  if (ready.is === 'refused') return ready
  const si = calculate(ready.text)
  if (typeof si !== 'number') return si
  return acceptValue({ si, typed: formatQuantity(si, 'number', 6), bare: true }, quantity)
}

/**
 * Works out a calculation typed into a field; the result is taken in the SI unit of the field's quantity, dimensions are
 * not checked. Resolves to a value or a refusal with a sentence, also when the calculator cannot be fetched. Never
 * rejects.
 */
export async function evaluateExpression(text: string, quantity: Quantity): Promise<Reading> {
  const calculate = await openCalculator()
  return calculate ? evaluateWith(calculate, text, quantity) : MISSING
}

const cache = new Map<string, Reading>()

function cached(calculate: Calculator, text: string, quantity: Quantity): Reading {
  const key = `${quantity}\n${text}`
  const known = cache.get(key)
  if (known) return known
  const reading = evaluateWith(calculate, text, quantity)
  if (cache.size >= CACHE_SIZE) cache.clear()
  cache.set(key, reading)
  return reading
}

/**
 * The same for use inside a computed signal: undefined while the calculator is being fetched, after which everything
 * that asked is computed again. Refuses with a sentence when it cannot be fetched, and tries again from time to time.
 */
export function expressionReading(text: string, quantity: Quantity): Reading | undefined {
  const current = engine.value
  if (typeof current === 'function') return cached(current, text, quantity)
  if (current === undefined || Date.now() - failedAtMs > RETRY_MS) void load()
  return current === 'failed' ? MISSING : undefined
}
