/** A bead by its points: against the R ∥ L ∥ C model of a published bead and its loss in ngspice. */
import { describe, expect, test } from 'vitest'
import { filterCheck } from '../../../src/calc/checks/filter/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { type Bead, beadBelow, beadImpedance, beadOhms, beadSpanH } from '../../../src/calc/network/bead.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'

/** 0.3 Ω and 1.208 µH ∥ 1.678 pF ∥ 1082 Ω, a published model (S17). */
function model(hz: number): readonly [re: number, im: number] {
  const w = 2 * Math.PI * hz
  const [g, b] = [1 / 1082, w * 1.678e-12 - 1 / (w * 1.208e-6)]
  const square = g * g + b * b
  return [0.3 + g / square, -b / square]
}

const HZ = [10e6, 30e6, 100e6, 300e6]
const share = { least: 1, most: 1 }
const bead = (hz: readonly number[], span = share): Bead => ({
  points: hz.map((one) => {
    const [ohm, x] = model(one)
    return { hz: one, ohm, reactanceOhm: { least: x, most: x } }
  }),
  share: span,
})

const COMMON = {
  eslH: '0',
  bondOhm: '0',
  bondH: '0',
  suppressorF: '0',
  existingF: '0',
  inductorParallelF: '0',
  biasFrac: '0',
  toleranceFrac: '0',
  sourceOhm: '50',
  loadOhm: '50',
  lineKind: 'discrete-28v',
}
const lists = (hz: readonly number[]) => ({
  beadHz: hz.join(';'),
  beadOhm: hz.map((one) => model(one)[0].toPrecision(7)).join(';'),
  beadReactanceOhm: hz.map((one) => model(one)[1].toPrecision(7)).join(';'),
})

describe('a bead', () => {
  test('is what was entered at its frequencies, and nothing outside of them', () => {
    for (const hz of HZ) {
      const [ohm, x] = model(hz)
      expect(beadOhms(bead(HZ), hz)?.ohm.least).toBeCloseTo(ohm, 9)
      expect(beadOhms(bead(HZ), hz)?.reactanceOhm.most).toBeCloseTo(x, 9)
    }
    expect(beadOhms(bead(HZ), 9.9e6)).toBeUndefined()
    expect(beadOhms(bead(HZ), 301e6)).toBeUndefined()
  })

  test('lies between two of them on a straight line: log R and X over log f', () => {
    const middle = beadOhms(bead(HZ), Math.sqrt(30e6 * 100e6))
    expect(middle?.ohm.least).toBeCloseTo(Math.sqrt(model(30e6)[0] * model(100e6)[0]), 6)
    expect(middle?.reactanceOhm.least).toBeCloseTo((model(30e6)[1] + model(100e6)[1]) / 2, 6)
  })

  test('is its own R ∥ L below the first: the inductance of the model within 2 %', () => {
    const { henries, parallelOhm } = beadBelow(bead(HZ), 1)
    expect(henries / 1.208e-6).toBeCloseTo(1, 1)
    expect(parallelOhm / 1082).toBeCloseTo(1, 0)
    const [re, im] = beadImpedance(bead(HZ), 1, 10e6 * (1 - 1e-9))
    expect(re).toBeCloseTo(model(10e6)[0], 5)
    expect(im).toBeCloseTo(model(10e6)[1], 5)
  })

  test('may have less of both by what the current takes, more by its tolerance, each on its own', () => {
    const spread = beadOhms(bead(HZ, { least: 0.4, most: 1.25 }), 300e6)
    const [ohm, x] = model(300e6)
    expect(x).toBeLessThan(0)
    expect(spread?.ohm).toEqual({ least: 0.4 * ohm, most: 1.25 * ohm })
    expect(spread?.reactanceOhm).toEqual({ least: 1.25 * x, most: 0.4 * x })
    expect(beadSpanH(bead(HZ, { least: 0.4, most: 1.25 })).least).toBeLessThan(0.41 * 1.208e-6)
  })

  test('alone between 50 Ω takes 21.1185 dB at 100 MHz, as in ngspice, and 2.2956 dB at 10 MHz', () => {
    const facts = { ...COMMON, topology: 'L', neededDb: '1', ...lists(HZ) }
    for (const [hz, db] of [
      ['100M', 21.118451],
      ['10M', 2.295587],
      ['300M', 11.856611],
    ] as const) {
      expect(si(run(windowCheck, { ...facts, frequencyHz: hz }), 'worstLossDb')).toBeCloseTo(db, 4)
      expect(si(run(filterCheck, { ...facts, frequencyHz: hz }), 'insertionLossDb')).toBeCloseTo(db, 4)
      expect(si(run(filterCheck, { ...facts, frequencyHz: hz }), 'worstInsertionLossDb')).toBeCloseTo(db, 2)
    }
  })

  test('at the line current earns what is left of it', () => {
    const facts = { ...COMMON, topology: 'L', frequencyHz: '100M', neededDb: '20', ...lists(HZ) }
    expect(run(windowCheck, facts).verdict).toBe('ok')
    const less = run(windowCheck, { ...facts, beadBiasFrac: '50 %' })
    expect(less.verdict).toBe('fails')
    const [re, im] = model(100e6)
    expect(si(less, 'worstLossDb')).toBeCloseTo(20 * Math.log10(Math.hypot(1 + re / 200, im / 200)), 4)
  })

  test('is unknown outside of its frequencies, and says which fact is missing', () => {
    const facts = { ...COMMON, topology: 'LC', frequencyHz: '500M', neededDb: '20', ...lists(HZ) }
    for (const check of [windowCheck, filterCheck]) {
      const result = run(check, { ...facts, capacitanceF: '1n' })
      expect(result.verdict).toBe('unknown')
      expect(result.findings.map(({ sentence }) => sentence).join(' ')).toContain(
        'Enter R and X of a frequency on either side',
      )
    }
    const short = run(windowCheck, {
      ...facts,
      frequencyHz: '20M',
      beadHz: '10M;30M',
      beadOhm: '3;4',
      beadReactanceOhm: '1;2',
    })
    expect(short.verdict).toBe('unknown')
    expect(short.findings.map(({ sentence }) => sentence).join(' ')).toContain('three frequencies')
    // one |Z| is the largest of one: nothing is wrong with it yet
    const single = { beadHz: '1M', beadOhm: '3', beadReactanceOhm: '', beadImpedanceOhm: '5' }
    const one = run(windowCheck, { ...facts, ...single, frequencyHz: '20M' })
    expect(one.findings.map(({ sentence }) => sentence).join(' ')).toContain('three frequencies')
    expect(issuesOf(windowCheck, { beadHz: '1M;2M', beadOhm: '3;3', beadImpedanceOhm: '5;4' })[0]).toContain('largest')
  })

  test('by |Z| may be of either sign from its largest on: never more than with the sign entered', () => {
    const facts = { ...COMMON, topology: 'LC', frequencyHz: '200M', neededDb: '10' }
    const signed = run(windowCheck, { ...facts, ...lists(HZ) })
    const magnitude = HZ.map((hz) => Math.hypot(...model(hz)).toPrecision(7)).join(';')
    const either = run(windowCheck, { ...facts, ...lists(HZ), beadReactanceOhm: '', beadImpedanceOhm: magnitude })
    expect(si(either, 'leastCapacitanceF') ?? 0).toBeGreaterThanOrEqual(
      (si(signed, 'leastCapacitanceF') ?? 1) * (1 - 1e-9),
    )
  })

  test('a list that cannot be says what is wrong', () => {
    expect(issuesOf(windowCheck, { ...lists(HZ), beadOhm: '1;2;3' })).toEqual([
      'beadOhm: 3 of these for 4 bead frequencies; give one for each, separated by “;”.',
    ])
    expect(issuesOf(filterCheck, { beadHz: '1M;1M;2M' })[0]).toContain('rising')
    expect(issuesOf(windowCheck, { beadHz: '1M;2M;3M', beadOhm: '5;6;7', beadImpedanceOhm: '4;8;9' })[0]).toContain(
      'below R',
    )
  })
})
