/**
 * Any network of two-terminal branches at one frequency, solved by its nodes: complex Gaussian elimination with pivots
 * on the node-admittance matrix, the source current one more unknown, so that a source of 0 Ω is no special case.
 * Shares nothing with the chain matrix it judges. One network at a time, in memory that is used again.
 */

/** The node everything is measured against. */
export const CHASSIS = -1

const MAX_SIZE = 16
const WIDTH = MAX_SIZE + 1
const re = new Float64Array(MAX_SIZE * WIDTH)
const im = new Float64Array(MAX_SIZE * WIDTH)
let nodes = 0

/** Starts a network of `count` nodes, numbered from 0. */
export function begin(count: number): void {
  if (count >= MAX_SIZE) throw new RangeError('too many nodes')
  nodes = count
  re.fill(0)
  im.fill(0)
}

function add(row: number, column: number, yRe: number, yIm: number): void {
  const at = row * WIDTH + column
  re[at] = (re[at] as number) + yRe
  im[at] = (im[at] as number) + yIm
}

/** A branch of admittance y between two nodes; either may be the chassis. */
export function admittance(from: number, to: number, yRe: number, yIm: number): void {
  if (from !== CHASSIS) add(from, from, yRe, yIm)
  if (to !== CHASSIS) add(to, to, yRe, yIm)
  if (from === CHASSIS || to === CHASSIS) return
  add(from, to, -yRe, -yIm)
  add(to, from, -yRe, -yIm)
}

/** A branch of impedance z, not zero, between two nodes. */
export function impedance(from: number, to: number, zRe: number, zIm: number): void {
  const square = zRe * zRe + zIm * zIm
  admittance(from, to, zRe / square, -zIm / square)
}

type Complex = readonly [re: number, im: number]
/** A symmetric two by two: both ends, and what couples them. */
type Coupled = { readonly first: Complex; readonly second: Complex; readonly mutual: Complex }

const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c]
const minus = ([a, b]: Complex, [c, d]: Complex): Complex => [a - c, b - d]
const over = (a: Complex, [c, d]: Complex): Complex => {
  const square = c * c + d * d
  const [re, im] = times(a, [c, -d])
  return [re / square, im / square]
}

function inverse({ first, second, mutual }: Coupled): Coupled {
  const det = minus(times(first, second), times(mutual, mutual))
  return { first: over(second, det), second: over(first, det), mutual: over([-mutual[0], -mutual[1]], det) }
}

export type Windings = {
  readonly firstH: number
  readonly secondH: number
  readonly mutualH: number
  readonly ohm: number
  /** across each coil */
  readonly farads: number
}

/** Two coils through one core, each its resistance in series and its capacitance across: stamped as one coupled branch. */
export function windings(
  [from, to]: readonly [number, number],
  [from2, to2]: readonly [number, number],
  { firstH, secondH, mutualH, ohm, farads }: Windings,
  w: number,
): void {
  const coils = inverse({ first: [0, w * firstH], second: [0, w * secondH], mutual: [0, w * mutualH] })
  const withF = ([yRe, yIm]: Complex): Complex => [yRe, yIm + w * farads]
  const z = inverse({ ...coils, first: withF(coils.first), second: withF(coils.second) })
  const withOhm = ([zRe, zIm]: Complex): Complex => [zRe + ohm, zIm]
  const y = inverse({ ...z, first: withOhm(z.first), second: withOhm(z.second) })
  admittance(from, to, ...y.first)
  admittance(from2, to2, ...y.second)
  // The current of one coil for the volts across the other, both ways.
  for (const [a, b, c, d] of [
    [from, to, from2, to2],
    [from2, to2, from, to],
  ] as const)
    for (const [row, column, sign] of [
      [a, c, 1],
      [a, d, -1],
      [b, c, -1],
      [b, d, 1],
    ] as const)
      if (row !== CHASSIS && column !== CHASSIS) add(row, column, sign * y.mutual[0], sign * y.mutual[1])
}

/** 1 V behind z from the node `back` to `node`, once every branch stands. The network is used up by it. */
export function solve(node: number, zRe: number, zIm: number, back = CHASSIS): void {
  const size = nodes + 1
  add(node, nodes, -1, 0)
  add(nodes, node, 1, 0)
  if (back !== CHASSIS) {
    add(back, nodes, 1, 0)
    add(nodes, back, -1, 0)
  }
  add(nodes, nodes, zRe, zIm)
  add(nodes, size, 1, 0)
  for (let k = 0; k < size; k++) eliminate(k, size)
}

/** Volts of a node of the network solved last. */
export function voltsOf(wanted: number): readonly [re: number, im: number] {
  return divided(wanted * WIDTH + nodes + 1, wanted * WIDTH + wanted)
}

/** Volts of a node for 1 V behind z at `node`. */
export function voltsAt(wanted: number, node: number, zRe: number, zIm: number): readonly [re: number, im: number] {
  solve(node, zRe, zIm)
  return voltsOf(wanted)
}

function divided(over: number, under: number): readonly [number, number] {
  const [aRe, aIm, bRe, bIm] = [re[over] as number, im[over] as number, re[under] as number, im[under] as number]
  const square = bRe * bRe + bIm * bIm
  return [(aRe * bRe + aIm * bIm) / square, (aIm * bRe - aRe * bIm) / square]
}

/** Clears column `k` from every other row, after the largest entry below was brought up. */
function eliminate(k: number, size: number): void {
  bringUpLargest(k, size)
  const [pRe, pIm] = [re[k * WIDTH + k] as number, im[k * WIDTH + k] as number]
  const p2 = pRe * pRe + pIm * pIm
  for (let row = 0; row < size; row++) {
    const at = row * WIDTH + k
    const [aRe, aIm] = [re[at] as number, im[at] as number]
    if (row === k || (aRe === 0 && aIm === 0)) continue
    const fRe = (aRe * pRe + aIm * pIm) / p2
    const fIm = (aIm * pRe - aRe * pIm) / p2
    for (let column = k; column <= size; column++) {
      const [cRe, cIm] = [re[k * WIDTH + column] as number, im[k * WIDTH + column] as number]
      add(row, column, fIm * cIm - fRe * cRe, -fRe * cIm - fIm * cRe)
    }
  }
}

function bringUpLargest(k: number, size: number): void {
  let pivot = k
  let largest = -1
  for (let row = k; row < size; row++) {
    const at = row * WIDTH + k
    const square = (re[at] as number) ** 2 + (im[at] as number) ** 2
    if (square <= largest) continue
    largest = square
    pivot = row
  }
  if (pivot === k) return
  for (let column = k; column <= size; column++) {
    for (const side of [re, im]) {
      const kept = side[k * WIDTH + column] as number
      side[k * WIDTH + column] = side[pivot * WIDTH + column] as number
      side[pivot * WIDTH + column] = kept
    }
  }
}
