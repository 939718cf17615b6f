/**
 * What must hold of every window, whatever the numbers. Through the check, as an address fills it.
 * Another seed: SEED=… npx vitest run --project long test/calc/fuzz/window-properties
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { TOPOLOGIES } from '../../../src/calc/network/circuit.ts'
import type { StripRow, Success } from '../../../src/calc/types.ts'
import { LINE_KINDS } from '../../../src/reference/line-kinds.ts'
import { run, si } from '../../support/run-check.ts'
import { logRange } from './log-range.ts'

const SEED = Number(process.env['SEED'] ?? 31_337)
const RUNS = Number(process.env['RUNS'] ?? 50)
const often = { seed: SEED, numRuns: RUNS }
/** Crossings are located to 1e-9 relative; the rest is rounding. */
const SLACK = 1e-8

type Texts = Readonly<Record<string, string>>

const text = (x: number): string => String(x)
const share = (low: number, high: number) => fc.integer({ min: low, max: high }).map((p) => `${p} %`)
const maybe = (some: fc.Arbitrary<string>) => fc.oneof(fc.constant(''), some)

/** Kinds that get an answer, single lines and pairs. */
const kindIds = LINE_KINDS.filter(({ barredWhy }) => barredWhy === undefined).map(({ id }) => id)
/** Topologies that carry a capacitor. */
const withCapacitor = TOPOLOGIES.filter((t) => t !== 'L')

const lines = fc.record({
  lineKind: fc.constantFrom(...kindIds),
  mode: fc.constantFrom('common', 'differential'),
  topology: fc.constantFrom(...withCapacitor),
  frequencyHz: logRange(2e4, 2e9).map(text),
  neededDb: fc.integer({ min: 1, max: 900 }).map((tenths) => text(tenths / 10)),
  sourceOhm: fc.array(logRange(0.5, 5e3), { minLength: 1, maxLength: 2 }).map((all) => all.join(';')),
  loadOhm: logRange(1, 1e5).map(text),
  inductanceH: logRange(20e-9, 50e-6).map(text),
  toleranceFrac: share(0, 60),
  temperatureFrac: share(0, 30),
  biasFrac: share(0, 40),
  ageingDecades: fc.constantFrom('0', '1', '2.5'),
  suppressorF: maybe(logRange(1e-12, 1e-9).map(text)),
  existingF: maybe(logRange(1e-12, 1e-9).map(text)),
  crossF: maybe(logRange(1e-12, 1e-9).map(text)),
  esrOhm: maybe(logRange(1e-3, 0.5).map(text)),
  eslH: maybe(logRange(1e-11, 10e-9).map(text)),
  bondOhm: maybe(logRange(1e-4, 0.1).map(text)),
  bondH: maybe(logRange(1e-11, 20e-9).map(text)),
  maxBuildableF: maybe(logRange(1e-10, 1e-5).map(text)),
})

/** Least marked capacitance; without one that is large enough it is beyond every number. */
const leastOf = (result: Success): number => si(result, 'leastCapacitanceF') ?? Number.POSITIVE_INFINITY
const mostOf = (result: Success): number => si(result, 'mostCapacitanceF') ?? Number.POSITIVE_INFINITY

const answer = (texts: Texts): Success => run(windowCheck, texts)
const notBelow = (grown: number, before: number) => grown >= before * (1 - SLACK)
const notAbove = (grown: number, before: number) => grown <= before * (1 + SLACK)

/** `key` may only push the window one way. */
function grows(key: string, step: fc.Arbitrary<number>, grow: (text: string, step: number) => string) {
  return fc.tuple(lines, step).map(([texts, by]) => ({
    before: texts as Texts,
    after: { ...texts, [key]: grow((texts as Texts)[key] ?? '', by) },
  }))
}

describe(`every window, seed ${SEED}`, () => {
  it('needs no less capacitance when more attenuation is needed', { timeout: 60_000 }, () => {
    const pairs = grows('neededDb', fc.integer({ min: 1, max: 300 }), (t, by) => text(Number(t) + by / 10))
    fc.assert(
      fc.property(pairs, ({ before, after }) => {
        expect(notBelow(leastOf(answer(after)), leastOf(answer(before)))).toBe(true)
      }),
      often,
    )
  })

  const percentMore = (key: string) =>
    grows(key, fc.integer({ min: 1, max: 30 }), (t, by) => `${Number.parseInt(t, 10) + by} %`)

  it.each(['temperatureFrac', 'biasFrac'])(
    'needs no less and stands no more capacitance when %s grows',
    {
      timeout: 60_000,
    },
    (key) => {
      fc.assert(
        fc.property(percentMore(key), ({ before, after }) => {
          const [tight, loose] = [answer(before), answer(after)]
          expect(notBelow(leastOf(loose), leastOf(tight))).toBe(true)
          expect(notAbove(mostOf(loose), mostOf(tight))).toBe(true)
        }),
        often,
      )
    },
  )

  // The box of a larger tolerance holds that of a smaller one, the inductor's as well: what it needs can only grow.
  it('needs no less and stands no more capacitance when the tolerance grows', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(percentMore('toleranceFrac'), ({ before, after }) => {
        const [tight, loose] = [answer(before), answer(after)]
        expect(notBelow(leastOf(loose), leastOf(tight))).toBe(true)
        expect(notAbove(mostOf(loose), mostOf(tight))).toBe(true)
      }),
      often,
    )
  })

  it.each(['suppressorF', 'existingF'])('stands no more capacitance when %s grows', { timeout: 60_000 }, (key) => {
    const pairs = grows(key, logRange(1e-12, 5e-9), (t, by) => text(Number(t) + by))
    let bounded = 0
    fc.assert(
      fc.property(pairs, ({ before, after }) => {
        const most = mostOf(answer(before))
        if (Number.isFinite(most)) bounded++
        expect(notAbove(mostOf(answer(after)), most)).toBe(true)
      }),
      often,
    )
    expect(bounded).toBeGreaterThan(RUNS / 4)
  })

  it('proposes a preferred value inside the window, or none', { timeout: 60_000 }, () => {
    const E12 = ['1.0', '1.2', '1.5', '1.8', '2.2', '2.7', '3.3', '3.9', '4.7', '5.6', '6.8', '8.2']
    let proposed = 0
    fc.assert(
      fc.property(lines, (texts) => {
        const result = answer(texts)
        const proposedF = si(result, 'proposedF')
        if (proposedF === undefined) return
        proposed++
        expect(proposedF).toBeGreaterThanOrEqual(leastOf(result))
        expect(proposedF).toBeLessThanOrEqual(mostOf(result))
        expect(proposedF).toBeLessThanOrEqual(texts.maxBuildableF === '' ? 1e9 : Number(texts.maxBuildableF))
        expect(E12).toContain(proposedF.toExponential(1).split('e')[0])
        expect(Number(proposedF.toExponential(1))).toBe(proposedF)
      }),
      { seed: SEED, numRuns: 2 * RUNS },
    )
    expect(proposed).toBeGreaterThan(RUNS / 4)
  })
})

/** The rows of the strip by topology. */
function rowsOf(result: Success): Readonly<Record<string, StripRow>> {
  const strip = result.pictures.find((p) => p.is === 'strip')
  if (!strip) throw new Error('no strip')
  return Object.fromEntries(strip.rows.map((row) => [row.topology, row]))
}

describe(`source and load swapped, seed ${SEED}`, () => {
  const MIRROR = { C: 'C', L: 'L', LC: 'CL', CL: 'LC', PI: 'PI', T: 'T' } as const
  /** Resistive ends; a line-to-line capacitor sits at the load-side part only, so it is left out. */
  const ends = lines.map((texts) => ({ ...texts, sourceOhm: texts.sourceOhm.split(';')[0] ?? '', crossF: '' }))

  it('swaps the rows of LC and CL and leaves the others alone', { timeout: 60_000 }, () => {
    let unlike = 0
    fc.assert(
      fc.property(ends, (texts) => {
        const there = rowsOf(answer(texts))
        const back = rowsOf(answer({ ...texts, sourceOhm: texts.loadOhm, loadOhm: texts.sourceOhm }))
        for (const topology of TOPOLOGIES) {
          const [one, other] = [there[topology], back[MIRROR[topology]]]
          expect(other?.state, topology).toBe(one?.state)
          // The most may be where a resonance loses the need, which is located as the least is.
          expect(other?.mostF === undefined, topology).toBe(one?.mostF === undefined)
          expect(Math.abs((other?.mostF ?? 0) - (one?.mostF ?? 0)), topology).toBeLessThanOrEqual(
            1e-9 * (one?.mostF ?? 0),
          )
          const [least, mirrored] = [one?.leastF, other?.leastF]
          expect(mirrored === undefined, topology).toBe(least === undefined)
          if (least !== undefined && mirrored !== undefined)
            expect(Math.abs(mirrored - least), `${topology}: ${least} and ${mirrored}`).toBeLessThanOrEqual(
              1e-7 * least,
            )
        }
        if (there['LC']?.leastF !== there['CL']?.leastF) unlike++
      }),
      often,
    )
    expect(unlike).toBeGreaterThan(RUNS / 3)
  })
})

describe(`a single ideal capacitor, seed ${SEED}`, () => {
  const parts = fc.record({
    lineKind: fc.constantFrom('', 'arinc-429-high', 'can', 'rs-422', 'power-28-vdc', 'thermocouple'),
    mode: fc.constantFrom('common', 'differential'),
    hz: fc.array(logRange(1e4, 1e9), { minLength: 1, maxLength: 3 }),
    ohm: fc.array(logRange(0.5, 5e3), { minLength: 1, maxLength: 3 }),
    loadOhm: logRange(1, 1e5),
    neededDb: fc.integer({ min: 10, max: 900 }).map((tenths) => tenths / 10),
    lowPercent: fc.integer({ min: 0, max: 80 }),
    highPercent: fc.integer({ min: 0, max: 200 }),
    temperaturePercent: fc.integer({ min: 0, max: 40 }),
    biasPercent: fc.integer({ min: 0, max: 60 }),
    decades: fc.integer({ min: 0, max: 4 }),
    ageingPercent: fc.integer({ min: 0, max: 7 }),
  })

  it('attenuates by its closed form at every corner of its spread', { timeout: 60_000 }, () => {
    let compared = 0
    fc.assert(
      fc.property(parts, (p) => {
        const result = answer({
          lineKind: p.lineKind,
          mode: p.mode,
          topology: 'C',
          frequencyHz: p.hz.join(';'),
          neededDb: text(p.neededDb),
          sourceOhm: p.ohm.join(';'),
          loadOhm: text(p.loadOhm),
          toleranceFrac: `+${p.highPercent}/-${p.lowPercent} %`,
          temperatureFrac: `${p.temperaturePercent} %`,
          biasFrac: `${p.biasPercent} %`,
          ageingDecades: text(p.decades),
          ageingFracPerDecade: `${p.ageingPercent} %`,
        })
        const markedF = si(result, 'proposedF') ?? si(result, 'leastCapacitanceF')
        const worstDb = si(result, 'worstLossDb')
        if (markedF === undefined || worstDb === undefined) throw new Error('a single capacitor always has a least')
        const kind = LINE_KINDS.find(({ id }) => id === p.lineKind)
        // Between a supply and its return noise meets two wires, each with its capacitor to chassis: C/2 across R.
        const isOfTwoWires = kind?.isPair || (kind?.supply !== undefined && p.mode === 'differential')
        const perLeg = !isOfTwoWires ? 1 : p.mode === 'common' ? 2 : 1 / 2
        // k_low = (1 − tol)(1 − temp)(1 − bias)(1 − k)^decades; k_high = (1 + tol)(1 + temp)
        const less = (percent: number) => 1 - percent / 100
        const kLow =
          less(p.lowPercent) * less(p.temperaturePercent) * less(p.biasPercent) * less(p.ageingPercent) ** p.decades
        const kHigh = (1 + p.highPercent / 100) * (1 + p.temperaturePercent / 100)
        // IL = 10·log10(1 + (2π·f·C·Rs·RL/(Rs + RL))²), every corner, frequency and source
        const all = [kLow, kHigh].flatMap((k) =>
          p.hz.flatMap((hz) =>
            p.ohm.map((ohm) => {
              const [rs, rl] = [ohm * perLeg, p.loadOhm * perLeg]
              return 10 * Math.log10(1 + (2 * Math.PI * hz * k * markedF * ((rs * rl) / (rs + rl))) ** 2)
            }),
          ),
        )
        compared++
        expect(Math.abs(worstDb - Math.min(...all)), `${worstDb} of ${all}`).toBeLessThan(1e-9)
        expect(worstDb).toBeGreaterThanOrEqual(p.neededDb - 2e-9)
      }),
      often,
    )
    expect(compared).toBe(RUNS)
  })
})
