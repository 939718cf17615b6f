/** What the line holds by itself comes on top of the pulse, named by its kind or typed. Waveform 4 level 1: 50 V open. */
import { describe, expect, it } from 'vitest'
import { open, said, word } from '../../support/open-surge.ts'
import { si } from '../../support/run-check.ts'

describe('typed peaks of a line without a kind', () => {
  it('count: 80 V and 50 V are 130 V at the load', () => {
    const of = (withstandV: number) => open(`level=1&withstandV=${withstandV}&busMaxV=80&busMinV=0`)
    expect(of(60).verdict).toBe('fails')
    // the default load is so light that its divider takes less than 1 %
    expect((si(of(60), 'worstLoadPeakV') ?? 0) / 130).toBeCloseTo(1, 1)
    expect(of(132).verdict).toBe('marginal')
    expect(of(150).verdict).toBe('ok')
  })

  it('count below chassis too: a negative pulse from -80 V', () => {
    expect(open('level=1&polarity=negative&withstandV=60&busMaxV=0&busMinV=-80').verdict).toBe('fails')
    expect(open('level=1&withstandV=60&busMaxV=0&busMinV=-80').verdict).toBe('fails')
  })

  it('count on a filter capacitor', () => {
    const on = (volts: number) =>
      open(`level=1&withstandV=400&busMaxV=80&busMinV=0&topology=C&capacitanceF=1n&capacitorWithstandV=${volts}`)
    expect(word(on(63), 'capacitorVerdict')).toBe('fails')
    expect(word(on(150), 'capacitorVerdict')).toBe('ok')
  })
})

describe('a line of which nobody said what it holds', () => {
  it('is asked for: the same pulse on a 28 V bus comes to 82 V', () => {
    const unnamed = open('level=1&withstandV=70')
    expect(unnamed.verdict).toBe('unknown')
    expect(unnamed.headline).toContain('needs the line')
    expect(said(unnamed)).toContain('what it holds by itself comes on top of the pulse')
    expect(open('level=1&withstandV=70&lineKind=power-28-vdc').verdict).toBe('fails')
    expect(open('level=1&withstandV=70&busMaxV=5&busMinV=0').verdict).toBe('ok')
  })

  it('does not hide a no: 50 V are above 40 V whatever the line holds', () => {
    expect(open('level=1&withstandV=40').verdict).toBe('fails')
  })
})
