/** The bound over the boxes of all contacts beside random points of them, solved by the exact sums of the whole plate. */
import { describe, expect, it } from 'vitest'
import type { Surroundings } from '../../../src/calc/bounds/surroundings.ts'
import { type Complex, magnitude, multiply, ONE, subtract, ZERO } from '../../../src/calc/connector/complex.ts'
import { boxesAt, halvesOf, type Plated } from '../../../src/calc/connector/plate/cells.ts'
import { metTogether } from '../../../src/calc/connector/plate/met.ts'
import { othersThan, plateOf } from '../../../src/calc/connector/plate/plate.ts'
import { DIRECTIONS, reachOf, reachOfPoint } from '../../../src/calc/connector/plate/reach.ts'
import { ALPHA, BETA, DELTA, OWN, PLATE, SHARE } from '../../../src/calc/connector/plate/share.ts'
import { boundTogether } from '../../../src/calc/connector/plate/together.ts'
import { atOnce } from '../../../src/calc/line/evaluate.ts'
import type { Topology } from '../../../src/calc/types.ts'
import { type PlateContact, plateShareOf, type Stage, sharedLosses } from '../../support/exact-plate.ts'
import { randomFrom } from './random.ts'

const TOPOLOGIES: readonly Topology[] = ['C', 'C', 'C', 'LC', 'CL', 'PI', 'T', 'L']
const ESR = 0.03
const DCR = 0.2
const PARALLEL_F = 3e-12

type Drawn = { readonly plated: Plated; readonly around: Surroundings }

function drawn(next: () => number): Drawn {
  const topology = TOPOLOGIES[Math.floor(next() * TOPOLOGIES.length)] as Topology
  const henries = 10 ** (-7 + 2 * next())
  const sources = next() < 0.3 ? [1, 10, 50, 150] : [10 ** (3 * next())]
  const around: Surroundings = {
    topology,
    needs: [],
    sources: sources.map((ohm) => ({ ohm, seriesH: next() < 0.3 ? 1e-7 * next() : 0 })),
    load: {
      ohm: 10 ** (1 + 4 * next()),
      parallelF: next() < 0.3 ? 50e-12 * next() : 0,
      parallelH: Number.POSITIVE_INFINITY,
    },
    esrOhm: ESR,
    eslH: 0.4e-9 * next(),
    bondOhm: 0,
    bondH: 0,
    inductancesH: [henries, henries * (1.1 + 0.4 * next())],
    dcrOhm: DCR,
    inductorParallelF: PARALLEL_F,
  }
  const spread = 0.05 + 0.4 * next()
  const shares = topology === 'L' ? { least: 1, most: 1.3 } : { least: 1 - spread, most: 1 + spread / 2 }
  const marked = topology === 'L' ? henries : 10 ** (-10 + 3 * next())
  return { plated: { placed: [around], shares, marked }, around }
}

/** One point of the box as the whole plate is solved with. */
function pointOf({ plated, around }: Drawn, hz: number, pick: () => number): PlateContact {
  const w = 2 * Math.PI * hz
  const { topology, sources, load, eslH, inductancesH } = around
  const within = ([low = 0, high = 0]: readonly number[]) => low + pick() * (high - low)
  const { least, most } = plated.shares
  const shunt = (): Stage => {
    const farads = plated.marked * within([least, most])
    const x = w * eslH - 1 / (w * farads)
    return { shuntSie: [ESR / (ESR * ESR + x * x), -x / (ESR * ESR + x * x)] }
  }
  const coil = (): Stage => {
    const x = w * (topology === 'L' ? plated.marked * within([least, most]) : within(inductancesH))
    return { seriesOhm: [DCR, x / (1 - w * x * PARALLEL_F)] }
  }
  const stages: Readonly<Record<Topology, () => readonly Stage[]>> = {
    C: () => [shunt()],
    L: () => [coil()],
    LC: () => [coil(), shunt()],
    CL: () => [shunt(), coil()],
    PI: () => [shunt(), coil(), shunt()],
    T: () => [coil(), shunt(), coil()],
  }
  const source = sources[Math.floor(pick() * sources.length * 0.999)] ?? { ohm: 0, seriesH: 0 }
  return {
    stages: stages[topology](),
    sourceOhm: [source.ohm, w * source.seriesH],
    loadSie: [1 / load.ohm, w * load.parallelF],
  }
}

/** Inside, or at one of the ends. */
const picker = (next: () => number) => () => (next() < 0.6 ? Math.round(next()) : next())

function boundsOf(contacts: readonly Drawn[], hz: number, bondOhm: Complex) {
  const plate = atOnce(
    plateOf(
      contacts.map(({ plated }) => plated),
      hz,
      bondOhm,
    ),
  )
  return contacts.map(({ plated }, i) => {
    const others = othersThan(plate, i)
    const bounded = boundTogether(boxesAt(plated, hz) ?? [], others)
    const occursDb = metTogether(bounded.at, { boxes: plate.boxes, butAt: i }, others, Number.NEGATIVE_INFINITY)
    return { ...bounded, occursDb }
  })
}

const ROUNDING_DB = 1e-6

describe('the least loss in a shared bond, over the boxes of all contacts', () => {
  it('is never undercut by a point of them, and lies near one that occurs', () => {
    const next = randomFrom(41)
    let [worstUnder, gap, cases] = [Number.NEGATIVE_INFINITY, 0, 0]
    for (let run = 0; run < 60; run++) {
      const contacts = Array.from({ length: 2 + Math.floor(next() * 10) }, () => drawn(next))
      const hz = 10 ** (5 + 3.3 * next())
      const w = 2 * Math.PI * hz
      const bondOhm: Complex = [2.5e-3, w * 10 ** (-10 + 1.3 * next())]
      const bounds = boundsOf(contacts, hz, bondOhm)
      for (let k = 0; k < 40; k++) {
        const found = sharedLosses(
          contacts.map((one) => pointOf(one, hz, picker(next))),
          bondOhm,
        )
        found.forEach(({ togetherDb }, i) => {
          worstUnder = Math.max(worstUnder, (bounds[i]?.leastDb ?? 0) - togetherDb)
        })
      }
      for (const { leastDb, occursDb } of bounds) {
        expect(occursDb).toBeGreaterThanOrEqual(leastDb - ROUNDING_DB)
        gap += occursDb - leastDb
        cases += 1
      }
    }
    expect(worstUnder).toBeLessThan(ROUNDING_DB)
    // the bound is no mere worst guess: on average it lies within a third of a decibel of what occurs
    expect(gap / cases).toBeLessThan(0.35)
  })

  it('is the loss alone where nobody else is on the plate', () => {
    const next = randomFrom(42)
    for (let run = 0; run < 40; run++) {
      const one = drawn(next)
      const hz = 10 ** (5 + 3 * next())
      const bondOhm: Complex = [2.5e-3, 2 * Math.PI * hz * 1e-9]
      const [bound] = boundsOf([one], hz, bondOhm)
      const losses = Array.from({ length: 60 }, () => {
        const [loss] = sharedLosses([pointOf(one, hz, picker(next))], bondOhm)
        return loss?.aloneDb ?? Number.NaN
      })
      expect(Math.min(...losses)).toBeGreaterThan((bound?.leastDb ?? 0) - ROUNDING_DB)
      // nothing is given away but what is not looked at closer
      expect(bound?.occursDb).toBeLessThan((bound?.leastDb ?? 0) + 0.011)
    }
  })

  it('says nothing where a bead on the plate is not known at the frequency', () => {
    const next = randomFrom(43)
    const [one, other] = [drawn(next), drawn(next)]
    const points = [1e6, 3e6, 10e6].map((hz) => ({ hz, ohm: 30, reactanceOhm: { least: 20, most: 20 } }))
    const bead = { points, share: { least: 0.8, most: 1 } }
    const beaded = { ...other.plated, placed: [{ ...other.around, topology: 'LC' as const, bead }] }
    const at = (hz: number) => boundsOf([one, { ...other, plated: beaded }], hz, [1e-3, 0.01])
    expect(at(30e6).map(({ leastDb }) => leastDb)).toEqual([-400, -400])
    expect(at(5e6)[0]?.leastDb).toBeGreaterThan(-400)
  })
})

describe('a cell of a box of tolerances', () => {
  it('has Δ and Δ times every ratio affine along each part: what lies half-way is half-way', () => {
    const next = randomFrom(44)
    let edges = 0
    for (let run = 0; run < 40; run++) {
      const { plated } = drawn(next)
      const node = { least: 20e-12, most: 90e-12, inBare: false }
      const [around] = plated.placed as [Surroundings]
      const placed =
        run % 2 === 0
          ? [around]
          : [
              { ...around, sourceNodeF: node },
              { ...around, loadNodeF: node },
            ]
      for (const cell of boxesAt({ ...plated, placed }, 10 ** (5 + 3 * next())) ?? []) {
        const [lower, upper] = halvesOf(cell)
        const { shares } = cell.box
        const read = (point: number, of: number): Complex => [
          shares[SHARE * point + of] as number,
          shares[SHARE * point + of + 1] as number,
        ]
        const cleared = (point: number, of: number): Complex =>
          of === DELTA ? read(point, DELTA) : multiply(read(point, DELTA), read(point, of))
        cell.corners.forEach((from, i) => {
          const middle = upper.corners[i] as number
          if (middle === from) return
          // the far end of that edge is where the lower half has the same middle
          const to = cell.corners[lower.corners.indexOf(middle)] as number
          for (const of of [DELTA, ALPHA, BETA, OWN, PLATE]) {
            const [a, b, m] = [cleared(from, of), cleared(to, of), cleared(middle, of)]
            const half: Complex = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
            expect(magnitude(subtract(m, half))).toBeLessThanOrEqual(1e-9 * (magnitude(a) + magnitude(b)))
            edges += 1
          }
        })
      }
    }
    expect(edges).toBeGreaterThan(500)
  })

  it('reaches no less far than any of its points, and little farther', () => {
    const next = randomFrom(45)
    let worst = Number.NEGATIVE_INFINITY
    for (let run = 0; run < 60; run++) {
      const one = drawn(next)
      const hz = 10 ** (5 + 3.3 * next())
      const alpha = reachOf(boxesAt(one.plated, hz) ?? [], { of: ONE, by: ZERO })
      const beta = reachOf(boxesAt(one.plated, hz) ?? [], { of: ZERO, by: ONE })
      let [farthest, most] = [0, 0]
      for (let k = 0; k < 200; k++) {
        const { alphaSie, betaSie } = plateShareOf(pointOf(one, hz, picker(next)))
        for (let d = 0; d < DIRECTIONS; d++) {
          const beyond = [
            (reachOfPoint(...alphaSie, d) - (alpha[d] as number)) / magnitude(alphaSie),
            (reachOfPoint(...betaSie, d) - (beta[d] as number)) / magnitude(betaSie),
          ]
          // an inductor alone sends nothing to the plate: 0/0
          for (const share of beyond) if (share > worst) worst = share
        }
        farthest = Math.max(farthest, magnitude(alphaSie))
      }
      for (let d = 0; d < DIRECTIONS; d++) most = Math.max(most, alpha[d] as number)
      expect(most).toBeLessThanOrEqual(1.1 * farthest)
    }
    expect(worst).toBeLessThan(1e-9)
    expect(worst).toBeGreaterThan(-0.01)
  })
})
