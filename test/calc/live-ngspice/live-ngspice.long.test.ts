/**
 * Random filters and pairs against a live ngspice-45 (a development dependency), so that the golden file cannot be
 * the only case that agrees. Another seed: SEED=… npx vitest run --project long test/calc/live-ngspice
 */
import { expect, test } from 'vitest'
import { sweepLossInto } from '../../../src/calc/network/chain.ts'
import { TOPOLOGIES } from '../../../src/calc/network/circuit.ts'
import { conversionRatio, ratioDb } from '../../../src/calc/pair.ts'
import { netlistOf, SWEEP, SWEEP_POINTS } from './netlist.ts'
import { dampedCircuits, randomCircuits, randomPairs } from './random-circuits.ts'
import { magnitudes, solveAll } from './spice.ts'

const SEED = Number(process.env['SEED'] ?? 20_461)
const EACH = 20
const PAIRS = 24
const TOLERANCE_DB = 0.001
/** Above 120 dB the voltage left is a millionth of a millionth: ngspice's own rounding shows. */
const DEEP_DB = 120
const DEEP_TOLERANCE_DB = 0.01

const circuits = randomCircuits(SEED, EACH)
const pairs = randomPairs(SEED, PAIRS)

test(`${EACH} filters of each topology agree with ngspice at ${SWEEP_POINTS} frequencies, seed ${SEED}`, {
  timeout: 60_000,
}, () => {
  const answers = solveAll(circuits.map(netlistOf))
  const off: string[] = []
  let compared = 0
  answers.forEach((answer, i) => {
    const wired = circuits[i]
    if (!wired) return
    const hz = Float64Array.from(answer.hz)
    const ours = new Float64Array(hz.length)
    sweepLossInto(wired.circuit, wired.source, wired.load, hz, ours)
    const without = magnitudes(answer, 'r')
    magnitudes(answer, 'k').forEach((volts, at) => {
      const theirs = 20 * Math.log10((without[at] ?? Number.NaN) / volts)
      const error = Math.abs((ours[at] ?? Number.NaN) - theirs)
      compared++
      if (!(error <= (theirs > DEEP_DB ? DEEP_TOLERANCE_DB : TOLERANCE_DB)))
        off.push(`${answer.hz[at]} Hz: ${ours[at]} dB here, ${theirs} dB there, ${JSON.stringify(wired)}`)
    })
  })
  expect(off).toEqual([])
  expect(compared).toBe(TOPOLOGIES.length * EACH * SWEEP_POINTS)
})

test(`${EACH} damped filters of each topology agree with ngspice as well, seed ${SEED}`, { timeout: 60_000 }, () => {
  const damped = dampedCircuits(SEED + 1, EACH)
  let most = 0
  solveAll(damped.map(netlistOf)).forEach((answer, i) => {
    const { circuit, source, load } = damped[i] as (typeof damped)[number]
    const ours = new Float64Array(answer.hz.length)
    sweepLossInto(circuit, source, load, Float64Array.from(answer.hz), ours)
    const without = magnitudes(answer, 'r')
    magnitudes(answer, 'k').forEach((volts, at) => {
      const theirs = 20 * Math.log10((without[at] ?? Number.NaN) / volts)
      const error = Math.abs((ours[at] ?? Number.NaN) - theirs)
      expect(error).toBeLessThan(theirs > DEEP_DB ? DEEP_TOLERANCE_DB : TOLERANCE_DB)
      most = Math.max(most, error)
    })
  })
  expect(most).toBeGreaterThan(0)
})

test(`the random filters of seed ${SEED} have what real ones have: leads, losses, bonds and reactive ends`, () => {
  const share = (has: (wired: (typeof circuits)[number]) => boolean) => circuits.filter(has).length / circuits.length
  expect(circuits).toHaveLength(TOPOLOGIES.length * EACH)
  expect(share(({ circuit }) => circuit.shunt1.eslH > 0 && circuit.shunt1.esrOhm > 0)).toBeGreaterThan(0.25)
  expect(share(({ circuit }) => circuit.series1.parallelF > 0)).toBeGreaterThan(0.4)
  expect(share(({ circuit }) => circuit.bondH > 0)).toBeGreaterThan(0.4)
  expect(share(({ source }) => source.seriesH > 0)).toBeGreaterThan(0.4)
  expect(share(({ load }) => load.parallelF > 0 && Number.isFinite(load.parallelH))).toBeGreaterThan(0.25)
})

test(`${PAIRS} unequal pairs turn common mode into signal as in ngspice, seed ${SEED}`, { timeout: 60_000 }, () => {
  const answers = solveAll(
    pairs.map(({ legF, leg2F, legOhm }) =>
      [
        '* pair',
        'Vin in 0 DC 0 AC 1',
        `R1 in a ${legOhm}`,
        `C1 a 0 ${legF}`,
        `R2 in b ${legOhm}`,
        `C2 b 0 ${leg2F}`,
        '.save v(a) v(b)',
        SWEEP,
        '.end',
        '',
      ].join('\n'),
    ),
  )
  let compared = 0
  answers.forEach((answer, i) => {
    const pair = pairs[i]
    const legA = answer.volts['a']
    const legB = answer.volts['b']
    if (!pair || !legA || !legB) throw new Error(`no answer for pair ${i}`)
    answer.hz.forEach((hz, at) => {
      const [aRe, aIm] = legA[at] ?? [Number.NaN, Number.NaN]
      const [bRe, bIm] = legB[at] ?? [Number.NaN, Number.NaN]
      const theirs = ratioDb(Math.hypot(aRe - bRe, aIm - bIm))
      const ours = ratioDb(conversionRatio(pair, hz))
      compared++
      expect(Math.abs(ours - theirs), `${hz} Hz, ${JSON.stringify(pair)}: ${ours} / ${theirs}`).toBeLessThan(
        TOLERANCE_DB,
      )
    })
  })
  expect(compared).toBe(PAIRS * SWEEP_POINTS)
})
