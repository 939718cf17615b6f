import { expect, it } from 'vitest'
import { tryDamagedNetworks } from './read-fuzz.ts'

it('takes 3,000 damaged files as a network or a sentence, none in more than a second', () => {
  const { read, refused } = tryDamagedNetworks(3000)
  expect(read).toBeGreaterThan(100)
  expect(refused).toBeGreaterThan(100)
})
