import { describe, expect, it } from 'vitest'
import { strikeTogether } from '../../../../src/calc/connector/whole/strike/solve-together.ts'
import { AT, BEFORE, GAMMA, STAGES, WEIGHTS, WRONG } from '../../../../src/calc/connector/whole/strike/tableau.ts'
import type { Struck, StruckLine } from '../../../../src/calc/connector/whole/strike/together.ts'
import { atOnce } from '../../../../src/calc/line/evaluate.ts'
import { waveformById } from '../../../../src/reference/waveforms.ts'
import { circuitOfDeck, DECKS, type Deck } from '../../../support/surge-deck.ts'

const alone = (deck: Deck, more: Partial<Struck> = {}): Struck => ({
  spec: waveformById(deck.circuit.waveform)?.shape as Struck['spec'],
  ...(deck.circuit.waveform === 'wf3'
    ? { ring: { hz: deck.circuit.ringHz ?? 1e6, q: deck.circuit.decayQ ?? 15 } }
    : {}),
  bondOhm: 0,
  bondH: 0,
  lines: [{ circuit: circuitOfDeck(deck), count: 1 }],
  groups: [],
  ...more,
})

/** The node ahead of a coupling capacitor is not watched here. */
const decks = DECKS.filter(({ circuit }) => circuit.couplingF === undefined)

describe('one line on a plate at rest', () => {
  it.each(decks.map((deck) => [deck.id, deck] as const))('%s is the circuit it was in ngspice', (id, deck) => {
    const found = atOnce(strikeTogether(alone(deck)))
    const [own] = found.lines
    const { expected } = deck
    const pairs = [
      [own?.clampV, expected.clampV],
      [own?.clampA, expected.peakA],
      [own?.energyJ, expected.energyJ],
      [own?.connectorV, expected.connectorV],
      [own?.loadV, expected.loadV],
    ] as const
    expect(found.isWhole).toBe(true)
    expect(found.bounceV).toBeLessThan(1e-6)
    // worst of today 0.015 %; of the spike a lead makes of a discharge, which lasts half a nanosecond, 0.104 %
    const most = id === 'R6b' ? 1.1e-3 : 2e-4
    for (const [ours, theirs] of pairs)
      if (theirs !== undefined) expect(Math.abs((ours ?? 0) / theirs - 1)).toBeLessThan(most)
  })
})

describe('lines on one plate', () => {
  const [deck] = DECKS
  const own = (deck as Deck) && (alone(deck as Deck).lines[0] as StruckLine)
  const bond = { bondOhm: 10e-3, bondH: 10e-9 }

  it('alike are worked out once and count as many', () => {
    const three = atOnce(strikeTogether(alone(deck as Deck, { ...bond, lines: [own, own, own] })))
    const once = atOnce(strikeTogether(alone(deck as Deck, { ...bond, lines: [{ ...own, count: 3 }] })))
    expect(once.bounceV / three.bounceV - 1).toBeLessThan(1e-9)
    expect(once.lines[0]?.energyJ).toBeCloseTo(three.lines[2]?.energyJ ?? 0, 12)
  })

  it('lift the plate by what all of them drive through it', () => {
    const resistive = atOnce(
      strikeTogether(alone(deck as Deck, { bondOhm: 10e-3, bondH: 0, lines: [{ ...own, count: 5 }] })),
    )
    const amps = resistive.lines[0]?.clampA ?? 0
    expect(resistive.bounceV).toBeCloseTo(5 * amps * 10e-3, 3)
    expect(resistive.lines[0]?.loadV).toBeGreaterThan((resistive.lines[0]?.clampV ?? 0) + 0.9 * resistive.bounceV)
  })

  it('can be abandoned between two pauses, and say how far they are', () => {
    const running = strikeTogether(alone(deck as Deck, { ...bond, lines: [{ ...own, count: 2 }] }))
    let before = 0
    for (let i = 0; i < 3; i++) {
      const step = running.next()
      expect(step.done).toBe(false)
      if (!step.done) {
        expect(step.value.doneFrac).toBeGreaterThanOrEqual(before)
        before = step.value.doneFrac
      }
    }
    expect(running.return(undefined as never).done).toBe(true)
  })

  it('go into a worker and come back as they were', () => {
    const asked = alone(deck as Deck, { ...bond, lines: [own] })
    const found = atOnce(strikeTogether(structuredClone(asked)))
    expect(structuredClone(found)).toEqual(atOnce(strikeTogether(asked)))
  })
})

describe('the step', () => {
  const row = (i: number) => [...(BEFORE[i] as readonly number[]), GAMMA]
  const a = (i: number, j: number) => row(i)[j] ?? 0
  const all = Array.from({ length: STAGES }, (_, i) => i)
  const sum = (of: (i: number) => number) => all.reduce((total, i) => total + of(i), 0)

  it('is of order 4, and what is taken off of order 3', () => {
    const orders = (b: (i: number) => number) =>
      [
        [sum(b), 1],
        [sum((i) => b(i) * (AT[i] as number)), 1 / 2],
        [sum((i) => b(i) * (AT[i] as number) ** 2), 1 / 3],
        [sum((i) => b(i) * sum((j) => a(i, j) * (AT[j] as number))), 1 / 6],
        [sum((i) => b(i) * (AT[i] as number) ** 3), 1 / 4],
        [sum((i) => b(i) * (AT[i] as number) * sum((j) => a(i, j) * (AT[j] as number))), 1 / 8],
        [sum((i) => b(i) * sum((j) => a(i, j) * (AT[j] as number) ** 2)), 1 / 12],
        [sum((i) => b(i) * sum((j) => a(i, j) * sum((k) => a(j, k) * (AT[k] as number)))), 1 / 24],
      ] as const
    for (const [found, wanted] of orders((i) => WEIGHTS[i] as number)) expect(found).toBeCloseTo(wanted, 12)
    const third = orders((i) => (WEIGHTS[i] as number) - (WRONG[i] as number)).slice(0, 4)
    for (const [found, wanted] of third) expect(found).toBeCloseTo(wanted, 12)
    for (const i of all) expect(sum((j) => a(i, j))).toBeCloseTo(AT[i] as number, 12)
  })

  it('ends on its last stage, so that nothing stiff is left', () => {
    for (const j of all) expect(a(STAGES - 1, j)).toBe(WEIGHTS[j])
  })
})
