/** The pair check with a common-mode choke before the capacitors. */
import { expect, it } from 'vitest'
import { pairCheck } from '../../../src/calc/checks/pair/check.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'

const PAIR = { capacitanceF: '120p', capacitance2F: '80p', legOhm: '100', frequencyHz: '1M' }

it('a choke rings with the capacitors: more signal than common mode is said, with care', () => {
  const found = run(pairCheck, { ...PAIR, legOhm: '1', chokeH: '51u', chokeLeakageH: '5u', chokeF: '0' })
  expect(found.verdict).toBe('marginal')
  expect(found.findings[0]?.sentence).toContain('The choke rings with the capacitors near')
  // Both windings with both capacitors, 51 µH and 200 pF: 1.58 MHz.
  expect((si(found, 'worstHz') ?? 0) / (1 / (2 * Math.PI * Math.sqrt(51e-6 * 200e-12)))).toBeCloseTo(1, 1)
  expect(si(found, 'worstConversionDb')).toBeGreaterThan(0)
  const without = run(pairCheck, PAIR)
  expect(without.verdict).toBe('ok')
  expect(without.answers).toBe('number')
  expect(si(without, 'worstConversionDb')).toBeCloseTo(20 * Math.log10(0.2), 9)
})

it('equal capacitors behind unequal windings convert, behind equal ones nothing', () => {
  const equal = { ...PAIR, capacitance2F: '120p', chokeH: '51u', chokeLeakageH: '150n' }
  expect(run(pairCheck, equal).headline).toMatch(/^Equal legs turn nothing into signal: with care\./u)
  const unequal = run(pairCheck, { ...equal, chokeMismatchFrac: '2 %' })
  expect(si(unequal, 'conversionDb')).toBeLessThan(-20)
  expect(unequal.headline).toContain('of the common mode becomes signal')
})

it('around one wire it is not counted, and nothing is promised', () => {
  const one = run(pairCheck, { ...PAIR, chokeH: '51u', chokeWires: 'one' })
  expect(one.verdict).toBe('unknown')
  expect(one.findings[0]?.sentence).toContain('the whole current of the wire magnetises the core')
  expect(si(one, 'conversionDb')).toBe(si(run(pairCheck, PAIR), 'conversionDb'))
})

it('windings that cannot be are refused, usual leakage is said', () => {
  expect(issuesOf(pairCheck, { ...PAIR, chokeH: '1u', chokeLeakageH: '3u' })[0]).toMatch(/^chokeLeakageH: /)
  const mixed = { ...PAIR, chokeH: '1u', chokeLeakageH: '1n', chokeMismatchFrac: '20 %' }
  expect(issuesOf(pairCheck, mixed)[0]).toMatch(/^chokeMismatchFrac: /)
  const usual = run(pairCheck, { ...PAIR, chokeH: '51u' })
  expect(usual.findings.some(({ sentence }) => sentence.includes('0.5 to 2 % of the inductance is taken'))).toBe(true)
})
