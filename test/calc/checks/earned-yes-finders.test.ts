/** Finders and trials say yes only over what may be off, and name it. */
import { describe, expect, it } from 'vitest'
import { harmonicsCheck } from '../../../src/calc/checks/harmonics/check.ts'
import { resonanceCheck } from '../../../src/calc/checks/resonance/check.ts'
import { toneCheck } from '../../../src/calc/checks/tone/check.ts'
import { trialCheck } from '../../../src/calc/checks/trial/check.ts'
import type { Success } from '../../../src/calc/types.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'

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

  it.each([
    // 236 × 500 kHz: a duty of 49 % leaves it 30 dB below the odd ones beside it at most
    [{ fundamentalHz: '500k', waveforms: 'square' }, '236 × 500 kHz is 118 MHz', 'both its halves'],
    [{ fundamentalHz: '1M', waveforms: 'sine' }, '118 × 1 MHz is 118 MHz', 'only a measurement says'],
    // 1/(π · 1 µs) = 318 kHz: 20·log(11800) below, and 20·log(118 MHz/318 kHz) more, are 132.8 dB
    [{ fundamentalHz: '10k', waveforms: 'pulse', riseSec: '1u' }, '11800 × 10 kHz is 118 MHz', '100 dB below'],
  ])('a harmonic in the channel that is not listed is no yes: %j', (texts, where, why) => {
    const { verdict, headline } = run(harmonicsCheck, { ...texts, offFrac: '0', victimHz: '118M', widthHz: '25k' })
    expect(verdict).toBe('marginal')
    expect(headline.replaceAll('\u00a0', ' ')).toContain(`With care: ${where}, in the channel on 118 MHz`)
    expect(headline).toContain(why)
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

describe('a trial between the wires', () => {
  const TRIED = {
    steps: 'bare;empty;1n;10n;bare',
    noise: 'same;same;gone;gone;same',
    signal: ';;good;good;',
    places: ';;between;between;',
  }

  it('counts twice on each leg of a pair, and on a line of one wire shows nothing: 18 nF would never have been tried', () => {
    const pair = run(trialCheck, { ...TRIED, lineKind: 'arinc-429-low' })
    expect(pair.verdict).toBe('ok')
    expect(si(pair, 'provenMostF')).toBeCloseTo(18e-9, 15)
    expect(issuesOf(trialCheck, { ...TRIED, lineKind: 'discrete-28v' })).toEqual([
      expect.stringMatching(/^places: .* has one wire, so nothing stands between two: write chassis/u),
    ])
    expect(run(trialCheck, { ...TRIED, lineKind: 'discrete-28v', places: '' }).verdict).toBe('ok')
  })
})

it('a trial that did no harm above what the signal is worked out to stand is no plain yes: 1 ms/(ln 9 · 20 kΩ) = 22.7 nF', () => {
  const at = (most: string) =>
    run(trialCheck, {
      lineKind: 'discrete-28v',
      steps: `bare;empty;1n;${most};bare`,
      noise: 'same;same;gone;gone;same',
      signal: ';;good;good;',
    })
  expect(at('22n').verdict).toBe('ok')
  const beyond = at('1u')
  expect(beyond.verdict).toBe('marginal')
  expect(plain(beyond)).toContain('A capacitor alone: with care. This trial shows 1.1 nF to 900 nF a leg')
  expect(plain(beyond)).toContain('worked out to stand 22.7 nF a leg')
})

it('separators alone are no trial: the steps are asked for', () => {
  expect(plain(run(trialCheck, { steps: ';;;', lineKind: 'discrete-28v', noise: 'gone' }))).toMatch(
    /^Not known: needs the steps of the trial/u,
  )
})
