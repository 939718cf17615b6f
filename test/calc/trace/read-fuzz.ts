/** What must hold of any text that is read as a trace. */
import { expect } from 'vitest'
import { atOnce } from '../../../src/calc/line/evaluate.ts'
import { readTrace } from '../../../src/calc/trace/read.ts'
import fc from '../../support/property.ts'
import { damagedFiles } from './damaged.ts'

const GOOD = [
  `Frequency (Hz),Level (dBµV)\n${Array.from({ length: 30 }, (_, i) => `${150000 + 1000 * i},${60 - i / 2}`).join('\n')}\n`,
  `Frequenz [MHz];Pegel [dBuV]\r\n${Array.from({ length: 30 }, (_, i) => `${0.15 + i};${60 - i},5`.replace('.', ',')).join('\r\n')}\r\n`,
  `# hangar\n! f/kHz dBm\n${Array.from({ length: 30 }, (_, i) => `${150 + i} -${40 + i}`).join('\n')}\nEND\n`,
  `Type;A\nx-unit;Hz\ny-unit;dBuA\nValues;20\n${Array.from({ length: 20 }, (_, i) => `${10000 * (i + 1)};${50 - i};0`).join('\n')}`,
  `no\tfreq\tV\n${Array.from({ length: 20 }, (_, i) => `${i}\t${10 ** (4 + i / 10)}\t${1e-3 * (i + 1)}`).join('\n')}`,
]

const A_SECOND_MS = 1000

/** A spectrum that is whole, or a sentence; each within a second. Gives how many were read. */
export function tryDamagedTraces(runs: number): { readonly read: number; readonly refused: number } {
  const found = { read: 0, refused: 0 }
  fc.assert(
    fc.property(damagedFiles(GOOD), (text) => {
      const startedMs = performance.now()
      const reading = atOnce(readTrace(text))
      expect(performance.now() - startedMs).toBeLessThan(A_SECOND_MS)
      if (!reading.ok) {
        found.refused += 1
        expect(reading.message).toMatch(/^[A-Z].{15,}\.$/su)
        expect(reading.message.replaceAll(/“.*?”/gsu, '')).not.toMatch(/NaN|undefined/)
        return
      }
      found.read += 1
      const { hz, db } = reading.spectrum
      expect(hz.length).toBe(db.length)
      expect(hz.length).toBeGreaterThan(0)
      for (let i = 0; i < hz.length; i++) {
        const isGood =
          (hz[i] as number) > 0 &&
          Number.isFinite(hz[i]) &&
          (i === 0 || (hz[i] as number) >= (hz[i - 1] as number)) &&
          Math.abs(db[i] as number) <= 400
        if (!isGood) expect.fail(`row ${i}: ${hz[i]} Hz, ${db[i]} dB`)
      }
    }),
    { numRuns: runs },
  )
  return found
}
