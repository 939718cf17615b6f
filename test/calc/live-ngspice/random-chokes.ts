/** Common-mode chokes as they are wound, between the legs of a pair. */
import fc from 'fast-check'
import { type Choke, isPossible } from '../../../src/calc/network/choke.ts'
import { between, orNone } from './random-circuits.ts'

export type Legs = {
  readonly choke: Choke
  readonly sourceOhm: number
  readonly loadOhm: number
  /** a capacitor from each leg to chassis behind the choke; 0 for none */
  readonly legF: number
}

const choke: fc.Arbitrary<Choke> = fc
  .record({
    windingH: between(1e-6, 10e-3),
    leakageFrac: between(1e-3, 0.05),
    windingOhm: between(5e-3, 3),
    acrossF: orNone(between(0.3e-12, 30e-12), 0),
    mismatchFrac: between(1e-3, 0.04),
  })
  .map(({ leakageFrac, ...one }) => ({ ...one, leakageH: Number((leakageFrac * one.windingH).toPrecision(6)) }))
  .filter(isPossible)

/** `count` chokes; the same ones for the same seed. */
export function randomChokes(seed: number, count: number): Legs[] {
  const legs = fc.record({
    choke,
    sourceOhm: between(1, 1e3),
    loadOhm: between(1, 10e3),
    legF: orNone(between(10e-12, 100e-9), 0),
  })
  return fc.sample(legs, { seed, numRuns: count })
}
