/** What the judgement of a signal lets pass holds for every part drawn inside its box, worked out another way. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { judgeLoading } from '../../../src/calc/loading/judge.ts'
import type { Topology } from '../../../src/calc/types.ts'
import { lineKindById } from '../../../src/reference/line-kinds.ts'

type Complex = readonly [re: number, im: number]
const add = ([a, b]: Complex, [c, d]: Complex): Complex => [a + c, b + d]
const over = ([a, b]: Complex, [c, d]: Complex): Complex => {
  const square = c * c + d * d
  return [(a * c + b * d) / square, (b * c - a * d) / square]
}
const beside = (z: Complex, y: Complex): Complex => over([1, 0], add(over([1, 0], z), y))

/** Impedance looking in, from the far end: each coil adds jωL, each capacitor stands beside what is behind it. */
function lookedIn(parts: readonly (readonly ['L' | 'C', number])[], loadOhm: number, hz: number): Complex {
  const omega = 2 * Math.PI * hz
  return parts.reduceRight<Complex>(
    (z, [is, size]) => (is === 'L' ? add(z, [0, omega * size]) : size > 0 ? beside(z, [0, omega * size]) : z),
    [loadOhm, 0],
  )
}

function returnLoss(z: Complex, referenceOhm: number): number {
  const [re, im] = over(add(z, [-referenceOhm, 0]), add(z, [referenceOhm, 0]))
  return -20 * Math.log10(Math.hypot(re, im))
}

/** A mask as its standard prints it, in dB. */
const MASKS: Readonly<
  Record<
    string,
    { readonly ohm: readonly number[]; readonly db: (hz: number) => number; readonly span: readonly [number, number] }
  >
> = {
  'ethernet-100base-tx': {
    ohm: [85, 100, 115],
    span: [2e6, 80e6],
    db: (hz) => (hz <= 30e6 ? 16 : hz <= 60e6 ? 16 - 20 * Math.log10(hz / 30e6) : 10),
  },
  'ethernet-1000base-t': {
    ohm: [100],
    span: [1e6, 100e6],
    db: (hz) => (hz <= 40e6 ? 16 : 10 - 20 * Math.log10(hz / 80e6)),
  },
}

const TOPOLOGIES: readonly Topology[] = ['L', 'LC', 'CL', 'PI', 'T']
const span = (low: number, high: number) =>
  fc
    .tuple(
      fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }),
      fc.double({ min: 1, max: 1.6, noNaN: true }),
    )
    .map(([log, ratio]) => ({ least: Math.exp(log), most: ratio * Math.exp(log) }))
const inside = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 5, maxLength: 5 })

describe('a mask that the judgement says is kept', () => {
  for (const [id, mask] of Object.entries(MASKS))
    it(`of ${id} is kept by every part in the box, wherever what else is on the line stands (seed 80216)`, () => {
      const kind = lineKindById(id)
      if (!kind) throw new Error(id)
      let kept = 0
      fc.assert(
        fc.property(
          fc.constantFrom(...TOPOLOGIES),
          span(1e-9, 80e-9),
          span(0.3e-12, 12e-12),
          fc.double({ min: 0, max: 5e-12, noNaN: true }),
          fc.array(inside, { minLength: 6, maxLength: 6 }),
          (topology, inductanceH, capacitorF, existingF, draws) => {
            const taken = { isPair: true, existingF, crossF: 0, suppressorF: 0 }
            const judged = judgeLoading({ facts: { kind }, taken, filter: { topology, inductanceH, capacitorF } })
            if (judged.verdict === 'fails') return
            kept += 1
            for (const [a = 0, b = 0, c = 0, d = 0, e = 0] of draws) {
              const at = (of: { least: number; most: number }, t: number) => of.least + t * (of.most - of.least)
              const [l1, l2] = [2 * at(inductanceH, a), 2 * at(inductanceH, b)]
              const [c1, c2] = [at(capacitorF, c) / 2, at(capacitorF, d) / 2]
              const other = (node: number) => (Math.floor(3 * e) === node ? existingF : 0)
              const parts: Readonly<Record<string, readonly (readonly ['L' | 'C', number])[]>> = {
                L: [
                  ['C', other(0)],
                  ['L', l1],
                  ['C', other(1) + other(2)],
                ],
                LC: [
                  ['C', other(0)],
                  ['L', l1],
                  ['C', c1 + other(1) + other(2)],
                ],
                CL: [
                  ['C', c1 + other(0)],
                  ['L', l1],
                  ['C', other(1) + other(2)],
                ],
                PI: [
                  ['C', c1 + other(0)],
                  ['L', l1],
                  ['C', c2 + other(1) + other(2)],
                ],
                T: [
                  ['C', other(0)],
                  ['L', l1],
                  ['C', c1 + other(1)],
                  ['L', l2],
                  ['C', other(2)],
                ],
              }
              const ladder = parts[topology] ?? []
              let least = { db: Number.POSITIVE_INFINITY, hz: 0 }
              for (let i = 0; i <= 40; i++) {
                const hz = mask.span[0] * (mask.span[1] / mask.span[0]) ** (i / 40)
                const z = lookedIn(ladder, 100, hz)
                for (const ohm of mask.ohm) {
                  const db = returnLoss(z, ohm) - mask.db(hz)
                  if (db < least.db) least = { db, hz }
                }
              }
              expect(least.db, `${topology} at ${least.hz} Hz`).toBeGreaterThan(-0.01)
            }
          },
        ),
        { seed: 80216, numRuns: 100 },
      )
      expect(kept).toBeGreaterThan(10)
    })
})
