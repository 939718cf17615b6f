/**
 * One frequency of a two-port as a chain matrix with its denominator cleared: V1 = (a·V2 + b·I2)/q, I1 = (c·V2 + d·I2)/q.
 *
 *   S: a = ((1+S11)(1−S22)+S12S21)·√(R1/R2), b = ((1+S11)(1+S22)−S12S21)·√(R1R2),
 *      c = ((1−S11)(1−S22)−S12S21)/√(R1R2), d = ((1−S11)(1+S22)+S12S21)·√(R2/R1), q = 2·S21
 *   Z: a = Z11, b = |Z|, c = 1, d = Z22, q = Z21          Y: a = Y22, b = 1, c = |Y|, d = Y11, q = −Y21
 *   H: a = |H|, b = h11, c = h22, d = 1, q = −h21          G: a = 1, b = g22, c = g11, d = |G|, q = g21
 *
 * AD − BC = N12/N21 of S, Z and Y, and −N12/N21 of H and G: carried by itself, since the difference loses every digit
 * behind a good filter. Source: any network text; derived from the definitions, checked against another package.
 */
import { add, type Complex, divide, magnitude, multiply, ONE, subtract } from '../connector/complex.ts'
import type { Network, Parameter } from './types.ts'

export type Chain = {
  readonly a: Complex
  readonly b: Complex
  readonly c: Complex
  readonly d: Complex
  readonly q: Complex
  /** AD − BC: 1 for what is reciprocal */
  readonly det: Complex
}

const times = ([re, im]: Complex, factor: number): Complex => [re * factor, im * factor]
const minus = ([re, im]: Complex): Complex => [-re, -im]

/** One entry of the matrix at frequency number k; rows and columns from 0. */
export function entryAt({ re, im, portCount: n }: Network, k: number, row: number, column: number): Complex {
  const at = (k * n + row) * n + column
  return [re[at] as number, im[at] as number]
}

/** The chain matrix of a two-port at frequency number k, port 1 the source side. */
export function chainAt(network: Network, k: number): Chain {
  const n11 = entryAt(network, k, 0, 0)
  const n12 = entryAt(network, k, 0, 1)
  const n21 = entryAt(network, k, 1, 0)
  const n22 = entryAt(network, k, 1, 1)
  const across = multiply(n12, n21)
  const whole = subtract(multiply(n11, n22), across)
  const ratio = divide(n12, n21)
  switch (network.parameter) {
    case 'S': {
      const [r1 = 50, r2 = 50] = network.referenceOhm
      const [up1, down1] = [add(ONE, n11), subtract(ONE, n11)]
      const [up2, down2] = [add(ONE, n22), subtract(ONE, n22)]
      return {
        a: times(add(multiply(up1, down2), across), Math.sqrt(r1 / r2)),
        b: times(subtract(multiply(up1, up2), across), Math.sqrt(r1 * r2)),
        c: times(subtract(multiply(down1, down2), across), 1 / Math.sqrt(r1 * r2)),
        d: times(add(multiply(down1, up2), across), Math.sqrt(r2 / r1)),
        q: times(n21, 2),
        det: ratio,
      }
    }
    case 'Z':
      return { a: n11, b: whole, c: ONE, d: n22, q: n21, det: ratio }
    case 'Y':
      return { a: n22, b: ONE, c: whole, d: n11, q: minus(n21), det: ratio }
    case 'H':
      return { a: whole, b: n11, c: n22, d: ONE, q: minus(n21), det: minus(ratio) }
    case 'G':
      return { a: ONE, b: n22, c: n11, d: whole, q: n21, det: minus(ratio) }
  }
}

/**
 * Insertion loss in dB between a source and a load, both complex: 20·log10|(a·Zl + b + c·Zs·Zl + d·Zs)/(q·(Zs + Zl))|.
 * Infinity where nothing comes through. Definition of insertion loss.
 */
export function chainLossDb({ a, b, c, d, q }: Chain, sourceOhm: Complex, loadOhm: Complex): number {
  const through = add(
    add(multiply(a, loadOhm), b),
    add(multiply(multiply(c, sourceOhm), loadOhm), multiply(d, sourceOhm)),
  )
  const bare = multiply(q, add(sourceOhm, loadOhm))
  return 20 * Math.log10(magnitude(through) / magnitude(bare))
}

/** The four entries N11, N12, N21, N22 of another parameter; not finite where it does not exist (Z of a series part). */
export function entriesOf(
  { a, b, c, d, q, det }: Chain,
  parameter: Parameter,
  [r1 = 50, r2 = 50]: readonly number[],
): readonly [Complex, Complex, Complex, Complex] {
  const over = (value: Complex, by: Complex) => divide(value, by)
  const detQ = multiply(det, q)
  switch (parameter) {
    case 'Z':
      return [over(a, c), over(detQ, c), over(q, c), over(d, c)]
    case 'Y':
      return [over(d, b), over(minus(detQ), b), over(minus(q), b), over(a, b)]
    case 'H':
      return [over(b, d), over(detQ, d), over(minus(q), d), over(c, d)]
    case 'G':
      return [over(c, a), over(minus(detQ), a), over(q, a), over(b, a)]
    case 'S': {
      const ar = times(a, Math.sqrt(r2 / r1))
      const br = times(b, 1 / Math.sqrt(r1 * r2))
      const cr = times(c, Math.sqrt(r1 * r2))
      const dr = times(d, Math.sqrt(r1 / r2))
      const sum = add(add(ar, br), add(cr, dr))
      return [
        over(subtract(add(ar, br), add(cr, dr)), sum),
        over(times(detQ, 2), sum),
        over(times(q, 2), sum),
        over(subtract(add(br, dr), add(ar, cr)), sum),
      ]
    }
  }
}

/** Impedance of a one-port at frequency number k. */
export function impedanceAt(network: Network, k: number): Complex {
  const value = entryAt(network, k, 0, 0)
  switch (network.parameter) {
    case 'S':
      return times(divide(add(ONE, value), subtract(ONE, value)), network.referenceOhm[0] ?? 50)
    case 'Y':
    case 'G':
      return divide(ONE, value)
    default:
      return value
  }
}
