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
