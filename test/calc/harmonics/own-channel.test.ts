/** A transmitter on the very channel that suffers. */
import { expect, it } from 'vitest'
import { harmonicsCheck } from '../../../src/calc/checks/harmonics/check.ts'
import { run } from '../../support/run-check.ts'

const SENT = { fundamentalHz: '121.5M', offFrac: '0', waveforms: 'transmitter' }

it('is no yes: its fundamental lies there, stronger than any harmonic', () => {
  expect(run(harmonicsCheck, { ...SENT, victimHz: '121.5M', widthHz: '25k' }).verdict).toBe('fails')
  expect(run(harmonicsCheck, { ...SENT, victimHz: '121.6M', widthHz: '25k' }).verdict).toBe('ok')
})
