import { expect, it } from 'vitest'
import { tryDamagedNetworks } from './read-fuzz.ts'

it('takes 100,000 damaged files as a network or a sentence, none in more than a second', { timeout: 600_000 }, () => {
  const { read, refused } = tryDamagedNetworks(100_000)
  expect(read).toBeGreaterThan(3000)
  expect(refused).toBeGreaterThan(3000)
})
