/** Complex numbers as pairs, for the few places where a network is not a chain. */
export type Complex = readonly [re: number, im: number]

export const ZERO: Complex = [0, 0]
export const ONE: Complex = [1, 0]

export const add = (a: Complex, b: Complex): Complex => [a[0] + b[0], a[1] + b[1]]
export const subtract = (a: Complex, b: Complex): Complex => [a[0] - b[0], a[1] - b[1]]
export const multiply = (a: Complex, b: Complex): Complex => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]]
export const magnitude = ([re, im]: Complex): number => Math.hypot(re, im)

export function divide(a: Complex, b: Complex): Complex {
  const square = b[0] * b[0] + b[1] * b[1]
  return [(a[0] * b[0] + a[1] * b[1]) / square, (a[1] * b[0] - a[0] * b[1]) / square]
}
