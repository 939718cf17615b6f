/**
 * Trials with noise in every reading: a circuit is drawn, two capacitors and a clamp are read with an error inside what
 * was stated, and both ends have to lie in the spans that come back. The circuit is worked out here, in complex numbers.
 */
import { expect, test } from 'vitest'
import { loopCheck } from '../../../src/calc/checks/loop/check.ts'
import { spanFromTwo } from '../../../src/calc/network/trial-span.ts'
import { type Complex, inverse, parallel, series } from '../../support/complex.ts'
import { random } from '../../support/random.ts'
import { run, si } from '../../support/run-check.ts'

const RUNS = 1000
const size = ({ re, im }: Complex): number => Math.hypot(re, im)
const db = (ratio: number): number => 20 * Math.log10(ratio)

/** Fall of the load voltage when `farad` is laid across it. */
function fallOf(source: Complex, load: Complex, farad: number, hz: number): number {
  const capacitor = { re: 0, im: -1 / (2 * Math.PI * hz * farad) }
  const share = (of: Complex) => size(of) / size(series(source, of))
  return db(share(load) / share(parallel(load, capacitor)))
}

test(`two capacitors: the resistive part of ${RUNS} complex circuits lies in its span`, () => {
  const draw = random(20261126)
  let bounded = 0
  for (let i = 0; i < RUNS; i++) {
    const hz = 10 ** (5 + 2.5 * draw())
    const end = (): Complex => {
      const ohm = 10 ** (0.3 + 2.4 * draw())
      return { re: ohm, im: (draw() - 0.5) * 2 * ohm }
    }
    const [source, load] = [end(), end()]
    const both = inverse(parallel(source, load))
    const offDb = 0.1 + 0.9 * draw()
    const first = (0.3 + 0.7 * draw()) / (2 * Math.PI * hz * (1 / both.re))
    const second = first * (5 + 20 * draw())
    const read = (farad: number) => ({
      farad,
      dropDb: fallOf(source, load, farad, hz) + offDb * (2 * draw() - 1),
    })
    const span = spanFromTwo(read(first), read(second), hz, offDb)
    const ohm = 1 / both.re
    expect(span, `run ${i}`).toBeDefined()
    expect(span?.least ?? Number.POSITIVE_INFINITY, `run ${i}`).toBeLessThanOrEqual(ohm * (1 + 1e-3))
    expect(span?.most ?? 0, `run ${i}`).toBeGreaterThanOrEqual(ohm * (1 - 1e-3))
    if ((span?.most ?? Number.POSITIVE_INFINITY) < 10 * (span?.least ?? 0)) bounded++
  }
  // a span that says anything would hold every circuit
  expect(bounded).toBeGreaterThan(RUNS / 2)
})

test(`capacitors and clamp: both ends of ${RUNS} circuits lie in what the loop check hands over`, () => {
  const draw = random(4291553)
  let solved = 0
  for (let i = 0; i < RUNS; i++) {
    const hz = 10 ** (5 + 2.5 * draw())
    const [a, b] = [10 ** (0.5 + 2.2 * draw()), 10 ** (0.5 + 2.2 * draw())]
    const [source, load] = [Math.max(a, b), Math.min(a, b)]
    const offDb = 0.05 + 0.45 * draw()
    const noise = () => offDb * (2 * draw() - 1)
    const real = (re: number): Complex => ({ re, im: 0 })
    const side = (source * load) / (source + load)
    const first = (0.5 + draw()) / (2 * Math.PI * hz * side)
    const second = first * 8
    const clamp = (source + load) * (0.5 + 2 * draw())
    const result = run(loopCheck, {
      clampOhm: String(clamp),
      fallDb: String(db(1 + clamp / (source + load)) + noise()),
      firstF: String(first),
      firstDb: String(fallOf(real(source), real(load), first, hz) + noise()),
      secondF: String(second),
      secondDb: String(fallOf(real(source), real(load), second, hz) + noise()),
      readAtHz: String(hz),
      offDb: String(offDb),
      higherEnd: 'source',
    })
    const [least, most] = [si(result, 'sourceLeastOhm'), si(result, 'sourceMostOhm')]
    if (least === undefined || most === undefined) continue
    solved++
    expect(least, `run ${i}`).toBeLessThanOrEqual(source * (1 + 1e-3))
    expect(most, `run ${i}`).toBeGreaterThanOrEqual(source * (1 - 1e-3))
    expect(si(result, 'lowerLeastOhm') ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(load * (1 + 1e-3))
    expect(si(result, 'lowerMostOhm') ?? 0).toBeGreaterThanOrEqual(load * (1 - 1e-3))
    // what is handed over works against no less than there is, and no more in series
    const handed = si(result, 'loadOhm') ?? Number.POSITIVE_INFINITY
    expect((least * handed) / (least + handed)).toBeLessThanOrEqual(side * (1 + 1e-3))
    expect(most + handed).toBeGreaterThanOrEqual((source + load) * (1 - 1e-3))
  }
  expect(solved).toBeGreaterThan(RUNS * 0.9)
})
