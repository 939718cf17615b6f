/** The window as an intersection of bounds fed by hand: ceilings of a line, a document, what fits, and trials of both sides. */
import { describe, expect, test } from 'vitest'
import { type Intersection, intersect } from '../../../src/calc/bounds/intersect.ts'
import type { Bound, Topology, Verdict } from '../../../src/calc/types.ts'

const EXACT = {
  tolerance: { lowFrac: 0, highFrac: 0 },
  temperatureFrac: 0,
  biasFrac: 0,
  ageingDecades: 0,
  ageingFracPerDecade: 0,
}
/** k_low = 0.8 · 0.75 · 0.975² = 0.570375, k_high = 1.2 · 1.25 = 1.5 (worked stack). */
const SPREAD = {
  tolerance: { lowFrac: 0.2, highFrac: 0.2 },
  temperatureFrac: 0.25,
  biasFrac: 0,
  ageingDecades: 2,
  ageingFracPerDecade: 0.025,
}
const PAIR = { isPair: true, existingF: 0, crossF: 0, suppressorF: 0 }
const SINGLE = { ...PAIR, isPair: false }

const need = (farads: number, more: Partial<Bound> = {}): Bound => ({
  id: 'need-least',
  by: { is: 'check', check: 'window' },
  side: 'least',
  nature: 'need',
  farads,
  per: 'capacitor',
  topology: 'any',
  ...more,
})
const works = (farads: number, per: Bound['per'] = 'leg'): Bound => ({
  ...need(farads),
  id: 'loading-works',
  by: { is: 'check', check: 'loading' },
  side: 'most',
  nature: 'works',
  per,
})
const permitted = (farads: number): Bound => ({
  ...works(farads),
  id: 'permitted-document',
  by: { is: 'document', document: 'R1' },
  nature: 'permitted',
})
const fits = (farads: number): Bound => ({
  ...works(farads, 'capacitor'),
  id: 'buildable',
  by: { is: 'user', fact: 'maxBuildableF' },
  nature: 'fits',
})
const tried = (side: Bound['side'], farads: number): Bound => ({
  ...need(farads),
  id: `trial-${side}`,
  by: { is: 'trial', trial: 'first' },
  side,
  nature: side === 'least' ? 'need' : 'works',
  per: 'leg',
})

const of = (
  bounds: readonly Bound[],
  q: { taken?: typeof PAIR; topology?: Topology; spread?: typeof SPREAD; admits?: (f: number) => Verdict } = {},
): Intersection => intersect(bounds, q.taken ?? SINGLE, q.spread ?? EXACT, q.topology ?? 'C', q.admits)

const near = (value: number | undefined, expected: number) =>
  expect(Math.abs((value ?? Number.NaN) / expected - 1)).toBeLessThan(1e-12)

describe('figures on one marked capacitor', () => {
  test('a figure between the wires is twice as much on each leg, less what is taken, shared by the capacitors, less the spread', () => {
    const taken = { isPair: true, existingF: 0.7e-9, crossF: 0.3e-9, suppressorF: 1.1e-9 }
    const found = of([works(8.03e-9, 'pair'), need(1e-12)], { taken, topology: 'PI', spread: SPREAD })
    near(found.most?.markedF, (2 * (8.03e-9 - 1e-9) - 1.1e-9) / (2 * 1.5))
  })

  test('a figure of each leg to chassis does not count what lies between the legs', () => {
    const taken = { isPair: true, existingF: 0.7e-9, crossF: 0.3e-9, suppressorF: 1.1e-9 }
    near(of([works(20e-9), need(1e-12)], { taken }).most?.markedF, 18.9e-9)
    near(of([works(20e-9), need(1e-12)], { taken: { ...taken, isPair: false, crossF: 0 } }).most?.markedF, 18.2e-9)
  })

  test('what a trial showed of the line as it is: what cleared stands for its share of a part, what did no harm has to leave room for a new suppressor', () => {
    const found = of([tried('least', 1e-9), tried('most', 10e-9)], {
      taken: { ...SINGLE, existingF: 3e-9, suppressorF: 1e-9 },
      spread: SPREAD,
    })
    near(found.least?.markedF, 1e-9 / 0.570375)
    near(found.most?.markedF, 9e-9 / 1.5)
    expect(found.decides).toEqual(['trial-least', 'trial-most'])
    expect(found.verdict).toBe('ok')
  })
})

describe('what decides', () => {
  test('the largest least and the smallest most, whoever says so', () => {
    const found = of([need(1e-9), tried('least', 2.2e-9), works(47e-9), tried('most', 33e-9), fits(22e-9)])
    expect(found.decides).toEqual(['trial-least', 'buildable'])
    expect([found.least?.id, found.most?.id, found.upper?.id]).toEqual(['trial-least', 'trial-most', 'buildable'])
    expect(found.proposal).toEqual({ valueF: 4.7e-9, series: 'E6', verdict: 'ok' })
  })

  test('a bound of another topology does not count', () => {
    const bounds = [need(1e-9, { topology: 'C' }), need(30e-9, { topology: 'PI' }), works(10e-9)]
    expect(of(bounds).verdict).toBe('ok')
    expect(of(bounds, { topology: 'PI' })).toMatchObject({ verdict: 'fails', reasons: ['shut'] })
  })

  test('crossed bounds, no room and a need that nothing meets fail, each with the bounds that say so', () => {
    expect(of([need(11e-9), works(10e-9)])).toMatchObject({
      verdict: 'fails',
      reasons: ['shut'],
      decides: ['need-least', 'loading-works'],
    })
    const full = { ...SINGLE, suppressorF: 40e-12 }
    expect(of([need(1e-12), works(26.5e-12)], { taken: full })).toMatchObject({
      verdict: 'fails',
      reasons: ['no-room'],
      decides: ['loading-works'],
      most: { id: 'loading-works', markedF: 0 },
    })
    expect(of([need(Number.POSITIVE_INFINITY), works(1e-9)])).toMatchObject({
      verdict: 'fails',
      reasons: ['never'],
      decides: ['need-least'],
    })
  })

  test('without a need, or without a ceiling, it is unknown; what fits is a ceiling only where it stands alone', () => {
    expect(of([works(1e-9)])).toMatchObject({ verdict: 'unknown', reasons: ['no-need'] })
    expect(of([need(1e-9), fits(10e-9)])).toMatchObject({ verdict: 'unknown', reasons: ['no-ceiling'] })
    expect(of([need(1e-9), fits(10e-9)]).proposal?.valueF).toBe(2.2e-9)
    expect(of([need(1e-9), { ...fits(10e-9), alone: true }]).verdict).toBe('ok')
    expect(of([need(1e-9), permitted(10e-9)]).verdict).toBe('unknown')
  })

  test('nothing needed is ok where a ceiling is known and there is room', () => {
    expect(of([need(0), works(1e-9)])).toMatchObject({ verdict: 'ok', reasons: ['nothing-needed'] })
    expect(of([need(0)])).toMatchObject({ verdict: 'unknown' })
    // the line of a filter without a capacitor may be just full, but not over
    const taken = { ...SINGLE, existingF: 1e-9 }
    expect(of([need(0), works(1e-9)], { taken, topology: 'L' }).verdict).toBe('ok')
    expect(of([need(0), works(0.9e-9)], { taken, topology: 'L' }).verdict).toBe('fails')
  })
})

describe('the proposal', () => {
  test('prefers a value that the document permits, and is marginal above one', () => {
    // target √(10 n · 40 n) = 20 n: 22 n is nearest, 15 n is what is permitted
    const inside = of([need(10e-9), works(40e-9), permitted(16e-9)])
    expect(inside.proposal).toEqual({ valueF: 15e-9, series: 'E6', verdict: 'ok' })
    expect(inside.verdict).toBe('ok')
    const above = of([need(17e-9), works(68e-9), permitted(16e-9)])
    expect(above).toMatchObject({ verdict: 'marginal', reasons: ['over-permitted'] })
    expect(above.decides).toContain('permitted-document')
  })

  test('is marginal in a narrow window or where no standard value lies inside', () => {
    expect(of([need(9.1e-9), works(12e-9)])).toMatchObject({ verdict: 'marginal', reasons: ['narrow'] })
    expect(of([need(1.55e-9), works(1.75e-9)])).toMatchObject({ verdict: 'marginal', reasons: ['no-value'] })
  })

  test('is a value that does the signal no harm, where there is one', () => {
    const above = (leastF: number, otherwise: Verdict) => (f: number) => (f >= leastF ? 'ok' : otherwise) as Verdict
    expect(of([need(1e-9), works(100e-9)], { admits: above(5e-9, 'fails') })).toMatchObject({
      verdict: 'ok',
      proposal: { valueF: 6.8e-9 },
    })
    expect(of([need(1e-9), works(100e-9)], { admits: () => 'fails' })).toMatchObject({
      verdict: 'fails',
      reasons: ['signal'],
    })
    expect(of([need(1e-9), works(100e-9)], { admits: () => 'marginal' })).toMatchObject({
      verdict: 'marginal',
      reasons: ['signal'],
      proposal: { valueF: 2.2e-9 },
    })
  })
})

describe('a resonance', () => {
  const holes = [[3e-9, 40e-9]] as const

  test('below the ceiling lifts the least above it', () => {
    const found = of([need(1e-9, { holes }), works(400e-9)])
    near(found.least?.markedF, 40e-9)
    expect(found.proposal?.valueF).toBe(68e-9)
  })

  test('above the ceiling is no concern of the window; one that reaches over it ends it, and that is no clean yes', () => {
    expect(of([need(1e-9, { holes }), works(2.5e-9)])).toMatchObject({ verdict: 'ok', upper: { id: 'loading-works' } })
    const found = of([need(1e-9, { holes }), works(30e-9)])
    expect(found.upper).toEqual({ id: 'need-least', markedF: 3e-9 })
    expect(found).toMatchObject({
      verdict: 'marginal',
      reasons: ['resonance'],
      most: { id: 'loading-works', markedF: 30e-9 },
    })
  })

  test('is gone below where no standard value lies above it', () => {
    const found = of([need(1e-9, { holes: [[3e-9, 40e-9]] }), works(46e-9)])
    near(found.least?.markedF, 1e-9)
    expect(found.proposal?.valueF).toBe(1.5e-9)
  })
})
