/**
 * Random common-mode chokes, alone and with a capacitor on each leg, as coupled windings in a live ngspice-45.
 * Another seed: SEED=… npx vitest run --project long test/calc/live-ngspice/choke
 */
import { expect, test } from 'vitest'
import { sweepLossInto } from '../../../src/calc/network/chain.ts'
import { type Choke, chokeConversionRatio, chokePart } from '../../../src/calc/network/choke.ts'
import { BENCH_LOAD, NO_SERIES, NO_SHUNT } from '../../../src/calc/network/circuit.ts'
import { SWEEP, SWEEP_POINTS } from './netlist.ts'
import { type Legs, randomChokes } from './random-chokes.ts'
import { type Solved, solveAll } from './spice.ts'

const SEED = Number(process.env['SEED'] ?? 20_461)
const COUNT = 40
const TOLERANCE_DB = 0.001
const FLOOR_VOLT = 1e-8

/** Two legs through coupled windings; the choke at the source, a capacitor behind it on each leg where there is one. */
function netlistOf({ choke, sourceOhm, loadOhm, legF }: Legs, drive: readonly [number, number]): string {
  const { windingH, leakageH, windingOhm, acrossF, mismatchFrac } = choke
  const first = windingH * (1 + mismatchFrac / 2)
  const second = windingH * (1 - mismatchFrac / 2)
  const coupling = (windingH - leakageH / 2) / Math.sqrt(first * second)
  const leg = (name: string, volts: number, henries: number) => [
    `V${name} ${name}in 0 DC 0 AC ${volts}`,
    `Rs${name} ${name}in ${name}1 ${sourceOhm}`,
    `L${name} ${name}1 ${name}2 ${henries}`,
    ...(acrossF > 0 ? [`Cp${name} ${name}1 ${name}2 ${acrossF}`] : []),
    `Rw${name} ${name}2 ${name}3 ${windingOhm}`,
    ...(legF > 0 ? [`C${name} ${name}3 0 ${legF}`] : []),
    `Rl${name} ${name}3 0 ${loadOhm}`,
  ]
  return [
    '* choke',
    ...leg('a', drive[0], first),
    ...leg('b', drive[1], second),
    `K1 La Lb ${coupling}`,
    '.save v(a3) v(b3)',
    SWEEP,
    '.end',
    '',
  ].join('\n')
}

const volt = (answer: Solved, node: string, at: number): readonly [number, number] => {
  const volts = answer.volts[node]?.[at]
  if (!volts) throw new Error(`ngspice gave no node ${node}`)
  return volts
}

/** Loss of one leg here, the choke before the capacitor. */
function oursDb(legs: Legs, choke: Choke, mode: 'common' | 'differential', hz: Float64Array): Float64Array {
  const out = new Float64Array(hz.length)
  const { legF, sourceOhm: ohm, loadOhm } = legs
  sweepLossInto(
    {
      topology: legF > 0 ? 'LC' : 'L',
      shunt1: { ...NO_SHUNT, capacitanceF: legF },
      shunt2: NO_SHUNT,
      series1: chokePart(choke, mode),
      series2: NO_SERIES,
      bondOhm: 0,
      bondH: 0,
    },
    { ohm, seriesH: 0 },
    { ...BENCH_LOAD, ohm: loadOhm },
    hz,
    out,
  )
  return out
}

const chokes = randomChokes(SEED, COUNT)

test.each(['common', 'differential'] as const)(
  `${COUNT} chokes take from %s mode what coupled windings take in ngspice, seed ${SEED}`,
  {
    timeout: 60_000,
  },
  (mode) => {
    const equal = chokes.map((legs): Legs => ({ ...legs, choke: { ...legs.choke, mismatchFrac: 0 } }))
    const answers = solveAll(equal.map((legs) => netlistOf(legs, mode === 'common' ? [1, 1] : [1, -1])))
    let compared = 0
    answers.forEach((answer, i) => {
      const legs = equal[i]
      if (!legs) throw new Error(`no circuit ${i}`)
      const ours = oursDb(legs, legs.choke, mode, Float64Array.from(answer.hz))
      const bare = legs.loadOhm / (legs.sourceOhm + legs.loadOhm)
      answer.hz.forEach((hz, at) => {
        const theirs = 20 * Math.log10(bare / Math.hypot(...volt(answer, 'a3', at)))
        compared++
        expect(Math.abs((ours[at] ?? Number.NaN) - theirs), `${hz} Hz, ${JSON.stringify(legs)}`).toBeLessThan(
          TOLERANCE_DB,
        )
      })
    })
    expect(compared).toBe(COUNT * SWEEP_POINTS)
  },
)

test(`${COUNT} unequal chokes turn common mode into signal as in ngspice, seed ${SEED}`, { timeout: 60_000 }, () => {
  const alone = chokes.map((legs): Legs => ({ ...legs, legF: 0 }))
  const answers = solveAll(alone.map((legs) => netlistOf(legs, [1, 1])))
  let compared = 0
  answers.forEach((answer, i) => {
    const legs = alone[i]
    if (!legs) throw new Error(`no circuit ${i}`)
    const bare = legs.loadOhm / (legs.sourceOhm + legs.loadOhm)
    answer.hz.forEach((hz, at) => {
      const [aRe, aIm] = volt(answer, 'a3', at)
      const [bRe, bIm] = volt(answer, 'b3', at)
      const theirs = Math.hypot(aRe - bRe, aIm - bIm) / bare
      const ours = chokeConversionRatio(legs.choke, legs, hz)
      compared++
      // The difference of two nearly equal voltages: nine digits of either are left.
      expect(Math.abs(ours - theirs), `${hz} Hz, ${JSON.stringify(legs)}: ${ours} / ${theirs}`).toBeLessThan(
        1e-6 * theirs + FLOOR_VOLT,
      )
    })
  })
  expect(compared).toBe(COUNT * SWEEP_POINTS)
})
