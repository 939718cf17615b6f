/** Every ngspice reference circuit through the solver the check uses. Truth: ngspice-39, netlists in the golden file. */
import { describe, expect, it } from 'vitest'
import { DECK_KEYS, DECKS, deckFigures, deckTolerance } from '../../support/surge-deck.ts'

describe('ngspice circuits', () => {
  it('are all here', () => {
    expect(DECKS.map(({ id }) => id)).toEqual('R1 R2 R3a R3b R4a R4b R4c R4d R4e R5a R5b R6a R6b'.split(' '))
    const figures = DECKS.flatMap(({ expected }) => DECK_KEYS.filter((key) => expected[key] !== undefined))
    expect(figures).toHaveLength(61)
  })

  it.each(DECKS.map((deck) => [deck.id, deck] as const))('%s agrees in volts, amperes and joules', (_id, deck) => {
    const got = deckFigures(deck)
    for (const key of DECK_KEYS) {
      const wanted = deck.expected[key]
      if (wanted === undefined) continue
      const off = Math.abs(got[key] / wanted - 1)
      expect(off, `${key} ${got[key]} against ${wanted}`).toBeLessThan(deckTolerance(key, wanted))
    }
  })
})

describe('the step', () => {
  it.each(DECKS.map((deck) => [deck.id, deck] as const))('%s does not depend on it to 1e-4', (_id, deck) => {
    const figures = (bend: number) => deckFigures(deck, { bend })
    // a quarter of the bend is half the step
    const [as, half] = [figures(1e-3), figures(2.5e-4)]
    for (const key of DECK_KEYS) {
      if (deck.expected[key] === undefined) continue
      expect(Math.abs(as[key] / half[key] - 1), `${key} ${as[key]} and ${half[key]}`).toBeLessThan(1e-4)
    }
  })
})
