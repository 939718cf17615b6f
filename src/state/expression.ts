/** Works out calculations typed into fields. The one place that loads mathjs, and only when it is first needed. */
import { signal } from '@preact/signals'
import type { FactoryFunctionMap, MathNode } from 'mathjs/number'
import { acceptValue } from '../calc/quantity/accept.ts'
import { formatQuantity } from '../calc/quantity/format.ts'
import { bracketLiterals } from '../calc/quantity/literals.ts'
import type { Quantity } from '../calc/quantity/quantity.ts'
import { MAX_TEXT_LENGTH, type Reading, type Refused, refuse } from '../calc/quantity/reading.ts'

/** Takes a calculation of plain numbers; gives a finite value or a refusal. Never throws. */
export type Calculator = (text: string) => number | Refused

const OPERATORS: ReadonlySet<string> = new Set([
  'add',
  'subtract',
  'multiply',
  'divide',
  'pow',
  'unaryMinus',
  'unaryPlus',
])
const CALLABLE: ReadonlySet<string> = new Set([
  'sqrt',
  'log10',
  'log',
  'exp',
  'abs',
  'sin',
  'cos',
  'atan',
  'min',
  'max',
  'pow',
])
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

async function openMathjs() {
  // named one by one, so that the bundler keeps these and drops the rest
  const {
    create,
    parseDependencies,
    addDependencies,
    subtractDependencies,
    multiplyDependencies,
    divideDependencies,
    powDependencies,
    unaryMinusDependencies,
    unaryPlusDependencies,
    sqrtDependencies,
    log10Dependencies,
    logDependencies,
    expDependencies,
    absDependencies,
    sinDependencies,
    cosDependencies,
    atanDependencies,
    minDependencies,
    maxDependencies,
    piDependencies,
    isConstantNode,
    isFunctionNode,
    isOperatorNode,
    isParenthesisNode,
    isSymbolNode,
  } = await import('mathjs/number')
  const parts = {
    parseDependencies,
    addDependencies,
    subtractDependencies,
    multiplyDependencies,
    divideDependencies,
    powDependencies,
    unaryMinusDependencies,
    unaryPlusDependencies,
    sqrtDependencies,
    log10Dependencies,
    logDependencies,
    expDependencies,
    absDependencies,
    sinDependencies,
    cosDependencies,
    atanDependencies,
    minDependencies,
    maxDependencies,
    piDependencies,
  } as FactoryFunctionMap
  const nodeTests = { isConstantNode, isFunctionNode, isOperatorNode, isParenthesisNode, isSymbolNode }
  return { parse: create(parts, {}).parse, ...nodeTests }
}

type Mathjs = Awaited<ReturnType<typeof openMathjs>>

/** A whitelist of node kinds: names, strings, matrices, assignments and the rest of the language never get evaluated. */
function isArithmetic(node: MathNode, math: Mathjs): boolean {
  const all = (nodes: readonly MathNode[]) => nodes.every((inner) => isArithmetic(inner, math))
  if (math.isConstantNode(node)) return typeof node.value === 'number'
  if (math.isParenthesisNode(node)) return isArithmetic(node.content, math)
  if (math.isSymbolNode(node)) return node.name === 'pi'
  if (math.isOperatorNode(node)) return OPERATORS.has(node.fn) && !node.implicit && all(node.args)
  if (!math.isFunctionNode(node)) return false
  return math.isSymbolNode(node.fn) && CALLABLE.has(node.fn.name) && all(node.args)
}

function numberFrom(node: MathNode): number {
  const value: unknown = node.evaluate(new Map())
  return typeof value === 'number' ? value : Number.NaN
}

/** Why a calculation has no finite result, found by trying its parts. */
function noResult(root: MathNode, math: Mathjs): Refused {
  let reason = 'comes out too large to calculate with; write smaller numbers.'
  root.traverse((node) => {
    if (math.isOperatorNode(node) && (node.fn as string) === 'divide') {
      const divisor = node.args[1]
      if (divisor && numberFrom(divisor) === 0) reason = 'divides by zero; write a divisor that is not zero.'
    }
    if (!math.isFunctionNode(node) || !math.isSymbolNode(node.fn) || !node.args[0]) return
    const argument = numberFrom(node.args[0])
    const { name } = node.fn
    if (name === 'sqrt' && argument < 0) reason = 'takes the root of a negative number; write one that is not negative.'
    if (name.startsWith('log') && argument <= 0)
      reason = 'takes the logarithm of zero or less; write a positive number.'
  })
  return refuse('not-finite', `That ${reason}`)
}

function calculatorOn(math: Mathjs): Calculator {
  return (text) => {
    if (text.length > MAX_READY_LENGTH) {
      return refuse('too-long', `That is ${text.length} characters; write at most ${MAX_TEXT_LENGTH}.`)
    }
    if (!PLAIN_SIGNS.test(text)) return NOT_ARITHMETIC
    try {
      const root = math.parse(text)
      if (!isArithmetic(root, math)) return NOT_ARITHMETIC
      const value = numberFrom(root)
      return Number.isFinite(value) ? value : noResult(root, math)
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
  loading ??= openMathjs().then(
    (math) => {
      engine.value = calculatorOn(math)
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
