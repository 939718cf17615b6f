/** Finders and trials say yes only over what may be off, and name it. */
import { describe, expect, it } from 'vitest'
import { harmonicsCheck } from '../../../src/calc/checks/harmonics/check.ts'
import { resonanceCheck } from '../../../src/calc/checks/resonance/check.ts'
import { toneCheck } from '../../../src/calc/checks/tone/check.ts'
import { trialCheck } from '../../../src/calc/checks/trial/check.ts'
import type { Success } from '../../../src/calc/types.ts'
import { run } from '../../support/run-check.ts'

const plain = ({ headline }: Success) => headline.replaceAll('\u00a0', ' ')

describe('harmonics', () => {
  // 17 × 7 MHz = 119 and 18 × 7 MHz = 126 MHz: 121.5 MHz is 2 % from the one
  const CLOCK = { fundamentalHz: '7M', victimHz: '121.5M', waveforms: 'square', widthHz: '25k' }

  it('no product lands here is no yes while nobody said how far the fundamental may be off', () => {
    const open = run(harmonicsCheck, CLOCK)
    expect(open.verdict).toBe('unknown')
    expect(plain(open)).toContain('Not known: needs each may be off by')
  })

  it('with a tolerance it is, and the tolerance stands in the answer; one that reaches the channel is a no', () => {
    const crystal = run(harmonicsCheck, { ...CLOCK, offFrac: '0.01 %' })
    expect([crystal.verdict, plain(crystal)]).toEqual([
      'ok',
      'Yes: no harmonic and no product of the third order lies in that channel, wherever each fundamental is within 0.01 %.',
    ])
    // 17 · 7 MHz · 1.025 = 121.98 MHz
    expect(run(harmonicsCheck, { ...CLOCK, offFrac: '2.5 %' }).verdict).toBe('fails')
  })
})

describe('resonance', () => {
  it('worked out just outside a band names the band it may lie in; what was seen is where it was seen', () => {
    // c/(2 · 1.5 m) = 99.93 MHz, and VOR begins at 108 MHz
    expect(plain(run(resonanceCheck, { cableM: '1.5' }))).toMatch(
      /99\.93 MHz, in no band as worked out, but within 15 % of .*VOR/u,
    )
    expect(plain(run(resonanceCheck, { seenHz: '100M' }))).toContain('in no band of the table')
  })
})

describe('tone', () => {
  it('no explanation is certain on one reading, however near', () => {
    for (const texts of [
      { toneHz: '2400', busHz: '400', pulses: '6', offFrac: '0.1 %' },
      { toneHz: '1200', rpm: '6000', driveRatio: '2', polePairs: '6' },
      { toneHz: '400' },
    ]) {
      const result = run(toneCheck, texts)
      expect([result.verdict, plain(result).startsWith('Not known until it is tested: ')]).toEqual(['unknown', true])
    }
  })
})

it('separators alone are no trial: the steps are asked for', () => {
  expect(plain(run(trialCheck, { steps: ';;;', lineKind: 'discrete-28v', noise: 'gone' }))).toMatch(
    /^Not known: needs the steps of the trial/u,
  )
})
