/** A common-mode choke in the window: against closed forms of a series reactance, the nodal solver, and the loading mask. */
import { describe, expect, it } from 'vitest'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { BENCH_LOAD, NO_SERIES, NO_SHUNT } from '../../../src/calc/network/circuit.ts'
import type { Success } from '../../../src/calc/types.ts'
import { nodalLossDb } from '../../support/nodal.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'

type Texts = Readonly<Record<string, string>>
const window = (texts: Texts): Success => run(windowCheck, texts)
const words = (result: Success): string =>
  [result.headline, ...result.findings.map(({ sentence }) => sentence)].join(' ').replaceAll('\u00a0', ' ')

const PLAIN = {
  eslH: '0',
  bondOhm: '0',
  bondH: '0',
  inductorParallelF: '0',
  suppressorF: '0',
  existingF: '0',
  chokeF: '0',
  toleranceFrac: '0',
  temperatureFrac: '0',
  biasFrac: '0',
  ageingDecades: '0',
}
const PAIR = {
  ...PLAIN,
  lineKind: 'rs-422',
  bitRateHz: '100k',
  frequencyHz: '30M',
  neededDb: '20',
  sourceOhm: '100',
  loadOhm: '100',
}
const W = 2 * Math.PI * 30e6
/** A reactance X in series with R: 20·log10 |1 + jX/R|. */
const seriesDb = (henries: number, ohm: number) => 20 * Math.log10(Math.hypot(1, (W * henries) / ohm))

describe('a choke alone', () => {
  it('is an answer: 2·L − leakage/2 in each leg, between twice the ends of the pair', () => {
    const answer = window({ ...PAIR, chokeH: '51u', chokeLeakageH: '400n' })
    expect(answer.verdict).toBe('ok')
    expect(answer.headline).toContain('The choke alone: yes.')
    expect(si(answer, 'worstLossDb')).toBeCloseTo(seriesDb(2 * 51e-6 - 0.2e-6, 400), 6)
    // X = 400·√(10² − 1) Ω in each leg; 0.4 µH leaks from 51 µH, so that a leg has 1.99608 times a winding.
    const leastH = (400 * Math.sqrt(99)) / W / ((2 * 51e-6 - 0.2e-6) / 51e-6)
    expect(si(answer, 'leastChokeH')).toBeCloseTo(leastH, 12)
    expect(words(answer)).toMatch(/A choke of at least 10\.6 µH alone does it/)
  })

  it('too small, says how much would do', () => {
    const answer = window({ ...PAIR, neededDb: '40', chokeH: '51u', chokeLeakageH: '400n' })
    expect(answer.headline).not.toContain('alone')
    expect(words(answer)).toMatch(/A choke of at least \d+ µH alone would do it/)
  })

  it('is judged over the tolerance: the inductance entered is its least, the leakage its most', () => {
    const answer = window({ ...PAIR, chokeH: '51u', toleranceFrac: '20 %' })
    // Without a leakage 2 % of the most it can be, 51·1.5 µH.
    expect(si(answer, 'worstLossDb')).toBeCloseTo(seriesDb(2 * 51e-6 - 0.01 * 1.5 * 51e-6, 400), 6)
  })

  it('does nothing but leak in differential mode', () => {
    const answer = window({ ...PAIR, mode: 'differential', frequencyHz: '30M', chokeH: '51u', chokeLeakageH: '60u' })
    // A quarter of the leakage stated may be all there is, and half of that lies in each leg.
    const oneNF = (farads: number, henries: number) =>
      nodalLossDb(
        {
          topology: 'LC',
          shunt1: { ...NO_SHUNT, capacitanceF: farads },
          shunt2: NO_SHUNT,
          series1: { ...NO_SERIES, inductanceH: henries },
          series2: NO_SERIES,
          bondOhm: 0,
          bondH: 0,
        },
        { ohm: 50, seriesH: 0 },
        { ...BENCH_LOAD, ohm: 50 },
        30e6,
      )
    const least = window({ ...PAIR, mode: 'differential', topology: 'C', chokeH: '51u', chokeLeakageH: '4u' })
    const leastF = si(least, 'leastCapacitanceF') ?? Number.NaN
    const losses = Array.from({ length: 201 }, (_, i) => oneNF(leastF, 0.5e-6 + (1.5e-6 * i) / 200))
    expect(Math.min(...losses)).toBeCloseTo(20, 4)
    expect(answer.headline).toContain('The choke alone: yes.')
    expect(si(answer, 'leastChokeH')).toBeUndefined()
  })

  it('across its own resonance is a capacitor: what is not known of it is asked for', () => {
    const { chokeF: _, ...unknown } = PAIR
    const answer = window({ ...unknown, chokeH: '1m' })
    // 2 pF across 2 mH is 2.65 kΩ at 30 MHz: 16.5 dB, short of 20.
    expect(answer.verdict).toBe('unknown')
    expect(words(answer)).toContain('choke self-capacitance (taken as 0; 2p would turn it)')
  })
})

describe('a choke and the signal', () => {
  const ETHERNET = { ...PAIR, lineKind: 'ethernet-100base-tx', neededDb: '6', chokeH: '51u' }
  /** Seen from 85 Ω the mask of 10 dB at 80 MHz is met up to 59.61 Ω: 118.6 nH in the loop. */
  const MOST_NH = (Math.sqrt((0.1 * 185 ** 2 - 15 ** 2) / 0.9) / (2 * Math.PI * 80e6)) * 1e9

  it('is refused where its leakage breaks the mask, and fitted where it does not', () => {
    expect(window({ ...ETHERNET, topology: 'C', chokeLeakageH: `${0.999 * MOST_NH}n` }).verdict).toBe('ok')
    const broken = window({ ...ETHERNET, topology: 'C', chokeLeakageH: `${3 * MOST_NH}n` })
    expect(broken.verdict).toBe('fails')
    expect(words(broken)).toMatch(/With the leakage of the choke the return loss is/)
  })
})

describe('a core around one wire', () => {
  it('is said to saturate, and nothing is ok beside it', () => {
    const answer = window({ ...PAIR, chokeH: '51u', chokeWires: 'one' })
    expect(answer.verdict).toBe('unknown')
    expect(words(answer)).toContain('Around one wire it is no common-mode choke but an inductor')
  })
})

describe('windings that cannot be', () => {
  it('are refused with the field that asks for them', () => {
    expect(issuesOf(windowCheck, { ...PAIR, chokeH: '1u', chokeLeakageH: '3u' })[0]).toMatch(/^chokeLeakageH/)
  })
})

describe('what opens a shut window', () => {
  const SHUT = { ...PAIR, bitRateHz: '10M', neededDb: '30', toleranceFrac: '20 %' }

  it('is a choke with its values, and its own window is not refused', () => {
    const shut = window(SHUT)
    expect(shut.verdict).toBe('fails')
    const opener =
      /A common-mode choke of ([\d.]+ [µm]?H) (alone opens it|and ([\d.]+ .?F) in C .*?): leakage ([\d.]+ .?H) at most, ([\d.]+ .?F)/u.exec(
        words(shut),
      )
    expect(opener).not.toBeNull()
    const [, chokeH = '', , , chokeLeakageH = '', chokeF = ''] = opener ?? []
    const opened = window({ ...SHUT, topology: 'C', chokeH, chokeLeakageH, chokeF })
    expect(['ok', 'marginal']).toContain(opened.verdict)
  })
})
