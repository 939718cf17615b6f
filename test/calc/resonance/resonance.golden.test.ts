/** Resonances of the trade: half and quarter waves, capacitors with their leads, and the partner that would resonate. */
import { describe, expect, test } from 'vitest'
import { resonanceCheck } from '../../../src/calc/checks/resonance/check.ts'
import { cableHz, cableLengthM, cableOrders, resonantHz } from '../../../src/calc/resonance/resonances.ts'
import { run, si } from '../../support/run-check.ts'

describe('figures of the trade', () => {
  test('150/l MHz for half a wave, 75/l for a quarter', () => {
    expect(cableHz(1, 'both-grounded', 1) / 1e6).toBeCloseTo(150, 0)
    expect(cableHz(1, 'open', 1) / 1e6).toBeCloseTo(150, 0)
    expect(cableHz(1, 'one-grounded', 1) / 1e6).toBeCloseTo(75, 0)
    expect(cableHz(6, 'both-grounded', 1) / 1e6).toBeCloseTo(25, 0)
  })

  test.each([
    [1e-9, 50.3e6],
    [10e-9, 15.9e6],
    [100e-9, 5.03e6],
  ])('10 nH of lead and %d F resonate at %d Hz', (farads, hz) => {
    expect(resonantHz(farads, 10e-9) / hz).toBeCloseTo(1, 2)
  })

  test('every multiple where both ends are alike, odd ones where not', () => {
    expect(cableOrders(25e6, 'both-grounded', 100e6, 9)).toEqual([25e6, 50e6, 75e6, 100e6])
    expect(cableOrders(12.5e6, 'one-grounded', 100e6, 9)).toEqual([12.5e6, 37.5e6, 62.5e6, 87.5e6])
  })

  test('length and frequency go either way', () => {
    for (const ends of ['both-grounded', 'one-grounded', 'open'] as const)
      for (const metres of [0.2, 3, 40])
        expect(cableLengthM(cableHz(metres, ends, 0.8), ends, 0.8)).toBeCloseTo(metres, 9)
  })
})

describe('the check', () => {
  test('says where each lies, and in which band', () => {
    const result = run(resonanceCheck, {
      cableM: '1.25 m',
      capacitanceF: '10n',
      inductanceH: '10n',
      strapH: '50n',
      chassisF: '50p',
    })
    expect((si(result, 'cableHz') ?? 0) / 1e6).toBeCloseTo(119.9, 1)
    expect((si(result, 'partHz') ?? 0) / 1e6).toBeCloseTo(15.92, 2)
    expect((si(result, 'boxHz') ?? 0) / 1e6).toBeCloseTo(100.7, 1)
    expect(result.headline).toContain('VHF communication')
  })

  test('and what would resonate where something is seen', () => {
    const result = run(resonanceCheck, { seenHz: '50.3292M', capacitanceF: '1n', ends: 'one-grounded' })
    expect((si(result, 'seenInductanceH') ?? 0) * 1e9).toBeCloseTo(10, 3)
    expect(si(result, 'seenCableM')).toBeCloseTo(1.489, 3)
  })

  test('names the one near what is seen, or that none is', () => {
    expect(run(resonanceCheck, { seenHz: '26M', cableM: '6' }).headline).toMatch(/^The cable resonates at/u)
    expect(run(resonanceCheck, { seenHz: '40M', cableM: '6', ends: 'one-grounded' }).findings[0]?.sentence).not.toMatch(
      /^None/u,
    )
    expect(run(resonanceCheck, { seenHz: '33M', cableM: '6' }).findings[0]?.sentence).toMatch(/^None of these/u)
    expect(run(resonanceCheck, {}).verdict).toBe('unknown')
  })
})
