/** What must hold of any text that is read as a Touchstone file. */
import { expect } from 'vitest'
import { atOnce } from '../../../src/calc/line/evaluate.ts'
import { readTouchstone } from '../../../src/calc/touchstone/read.ts'
import fc from '../../support/property.ts'
import { damagedFiles } from '../trace/damaged.ts'

const GOOD = [
  '! one port\n# MHz S RI R 50\n1 0.5 0.1\n2 0.4 0.2\n3 0.3 0.3\n',
  '# kHz Z MA R 75\n100 0.99 -4\n200 0.80 -22\n',
  '# GHz S DB R 50\n1 -20 0 -1 5 -1 5 -20 0\n2 -19 0 -2 5 -2 5 -19 0\n1.5 0.7 0.6 9 0.3\n',
  '[Version] 2.0\n# MHz Y RI R 50\n[Number of Ports] 2\n[Two-Port Data Order] 12_21\n[Number of Frequencies] 2\n[Reference] 50 75\n[Matrix Format] Lower\n[Network Data]\n1 1 0 2 0 3 0\n2 1 0 2 0 3 0\n[End]\n',
  `[Version] 2.0\n# MHz S MA R 50\n[Number of Ports] 4\n[Number of Frequencies] 1\n[Mixed-Mode Order] D1,2 D3,4 C1,2 C3,4\n[Network Data]\n1 ${'0.5 10 '.repeat(16)}\n[End]`,
]
const NAMES = ['a', 'a', 'a', 'a.ts', 'a.ts', 'a.s1p', 'a.s2p', 'a.s4p', 'a.s99p']

/** A network that is whole, or a sentence; each within a second. Gives how many were read. */
export function tryDamagedNetworks(runs: number): { readonly read: number; readonly refused: number } {
  const found = { read: 0, refused: 0 }
  fc.assert(
    fc.property(damagedFiles(GOOD), fc.constantFrom(...NAMES), (text, fileName) => {
      const startedMs = performance.now()
      const reading = atOnce(readTouchstone(text, { fileName }))
      expect(performance.now() - startedMs).toBeLessThan(1000)
      if (!reading.ok) {
        found.refused += 1
        expect(reading.message).toMatch(/^[A-Z[].{15,}\.$/su)
        return
      }
      found.read += 1
      const { hz, re, im, portCount, referenceOhm } = reading.network
      expect(hz.length).toBeGreaterThan(0)
      expect([re.length, im.length]).toEqual([hz.length * portCount ** 2, hz.length * portCount ** 2])
      expect(referenceOhm.length).toBe(portCount)
      const isGood =
        hz.every((f, k) => Number.isFinite(f) && f > (hz[k - 1] ?? -1)) &&
        re.every(Number.isFinite) &&
        im.every(Number.isFinite)
      expect(isGood).toBe(true)
    }),
    { numRuns: runs },
  )
  return found
}
