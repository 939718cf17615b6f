/** The common-mode choke in the filter check: through the address texts, over its tolerance, and what it refuses to promise. */
import { describe, expect, it } from 'vitest'
import { filterCheck } from '../../../src/calc/checks/filter/check.ts'
import { lossDb } from '../../../src/calc/network/chain.ts'
import { BENCH_LOAD, type FilterCircuit, NO_SERIES, NO_SHUNT } from '../../../src/calc/network/circuit.ts'
import golden from '../../golden/choke.json' with { type: 'json' }
import { issuesOf, run, si } from '../../support/run-check.ts'

describe('both legs of a pair with a choke, solved by their nodes', () => {
  for (const { id, texts, results } of golden.circuits) {
    it(`${id}: ${Object.values(texts).join(' ')}`, () => {
      const all: Record<string, string | undefined> = texts
      const given = Object.fromEntries(Object.entries(all).flatMap(([key, text]) => (text ? [[key, text]] : [])))
      for (const { hz, lossDb: theirs } of results) {
        const got = si(run(filterCheck, { ...given, frequencyHz: String(hz) }), 'insertionLossDb') ?? Number.NaN
        expect(Math.abs(got - theirs), `${hz} Hz: ${got} / ${theirs}`).toBeLessThan(6e-7)
      }
    })
  }

  it('has lost no circuit', () => {
    expect(golden.circuits.map(({ results }) => results.length)).toEqual(Array(9).fill(5))
  })
})

const SPREAD = { toleranceFrac: '20 %', temperatureFrac: '0', biasFrac: '0', ageingDecades: '0' }
const PAIR = {
  ...SPREAD,
  topology: 'C',
  mode: 'common',
  sourceOhm: '50',
  loadOhm: '50',
  frequencyHz: '30M',
  neededDb: '20',
  chokeF: '0',
  eslH: '0',
  bondOhm: '0',
  bondH: '0',
}

/** Lowest loss of one leg over a dense grid of choke and capacitor, each by itself. */
function denseWorstDb(
  at: (chokeH: number, farads: number) => FilterCircuit,
  choke: readonly [number, number],
  farads: readonly [number, number],
  hz: number,
): number {
  let worst = Number.POSITIVE_INFINITY
  const steps = 60
  for (let i = 0; i <= steps; i++)
    for (let k = 0; k <= steps; k++) {
      const h = choke[0] * (choke[1] / choke[0]) ** (i / steps)
      const f = farads[0] + ((farads[1] - farads[0]) * k) / steps
      worst = Math.min(worst, lossDb(at(h, f), { ohm: 100, seriesH: 0 }, { ...BENCH_LOAD, ohm: 100 }, hz))
    }
  return worst
}

const coil = (inductanceH: number) => ({ ...NO_SERIES, inductanceH })
const leg = (part: Partial<FilterCircuit>): FilterCircuit => ({
  topology: 'C',
  shunt1: NO_SHUNT,
  shunt2: NO_SHUNT,
  series1: NO_SERIES,
  series2: NO_SERIES,
  bondOhm: 0,
  bondH: 0,
  ...part,
})

describe('a choke over its tolerance', () => {
  it('alone is judged at its least inductance and most leakage', () => {
    // 51 µH least, leakage 2 % of the most: each leg 2·51 − 0.765 µH in 200 Ω; 20·log10 |1 + jωL/200| at 30 MHz.
    const legH = 2 * 51e-6 - (0.02 * 1.5 * 51e-6) / 2
    const expected = 20 * Math.log10(Math.hypot(1, (2 * Math.PI * 30e6 * legH) / 200))
    const result = run(filterCheck, { ...PAIR, chokeH: '51u' })
    expect(si(result, 'worstInsertionLossDb')).toBeCloseTo(expected, 6)
    expect(result.verdict).toBe('ok')
    expect(run(filterCheck, { ...PAIR, chokeH: '51u', neededDb: String(expected + 0.01) }).verdict).toBe('fails')
  })

  it.each(['source', 'load'] as const)(
    'with a capacitor is never better than a dense search, on the %s side',
    (side) => {
      const worst = denseWorstDb(
        (h, f) => leg({ shunt1: { ...NO_SHUNT, capacitanceF: f }, choke: { part: coil(h), side } }),
        [2e-6 - 0.0075e-6, 3e-6 - 0.001875e-6],
        [80e-12, 120e-12],
        9e6,
      )
      const given = {
        ...PAIR,
        chokeH: '1u',
        chokeLeakageH: '15n',
        capacitanceF: '100p',
        chokeSide: side,
        frequencyHz: '9M',
      }
      const found = si(run(filterCheck, given), 'worstInsertionLossDb') ?? Number.NaN
      expect(found).toBeLessThanOrEqual(worst + 1e-9)
      expect(found).toBeGreaterThan(worst - 0.01)
    },
  )

  // The lowest lies inside the span of the choke and of both capacitors, 6.30 dB of gain.
  it.each([
    ['source', '150', '10'],
    ['load', '10', '150'],
  ] as const)('with a Pi is as low as a dense search, on the %s side from %s to %s Ω', (side, sourceOhm, loadOhm) => {
    const steps = Array.from({ length: 13 }, (_, i) => i / 12)
    let worst = Number.POSITIVE_INFINITY
    for (const i of steps)
      for (const k of steps)
        for (const m of steps)
          for (const n of [0, 0.5, 1]) {
            const circuit = leg({
              topology: 'PI',
              shunt1: { ...NO_SHUNT, capacitanceF: (80 + 40 * k) * 1e-12 },
              shunt2: { ...NO_SHUNT, capacitanceF: (80 + 40 * m) * 1e-12 },
              series1: coil((1 + n / 2) * 1e-6),
              choke: { part: coil(1.9925e-6 + 1.005625e-6 * i), side },
            })
            const ends = [
              { ohm: 2 * Number(sourceOhm), seriesH: 0 },
              { ...BENCH_LOAD, ohm: 2 * Number(loadOhm) },
            ] as const
            worst = Math.min(worst, lossDb(circuit, ...ends, 18e6))
          }
    const pi = { topology: 'PI', inductanceH: '1u', inductorParallelF: '0', capacitanceF: '100p', sourceOhm, loadOhm }
    const given = { ...PAIR, ...pi, chokeH: '1u', chokeLeakageH: '15n', chokeSide: side, frequencyHz: '18M' }
    const found = si(run(filterCheck, given), 'worstInsertionLossDb') ?? Number.NaN
    expect(worst).toBeLessThan(-6.29)
    expect(found).toBeLessThanOrEqual(worst + 1e-6)
    expect(found).toBeGreaterThan(worst - 0.01)
  })

  it('in differential mode counts a quarter of the leakage stated as its most', () => {
    // 300 nH stated: 75 nH at least, half in each leg, in 50 Ω of a leg.
    const expected = 20 * Math.log10(Math.hypot(1, (2 * Math.PI * 30e6 * 37.5e-9) / 50))
    const result = run(filterCheck, { ...PAIR, mode: 'differential', chokeH: '51u', chokeLeakageH: '300n' })
    expect(si(result, 'worstInsertionLossDb')).toBeCloseTo(expected, 6)
    expect(result.verdict).toBe('fails')
    // what is said is of one leg, and says so
    expect(result.headline.replaceAll('\u00a0', ' ')).toMatch(/come off at 30 MHz from \d+ Ω in each leg with/u)
  })
})

describe('what a choke does not promise', () => {
  it('asks for the mode', () => {
    const { mode: _, ...without } = PAIR
    expect(run(filterCheck, { ...without, chokeH: '51u' }).headline).toBe('Not known: needs the mode of the noise.')
  })

  it('around one wire is a saturating inductor, and never ok', () => {
    const { mode: _, ...without } = PAIR
    const result = run(filterCheck, { ...without, chokeH: '51u', chokeWires: 'one' })
    expect(result.verdict).toBe('unknown')
    expect(result.findings[0]?.sentence).toContain('the whole current of the wire magnetises the core')
    // One winding in 100 Ω, whatever the mode.
    const expected = 20 * Math.log10(Math.hypot(1, (2 * Math.PI * 30e6 * 51e-6) / 100))
    expect(si(result, 'insertionLossDb')).toBeCloseTo(expected, 6)
  })

  it('is doubted for its self-capacitance where none was entered', () => {
    const { chokeF: _, ...without } = PAIR
    const result = run(filterCheck, { ...without, chokeH: '51u', neededDb: '35' })
    expect(result.verdict).toBe('unknown')
    expect(result.findings[0]?.sentence).toContain('choke self-capacitance')
  })

  it('says what unequal windings turn into signal, and that usual leakage was taken', () => {
    const result = run(filterCheck, { ...PAIR, chokeH: '51u', chokeLeakageH: '150n', chokeMismatchFrac: '2 %' })
    // Far above the corner: half the mismatch, −40 dB.
    expect(Math.abs((si(result, 'chokeConversionDb') ?? 0) + 40)).toBeLessThan(0.1)
    const conversion = (chokeF: string) =>
      run(filterCheck, {
        ...PAIR,
        chokeH: '51u',
        chokeLeakageH: '150n',
        chokeMismatchFrac: '2 %',
        chokeF,
      }).findings.find(({ sentence }) => sentence.startsWith('Its windings differ'))?.sentence
    expect(conversion('0')).toMatch(/at most −40\sdB at any frequency/)
    expect(conversion('1p')).not.toContain('at most')
    const usual = run(filterCheck, { ...PAIR, chokeH: '51u' })
    expect(usual.findings.some(({ sentence }) => sentence.includes('0.5 to 2 % of the inductance is taken'))).toBe(true)
    expect(usual.outputs['chokeConversionDb']).toBeUndefined()
  })

  it('refuses windings that cannot be wound', () => {
    expect(issuesOf(filterCheck, { ...PAIR, chokeH: '1u', chokeLeakageH: '3u' })[0]).toMatch(/^chokeLeakageH: /)
    expect(issuesOf(filterCheck, { ...PAIR, chokeH: '1u', chokeLeakageH: '1n', chokeMismatchFrac: '20 %' })[0]).toMatch(
      /^chokeMismatchFrac: /,
    )
  })

  it('leaves a filter of one wire as it was, with and without a mode', () => {
    const one = { topology: 'C', capacitanceF: '10n', sourceOhm: '50', loadOhm: '50', frequencyHz: '10M' }
    const alone = si(run(filterCheck, one), 'insertionLossDb')
    expect(si(run(filterCheck, { ...one, mode: 'common', lineKind: 'discrete-28v' }), 'insertionLossDb')).toBe(alone)
    // On a pair each leg has 100 Ω on either side: 10 nF across 50 Ω.
    const expected = 20 * Math.log10(Math.hypot(1, 2 * Math.PI * 10e6 * 10e-9 * 50))
    expect(si(run(filterCheck, { ...one, mode: 'common', lineKind: 'can' }), 'insertionLossDb')).toBeCloseTo(
      expected,
      6,
    )
  })
})
