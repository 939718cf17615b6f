/** Levels in different units are compared in one, or not at all. */
import { describe, expect, it } from 'vitest'
import { needCheck } from '../../../src/calc/checks/need/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { resolve } from '../../../src/calc/line/resolver.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'

const needed = (texts: Record<string, string>) => si(run(needCheck, { marginDb: '0', ...texts }), 'neededDb')

describe('a level keeps its unit', () => {
  it('40 dBm against 60 dBµV is refused until the impedance is stated, with the conversion in the sentence', () => {
    const issues = issuesOf(needCheck, { measuredDb: '40 dBm', limitDb: '60 dBuV' })
    expect(issues).toHaveLength(1)
    // √(10 W · 50 Ω) = 22.36 V = 147 dBµV
    expect(issues[0]).toMatch(/^impedanceOhm: .*In 50 Ω 40.dBm is 147.dBµV/u)
  })

  it('40 dBm is 147 dBµV in 50 Ω: 87 dB over 60 dBµV', () => {
    const volts = 20 * Math.log10(Math.sqrt(10 * 50) / 1e-6)
    const texts = { measuredDb: '40 dBm', limitDb: '60 dBuV', impedanceOhm: '50' }
    expect(needed(texts)).toBeCloseTo(volts - 60, 9)
    expect(run(needCheck, texts).outputs['neededDb']?.basis.steps).toHaveLength(2)
  })

  it('a current reads as volts across the impedance, either way round', () => {
    // 60 dBµA is 1 mA; across 25 Ω 25 mV, which is 87.96 dBµV
    const microvolts = 20 * Math.log10((1e-3 * 25) / 1e-6)
    expect(needed({ measuredDb: '60 dBµA', limitDb: '50 dBµV', impedanceOhm: '25' })).toBeCloseTo(microvolts - 50, 9)
    const microamps = 20 * Math.log10(10 ** (88 / 20) / 25)
    expect(needed({ measuredDb: '88 dBµV', limitDb: '40 dBµA', impedanceOhm: '25' })).toBeCloseTo(microamps - 40, 9)
  })

  it('dBV and dBµV need no impedance', () => {
    expect(needed({ measuredDb: '-20 dBV', limitDb: '70 dBµV' })).toBeCloseTo(30, 9)
  })

  it('a field strength never mixes with a voltage, whatever the impedance', () => {
    for (const limitDb of ['60 dBµV', '10 dBm', '60 dBµA']) {
      const issues = issuesOf(needCheck, { measuredDb: '46 dBuV/m', limitDb, impedanceOhm: '50' })
      expect(issues.join(' '), limitDb).toContain('field strength')
    }
    expect(needed({ measuredDb: '46 dBµV/m', limitDb: '40 dBuV/m' })).toBeCloseTo(6, 9)
  })

  it('plain figures in dB still work, alone and beside a unit', () => {
    expect(needed({ measuredDb: '71.3', limitDb: '46.2' })).toBeCloseTo(25.1, 9)
    expect(needed({ measuredDb: '71.3 dBµV', limitDb: '46.2' })).toBeCloseTo(25.1, 9)
    expect(needed({ measuredDb: '71.3', limitDb: '46.2 dBm' })).toBeCloseTo(25.1, 9)
  })

  it('a text that is none is refused as before', () => {
    expect(issuesOf(needCheck, { measuredDb: '40 pF', limitDb: '60' })[0]).toMatch(/^measuredDb: /u)
    expect(issuesOf(needCheck, { measuredDb: '4000 dBm', limitDb: '60' })[0]).toContain('outside what this field works')
  })
})

describe('a field', () => {
  // 46 − 40 + 6 = 12 dB of the field, which every cable and box makes together
  const texts = { measuredDb: '46 dBµV/m', limitDb: '40 dBµV/m', marginDb: '6' }

  it('is no need of this line before a clamp on its cable, and keeps its number', () => {
    const result = run(needCheck, texts)
    expect([result.verdict, si(result, 'neededDb')]).toEqual(['unknown', 12])
    expect(result.headline.replaceAll('\u00a0', ' ')).toBe(
      'Not known: needs a clamp on its cable. As read: 12 dB must come off: 6 dB over the limit, 6 dB margin.',
    )
    expect(result.findings.map(({ sentence }) => sentence).join(' ')).toContain(
      'a need of this line only after a clamp on its cable made the worst fall',
    )
  })

  it('is one by the unit of either level, and under its limit too', () => {
    const verdictOf = (measuredDb: string, limitDb: string) => run(needCheck, { measuredDb, limitDb }).verdict
    expect(verdictOf('46', '40 dBuV/m')).toBe('unknown')
    expect(verdictOf('46 dBuV/m', '40')).toBe('unknown')
    expect(verdictOf('20 dBuV/m', '40 dBuV/m')).toBe('unknown')
    expect(verdictOf('46', '40')).toBe('ok')
  })

  it('hands nothing to the checks that need a figure of this line', () => {
    const neededOf = (measuredDb: string, limitDb: string) =>
      resolve({
        id: 'l',
        name: '',
        gate: 'clear',
        trials: [],
        facts: {
          measuredDb: { text: measuredDb, origin: { by: 'user' } },
          limitDb: { text: limitDb, origin: { by: 'user' } },
        },
      })
        .fields(windowCheck)
        .find(({ key }) => key === 'neededDb')
    expect(neededOf('46 dBµV', '40 dBµV')?.text).toBe('12 dB')
    expect(neededOf('46 dBµV/m', '40 dBµV/m')?.state).toBe('missing')
  })
})
