/** Every second random window. Another seed: SEED=…; another count: WINDOWS=50000. What they are asked and fought with: support/. */
import { expect, it } from 'vitest'
import { battle, TIMEOUT_MS, WINDOWS } from './support/table.ts'

it(`of ${WINDOWS} random windows no answer is refuted (even ones)`, { timeout: TIMEOUT_MS }, () => {
  const { count, fitted, inBand, doubts, chokesAlone, openers, modeOpeners, refuted } = battle(0, 2)
  const all = WINDOWS / 2
  expect(refuted).toEqual([])
  // enough of every answer, or nothing was proved
  expect(count.ok).toBeGreaterThan(0.1 * all)
  expect(fitted).toBeGreaterThan(0.1 * all)
  expect(count.fails).toBeGreaterThan(0.1 * all)
  expect(inBand).toBeGreaterThan(0)
  expect(doubts).toBeGreaterThan(0)
  expect(chokesAlone).toBeGreaterThan(0.01 * all)
  expect(openers).toBeGreaterThan(0.05 * all)
  expect(modeOpeners).toBeGreaterThan(0.01 * all)
})
