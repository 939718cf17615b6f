import { expect, it } from 'vitest'
import { tryDamagedTraces } from './read-fuzz.ts'

it('takes 100,000 damaged files as a trace or a sentence, none in more than a second', { timeout: 600_000 }, () => {
  const { read, refused } = tryDamagedTraces(100_000)
  expect(read).toBeGreaterThan(5000)
  expect(refused).toBeGreaterThan(5000)
})
