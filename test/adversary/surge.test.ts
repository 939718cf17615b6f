/**
 * The adversary of the surge check: random surges with tolerances, judged by the check; every yes is drawn from inside its
 * box and at its corners and run by a second integrator, and must hold there. Fifty circuits are run by ngspice too.
 * Another seed: SEED=… npx vitest run --project adversary test/adversary/surge. More: RUNS=…
 */
import { expect, test } from 'vitest'
import { surgeCheck } from '../../src/calc/checks/surge/check.ts'
import { atOnce, evaluateFigures, isRefused } from '../../src/calc/line/evaluate.ts'
import { readFields } from '../../src/calc/line/fields.ts'
import type { Figures } from '../../src/calc/types.ts'
import { ratingUsed } from './support/heat.ts'
import { netlistOf, peaksOf } from './support/netlist.ts'
import {
  cornersOf,
  type Drawn,
  drawFrom,
  type RandomSurge,
  randomFrom,
  randomSurge,
  wire,
} from './support/random-surges.ts'
import { stepThrough } from './support/stepped.ts'

const SEED = Number(process.env['SEED'] ?? 73_961)
const RUNS = Number(process.env['RUNS'] ?? 500)
const DRAWS = 20
/** Of a box with many corners so many are run, spread evenly over them. */
const MOST_CORNERS = 20
const SPICE = Number(process.env['SPICE'] ?? 50)
/** The two integrators agree to this; a yes has 5 % to spare. */
const HAIR = 1.002
/** The simulator's steps are a hundredth of a period; the second integrator's are twice as long. */
const SPICE_AGREES = 0.005
const SECOND_AGREES = 0.01

const judged = (surge: RandomSurge): Figures => {
  const figures = atOnce(evaluateFigures(surgeCheck, readFields(surgeCheck, surge.texts)))
  if (isRefused(figures)) throw new Error(JSON.stringify([figures, surge.texts]))
  return figures
}

const surges = (() => {
  const random = randomFrom(SEED)
  return Array.from({ length: RUNS }, () => randomSurge(random))
})()

type Held = { readonly loadV: number; readonly capacitorV: number; readonly usedFrac: number }

function holdsAt(surge: RandomSurge, at: Drawn, withHeat: boolean): Held {
  const wired = wire(surge, at)
  const plan = withHeat
    ? {
        ...wired.plan,
        mostSec: Math.max(wired.plan.mostSec, surge.pulse.halfSec / 200),
        endSec: 1.6 * surge.pulse.halfSec,
      }
    : wired.plan
  const seen = stepThrough(wired.circuit, wired.restFeedV, plan)
  return {
    loadV: seen.peakV[wired.load - 1] ?? 0,
    capacitorV: Math.max(0, ...wired.capacitors.map((node) => seen.peakV[node - 1] ?? 0)),
    usedFrac: withHeat ? ratingUsed(seen.sec, seen.watts, surge.ratedW) : 0,
  }
}

/** At −55 °C the breakdown is 80 times its coefficient lower; a hot forward junction conducts from 0.4 V. */
function conductsAlone({ breakdownV, bidirectional, lineV }: RandomSurge): string | undefined {
  const coldV = breakdownV[0] * (1 - 80 * (breakdownV[0] < 12 ? 4e-4 : 9.6e-4))
  if (lineV[1] >= coldV) return `the line's ${lineV[1]} V above ${coldV} V cold`
  return lineV[0] < -(bidirectional ? coldV : 0.4) ? `the line's ${lineV[0]} V below what it blocks` : undefined
}

function spreadOver<T>(all: readonly T[], most: number): readonly T[] {
  if (all.length <= most) return all
  return Array.from({ length: most }, (_, i) => all[Math.floor((i * all.length) / most)] as T)
}

test(`${RUNS} random surges, seed ${SEED}: no yes that a part inside its tolerances refutes`, {
  timeout: 900_000,
}, () => {
  const random = randomFrom(SEED + 1)
  const counts: Record<string, number> = { ok: 0, marginal: 0, fails: 0, unknown: 0 }
  const refuted: string[] = []
  let [runs, nearest] = [0, 0]
  for (const surge of surges) {
    const { verdict = 'unknown' } = judged(surge)
    counts[verdict] = (counts[verdict] ?? 0) + 1
    if (verdict !== 'ok') continue
    const conducting = conductsAlone(surge)
    if (conducting !== undefined) refuted.push(`${conducting} of ${JSON.stringify(surge.texts)}`)
    const places = [
      ...Array.from({ length: DRAWS }, () => drawFrom(surge, random)),
      ...spreadOver(cornersOf(surge), MOST_CORNERS),
    ]
    const plain = surge.topology === 'none' && !surge.pulse.ring
    for (const [i, at] of places.entries()) {
      const held = holdsAt(surge, at, plain && i < 4)
      runs += 1
      nearest = Math.max(nearest, held.loadV / surge.withstandV)
      const broken = [
        ...(held.loadV > HAIR * surge.withstandV ? [`load ${held.loadV} V over ${surge.withstandV} V`] : []),
        ...(held.capacitorV > HAIR * surge.capacitorWithstandV
          ? [`capacitor ${held.capacitorV} V over ${surge.capacitorWithstandV} V`]
          : []),
        ...(held.usedFrac > 1 ? [`${held.usedFrac} of the rating`] : []),
      ]
      if (broken.length > 0)
        refuted.push(`${broken.join(', ')} at ${JSON.stringify(at)} of ${JSON.stringify(surge.texts)}`)
    }
  }
  console.log(
    `surges, seed ${SEED}: ${RUNS} judged: ${counts['ok']} ok, ${counts['marginal']} marginal, ${counts['fails']} fails, ${counts['unknown']} unknown; ` +
      `${runs} runs inside the boxes of the yes, ${refuted.length} refuted; nearest load ${(100 * nearest).toFixed(1)} % of what is withstood`,
  )
  expect(refuted).toEqual([])
  expect(counts['ok']).toBeGreaterThan(RUNS / 8)
})

test(`${SPICE} of them agree with ngspice and with the second integrator at a place of their box`, {
  timeout: 600_000,
}, () => {
  const random = randomFrom(SEED + 2)
  const cases = surges.flatMap((surge) => {
    const at: Drawn = { ...drawFrom(surge, random), sign: 1, restV: surge.restV[0] ?? 0 }
    const wired = wire(surge, at)
    const netlist = netlistOf(surge, at, wired)
    // a breakdown of its own and one voltage to rest at: what the check counts is then one run. No lead: the
    // gigahertz of a bare one fill the simulator's memory
    const isOneRun = surge.breakdownV[0] === surge.breakdownV[1] && surge.restV.length === 1 && surge.leadH === 0
    return netlist !== undefined && isOneRun ? [{ surge, at, wired, netlist }] : []
  })
  const chosen = cases.slice(0, SPICE)
  const answers = peaksOf(chosen.map(({ netlist }) => netlist))
  const off: string[] = []
  let worst = 0
  for (const [i, { surge, at, wired }] of chosen.entries()) {
    const spiceV = answers[i]?.peakV?.[`n${wired.load}`]
    if (spiceV === undefined) {
      off.push(`${answers[i]?.error} ${JSON.stringify(surge.texts)}`)
      continue
    }
    const second = holdsAt(surge, at, false).loadV
    const ours = judged(exactly(surge, at)).values['loadPeakV'] ?? 0
    for (const [name, value, most] of [
      ['the check', ours, SPICE_AGREES],
      ['the second integrator', second, SECOND_AGREES],
    ] as const) {
      const error = Math.abs(value / spiceV - 1)
      worst = Math.max(worst, error)
      if (error > most) off.push(`${name} ${value} V, ngspice ${spiceV} V: ${JSON.stringify([at, surge.texts])}`)
    }
  }
  console.log(`ngspice: ${chosen.length} circuits, largest difference ${(100 * worst).toFixed(3)} %`)
  expect(off).toEqual([])
  expect(chosen).toHaveLength(SPICE)
})

/** The surge with its parts exactly at a place. */
function exactly(surge: RandomSurge, at: Drawn): RandomSurge {
  const print = (value: number) => String(value)
  const texts = {
    ...surge.texts,
    toleranceFrac: '0',
    temperatureFrac: '0',
    biasFrac: '0',
    ageingDecades: '0',
    polarity: 'positive',
    ...(at.c1 > 0 ? { capacitanceF: print(at.c1) } : {}),
    ...(at.c2 > 0 ? { capacitance2F: print(at.c2) } : {}),
    ...(at.l1 > 0 ? { inductanceH: print(at.l1) } : {}),
    ...(at.l2 > 0 ? { inductance2H: print(at.l2) } : {}),
    ...(at.partF > 0 ? { suppressorF: print(at.partF) } : {}),
    ...(at.ringHz > 0 ? { ringHz: print(at.ringHz) } : {}),
  }
  return { ...surge, texts }
}
