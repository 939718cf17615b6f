import { expect, it } from 'vitest'
import { tryDamagedTraces } from './read-fuzz.ts'

it('takes 3,000 damaged files as a trace or a sentence, none in more than a second', () => {
  const { read, refused } = tryDamagedTraces(3000)
  expect(read).toBeGreaterThan(100)
  expect(refused).toBeGreaterThan(100)
})
