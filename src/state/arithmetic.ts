/**
 * What the parser of typed calculations builds: nodes of plain arithmetic, and `Other` for all else its language has.
 * Each gives its value, or undefined with the reason noted.
 */

/** Notes why there is no value; the last note counts. */
export type Because = (reason: string) => void

const FUNCTIONS: Readonly<Record<string, (...values: number[]) => number>> = {
  add: (a = 0, b = 0) => a + b,
  subtract: (a = 0, b = 0) => a - b,
  multiply: (a = 0, b = 0) => a * b,
  divide: (a = 0, b = 0) => a / b,
  pow: (a = 0, b = 0) => a ** b,
  unaryMinus: (a = 0) => -a,
  unaryPlus: (a = 0) => a,
  sqrt: (a = 0) => Math.sqrt(a),
  log10: (a = 0) => Math.log10(a),
  log: (a = 0, base = Math.E) => (base === Math.E ? Math.log(a) : Math.log(a) / Math.log(base)),
  exp: (a = 0) => Math.exp(a),
  abs: (a = 0) => Math.abs(a),
  sin: (a = 0) => Math.sin(a),
  cos: (a = 0) => Math.cos(a),
  atan: (a = 0) => Math.atan(a),
  min: Math.min,
  max: Math.max,
}
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
  ...['sqrt', 'log10', 'log', 'exp', 'abs', 'sin', 'cos', 'atan', 'min', 'max', 'pow'],
])

const ROOT = 'takes the root of a negative number; write one that is not negative.'
const LOGARITHM = 'takes the logarithm of zero or less; write a positive number.'
const BASE = 'takes a logarithm to a base that is none; write a positive base other than 1.'
const DIVISOR = 'divides by zero; write a divisor that is not zero.'
const FRACTIONAL = 'raises a negative number to a fraction; for the cube root of −8 write -(8^(1/3)).'

/** Why a function has no finite result at these values; undefined: it is only too large. */
function reasonOf(name: string, [a = 0, b = 0]: readonly number[], count: number): string | undefined {
  if (name === 'divide' && b === 0) return DIVISOR
  if (name === 'sqrt' && a < 0) return ROOT
  if (name === 'pow' && a < 0 && !Number.isInteger(b)) return FRACTIONAL
  if (name === 'pow' && a === 0 && b < 0) return DIVISOR
  if (name.startsWith('log') && a <= 0) return LOGARITHM
  return name === 'log' && count > 1 && (b <= 0 || b === 1) ? BASE : undefined
}

/** Marked as the parser wants its nodes to be. */
export class Node {
  get isNode(): true {
    return true
  }
  /** whether it is arithmetic through and through: nothing else is ever worked out */
  isArithmetic(): boolean {
    return false
  }
  value(_because: Because): number {
    return Number.NaN
  }
}

export class ConstantNode extends Node {
  readonly isConstantNode = true
  constructor(private readonly held: unknown) {
    super()
  }
  override isArithmetic(): boolean {
    return typeof this.held === 'number'
  }
  override value(): number {
    return typeof this.held === 'number' ? this.held : Number.NaN
  }
}

export class SymbolNode extends Node {
  readonly isSymbolNode = true
  constructor(readonly name: string) {
    super()
  }
  override isArithmetic(): boolean {
    return this.name === 'pi'
  }
  override value(): number {
    return Math.PI
  }
}

export class ParenthesisNode extends Node {
  readonly isParenthesisNode = true
  constructor(readonly content: Node) {
    super()
  }
  override isArithmetic(): boolean {
    return this.content.isArithmetic()
  }
  override value(because: Because): number {
    return this.content.value(because)
  }
}

function call(name: string, args: readonly Node[], because: Because): number {
  const values = args.map((arg) => arg.value(because))
  const reason = reasonOf(name, values, values.length)
  if (reason !== undefined) because(reason)
  return reason === undefined ? (FUNCTIONS[name]?.(...values) ?? Number.NaN) : Number.NaN
}

export class OperatorNode extends Node {
  readonly isOperatorNode = true
  constructor(
    readonly op: string,
    readonly fn: string,
    readonly args: readonly Node[],
    readonly implicit = false,
  ) {
    super()
  }
  override isArithmetic(): boolean {
    return OPERATORS.has(this.fn) && !this.implicit && this.args.every((arg) => arg.isArithmetic())
  }
  override value(because: Because): number {
    return call(this.fn, this.args, because)
  }
}

export class FunctionNode extends Node {
  readonly isFunctionNode = true
  constructor(
    readonly fn: Node,
    readonly args: readonly Node[],
  ) {
    super()
  }
  private name(): string {
    return this.fn instanceof SymbolNode ? this.fn.name : ''
  }
  override isArithmetic(): boolean {
    return CALLABLE.has(this.name()) && this.args.length > 0 && this.args.every((arg) => arg.isArithmetic())
  }
  override value(because: Because): number {
    return call(this.name(), this.args, because)
  }
}

/** Names, strings, matrices, assignments and the rest of the parser's language: never worked out. */
export class Other extends Node {}
