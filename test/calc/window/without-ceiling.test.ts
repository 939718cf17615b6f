/** A line whose most nobody knows, and a need that no capacitor meets: answered like any other, whatever is tried to open it. */
import { expect, it } from 'vitest'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { run } from '../../support/run-check.ts'

it('falls short by what the bond and the coil leave, even where no limit ends it from above', () => {
  const [sourceOhm, loadOhm, bondOhm, inductanceH, hz, neededDb] = [5, 50, 1, 10e-6, 1e6, 90]
  const answer = run(windowCheck, {
    topology: 'LC',
    frequencyHz: String(hz),
    neededDb: String(neededDb),
    sourceOhm: String(sourceOhm),
    loadOhm: String(loadOhm),
    bondOhm: String(bondOhm),
    inductanceH: String(inductanceH),
    inductorParallelF: '0',
    eslH: '0',
    bondH: '0',
    esrOhm: '0',
  })
  expect(answer.bounds.filter(({ side }) => side === 'most')).toEqual([])
  expect(answer.verdict).toBe('fails')
  // cut to three digits; the capacitor a short, the bond beside the load: |5 + j·62.8 + 0.98| against 0.98, without a filter 55 against 50
  const besideOhm = (loadOhm * bondOhm) / (loadOhm + bondOhm)
  const throughOhm = Math.hypot(sourceOhm + besideOhm, 2 * Math.PI * hz * inductanceH)
  const mostDb = 20 * Math.log10((throughOhm / besideOhm) * (loadOhm / (sourceOhm + loadOhm)))
  expect(answer.headline.replaceAll('\u00a0', ' ')).toContain(
    `No capacitor is large enough: ${Math.floor(10 * (neededDb - mostDb)) / 10} dB short`,
  )
})
