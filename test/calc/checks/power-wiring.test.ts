/** What the wiring and the number of lines do to a yes of the power check. */
import { describe, expect, it } from 'vitest'
import { powerCheck } from '../../../src/calc/checks/power/check.ts'
import { run } from '../../support/run-check.ts'

const power = (texts: Record<string, string>) => run(powerCheck, texts)
const plain = (text: string | undefined): string => (text ?? '').replaceAll(/[\u00A0\u202F]/g, ' ')

describe('a capacitor from line to line', () => {
  it('is held against its own withstand test, which its inrush may pass where that of one to chassis does not', () => {
    const wired = {
      workingRmsV: '26',
      supplyHz: '400',
      capacitanceF: '10n',
      chassisLimitA: '5m',
      lineCount: '1',
      wiringOhm: '0.5',
      wiringH: '1u',
    }
    // 36.77 V · (1 + e^(−π·ζ/√(1 − ζ²))): 10 nF, ζ = 0.25·√(10 nF/1 µH) = 0.025: 70.8 V under 2.8 · 26 V = 72.8 V
    expect(power(wired).verdict).toBe('ok')
    // 100 pF, ζ = 0.0025: 73.25 V over the same 72.8 V
    const struck = power({ ...wired, crossF: '100p' })
    expect(struck.verdict).toBe('fails')
    expect(plain(struck.headline)).toBe(
      '10 nF: no. An inrush peak of 73.3 V from line to line is above the 72.8 V of the withstand test of the capacitor there.',
    )
    expect(plain(struck.findings[0]?.sentence)).toContain('73.25 V from line to line')
  })
})

describe('the inductance of the wiring', () => {
  const BUS = {
    workingRmsV: '28',
    supplyHz: '0',
    capacitanceF: '30n',
    navyRule: 'true',
    loadW: '400',
    lineCount: '1',
    wiringOhm: '0.5',
  }

  it('gives no plain yes where it is more than wiring has, as where metres are read as millihenries', () => {
    expect(power({ ...BUS, wiringH: '4u' }).verdict).toBe('ok')
    expect(power({ ...BUS, wiringH: '200u' }).verdict).toBe('ok')
    const odd = power({ ...BUS, wiringH: '2 m' })
    expect(odd.verdict).toBe('marginal')
    expect(plain(odd.headline)).toBe(
      '30 nF: with care. 2 mH is the inductance of 2 km of wire, and makes the inrush current too small.',
    )
    expect(plain(odd.findings[0]?.sentence)).toContain('If metres were meant')
  })
})
