/** Second opinion for circuits without memory: peaks and energy of each region in closed form. */
import { describe, expect, it } from 'vitest'
import { shapeTimes } from '../../../src/calc/surge/shape.ts'
import { integral, peakOf, powerOf } from '../../../src/calc/surge/trace.ts'
import { circuitOfDeck, DECKS, runSurge, shapeOfDeck } from '../../support/surge-deck.ts'

/** s(t) = k·(e^(−a·t) − e^(−b·t)); the 1.2/50 µs form is one with a = 1/τ, b = 1/τ + 1/τ1. */
const CONSTANTS: Readonly<Record<string, { k: number; a: number; b: number }>> = {
  R1: { k: 750 * 1.09405, a: 11354, b: 647265 },
  R2: { k: 300 * 2.33354, a: 12632.6, b: 43604.6 },
  R5a: { k: 1000 * 1.037, a: 1 / 68.22e-6, b: 1 / 68.22e-6 + 1 / 0.407e-6 },
}

function bisect(at: (t: number) => number, level: number, from: number, to: number): number {
  let [low, high] = [from, to]
  const rising = at(high) > at(low)
  for (let i = 0; i < 90; i++) {
    const middle = (low + high) / 2
    if (at(middle) < level === rising) low = middle
    else high = middle
  }
  return (low + high) / 2
}

describe('resistive circuits', () => {
  it.each(['R1', 'R2', 'R5a'])('%s: peak and energy agree with the closed form', (id) => {
    const deck = DECKS.find((d) => d.id === id)
    const constants = CONSTANTS[id]
    const part = deck?.circuit.suppressor
    if (!deck || !constants || !part) throw new Error(id)
    const { k, a, b } = constants
    const [rs, load] = [deck.circuit.ohm ?? 0, 10e3]
    // Thévenin of source and load: what the suppressor sees
    const share = load / (rs + load)
    const ohm = rs * share
    const open = (t: number) => share * k * (Math.exp(-a * t) - Math.exp(-b * t))
    const peakSec = Math.log(b / a) / (b - a)
    const on = bisect(open, part.breakdownV, 0, peakSec)
    const off = bisect(open, part.breakdownV, peakSec, 40 / a)
    const g = 1 / (ohm + part.dynamicOhm)
    // i = g·(open − Vbr) between on and off; ∫i and ∫i² of the exponentials
    const term = (rate: number) => (Math.exp(-rate * on) - Math.exp(-rate * off)) / rate
    const [A, V, span] = [share * k, part.breakdownV, off - on]
    const charge = g * (A * (term(a) - term(b)) - V * span)
    const square =
      g * g * (A * A * (term(2 * a) - 2 * term(a + b) + term(2 * b)) - 2 * A * V * (term(a) - term(b)) + V * V * span)
    const energyJ = V * charge + part.dynamicOhm * square
    const peakA = g * (open(peakSec) - V)

    const trace = runSurge(circuitOfDeck(deck), shapeOfDeck(deck))
    const amps = peakOf(trace.sec, trace.clampA)
    // worst today 2.3e-5: the peak between samples, and 1e-5 of stray conductance
    expect(Math.abs(amps.value / peakA - 1)).toBeLessThan(4e-5)
    expect(Math.abs(amps.sec / peakSec - 1)).toBeLessThan(0.01)
    expect(Math.abs(integral(trace.sec, powerOf(trace)) / energyJ - 1)).toBeLessThan(6e-5)
    expect(Math.abs(shapeTimes(shapeOfDeck(deck)).peakSec / peakSec - 1)).toBeLessThan(1e-4)
  })
})
