/** Overshoot of orders a single damping does not describe: against published step responses, and in the judgement of a signal. */
import { expect, test } from 'vitest'
import { exactly } from '../../../src/calc/loading/box.ts'
import { signalEnds } from '../../../src/calc/loading/inductor.ts'
import { judgeLoading } from '../../../src/calc/loading/judge.ts'
import { overshootOf, type StepNetwork, stepOvershoot } from '../../../src/calc/loading/overshoot.ts'
import { lineKindById } from '../../../src/reference/line-kinds.ts'

const NO_DAMPER = { damperF: 0, damperOhm: 0 }

test('a Butterworth filter of third order goes over by 8.15 %, a Bessel filter by 0.75 % (published step responses)', () => {
  // between 1 Ω and 1 Ω, 1 rad/s: 1, 2, 1; Bessel 0.3374, 0.9705, 2.2034
  const at = (source1H: number, farads: number, load2H: number) =>
    stepOvershoot({ sourceOhm: 1, loadOhm: 1, source1H, farads, load2H, ...NO_DAMPER })
  expect(at(1, 2, 1)).toBeCloseTo(0.0815, 4)
  expect(at(0.3374, 0.9705, 2.2034)).toBeCloseTo(0.0075, 3)
})

test('a section of second order goes over by e^(−πζ/√(1 − ζ²))', () => {
  for (const damping of [0.2, 0.5, 0.69]) {
    const network = { sourceOhm: 1, loadOhm: Number.POSITIVE_INFINITY, load2H: 0, ...NO_DAMPER }
    // ζ = (R/2)·√(C/L)
    expect(stepOvershoot({ ...network, source1H: 1, farads: 4 * damping ** 2 })).toBeCloseTo(overshootOf(damping), 5)
  }
})

test('a damper of √(L/C) and 4·C takes most of the overshoot, a resistor far from it does not', () => {
  const network = { sourceOhm: 0.1, loadOhm: Number.POSITIVE_INFINITY, source1H: 1, load2H: 0, farads: 1 }
  const bare = stepOvershoot({ ...network, ...NO_DAMPER })
  const damped = stepOvershoot({ ...network, damperF: 4, damperOhm: 1 })
  expect(bare).toBeGreaterThan(0.8)
  expect(damped).toBeLessThan(0.5)
  expect(stepOvershoot({ ...network, damperF: 4, damperOhm: 30 })).toBeGreaterThan(damped)
})

test('with a coil on either side and a damper it goes over as the circuit does that is integrated step by step', () => {
  const networks: readonly StepNetwork[] = [
    { sourceOhm: 0.3, loadOhm: 5, source1H: 1, load2H: 0.2, farads: 1, damperF: 2, damperOhm: 1 },
    { sourceOhm: 1, loadOhm: 1, source1H: 3, load2H: 0.5, farads: 0.5, damperF: 0.5, damperOhm: 0.2 },
    { sourceOhm: 0.1, loadOhm: 20, source1H: 1, load2H: 1, farads: 1, damperF: 4, damperOhm: 3 },
  ]
  const over = networks.map(integrated)
  // the second only creeps up to its end: two decays that must count once each
  expect(over.map((share) => share > 0.1)).toEqual([true, false, true])
  networks.forEach((network, i) => {
    expect(stepOvershoot(network)).toBeCloseTo(over[i] ?? Number.NaN, 4)
  })
})

test('a ring that a slower decay holds down at first goes over when that has died away', () => {
  const bare = { sourceOhm: 4.15, loadOhm: 0.108, source1H: 9.12, load2H: 3.01, farads: 0.306, ...NO_DAMPER }
  const damped = { sourceOhm: 2.5, loadOhm: 1, source1H: 6.6, load2H: 5.6, farads: 0.4, damperF: 0.25, damperOhm: 2.2 }
  expect(integrated(bare)).toBeGreaterThan(0.1)
  for (const network of [bare, damped]) expect(stepOvershoot(network)).toBeCloseTo(integrated(network), 3)
})

/** Currents of both coils and volts of both capacitors by Runge and Kutta; the load's share of 1 V over what it ends at. */
function integrated({ sourceOhm, loadOhm, source1H, load2H, farads, damperF, damperOhm }: StepNetwork): number {
  const slope = ([in1 = 0, out = 0, node = 0, damped = 0]: readonly number[]): readonly number[] => {
    const into = damperF === 0 ? 0 : (node - damped) / damperOhm
    return [
      (1 - sourceOhm * in1 - node) / source1H,
      (node - loadOhm * out) / load2H,
      (in1 - out - into) / farads,
      damperF === 0 ? 0 : into / damperF,
    ]
  }
  const along = (from: readonly number[], by: readonly number[], share: number) =>
    from.map((x, i) => x + share * (by[i] ?? 0))
  const step = 2e-3
  let state: readonly number[] = [0, 0, 0, 0]
  let most = 0
  for (let sec = 0; sec < 40; sec += step) {
    const a = slope(state)
    const b = slope(along(state, a, step / 2))
    const c = slope(along(state, b, step / 2))
    const d = slope(along(state, c, step))
    state = state.map((x, i) => x + (step / 6) * ((a[i] ?? 0) + 2 * (b[i] ?? 0) + 2 * (c[i] ?? 0) + (d[i] ?? 0)))
    most = Math.max(most, (sourceOhm + loadOhm) * (state[1] ?? 0))
  }
  return most - 1
}

test.each(['rs-485', 'can'])('a T of Butterworth values on %s is not a clean yes', (id) => {
  const kind = lineKindById(id)
  if (!kind) throw new Error(`no ${id}`)
  const facts = { kind, bitRateHz: 100e3 }
  const ends = signalEnds(facts)
  if (!ends) throw new Error('no ends')
  const ohm = Number.isFinite(ends.loadOhm) ? ends.sourceOhm : 2 * ends.sourceOhm
  const w = 2 * Math.PI * 3e6
  // of each leg: half the henries, twice the farads of what the signal meets
  const filter = {
    topology: 'T',
    inductanceH: exactly(ohm / w / 2),
    capacitorF: exactly((2 * 2) / (ohm * w)),
  } as const
  const { reasons } = judgeLoading({ facts, taken: { isPair: true, existingF: 0, crossF: 0, suppressorF: 0 }, filter })
  const ring = reasons.find(({ is }) => is === 'overshoot' || is === 'ringing')
  expect(ring?.verdict).toBe('marginal')
  if (id === 'rs-485') expect(ring).toMatchObject({ is: 'overshoot', overshootFrac: expect.closeTo(0.0815, 3) })
})
