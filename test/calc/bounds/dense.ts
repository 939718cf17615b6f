/**
 * The lowest loss in a box of parts, searched densely with the nodal solver: corners, points drawn at random, then from
 * the lowest of them ever smaller steps of every part alone and of two together. Shares nothing with the proof it judges.
 */
import {
  circuitOf,
  type Need,
  type Parts,
  type PlainParts,
  type Span,
  type Surroundings,
} from '../../../src/calc/bounds/surroundings.ts'
import type { NoiseSource } from '../../../src/calc/network/circuit.ts'
import { nodalLossDb } from '../../support/nodal.ts'
import { boxOf, nodesOf } from '../../support/random-surroundings.ts'

const KEYS = ['shunt1F', 'shunt2F', 'series1H', 'series2H', 'sourceNodeF', 'loadNodeF', 'crossF', 'chokeH'] as const
const SMALLEST_STEP = 1e-7
/** Rounds of one search: along a valley without slope it would go on for ever. */
const MAX_ROUNDS = 150

/** Numbers 0…1, the same for the same seed. */
export function drawing(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state / 2 ** 32
  }
}

export type Asked = { readonly around: Surroundings; readonly need: Need; readonly source: NoiseSource }

export const nodalDb = ({ around, need, source }: Asked, parts: Parts): number =>
  nodalLossDb(circuitOf(around, parts), source, around.load, need.hz, nodesOf(around, parts))

/** Parts at places 0…1 of the axes that have an extent; what stands at a node is there only when `with…` says so. */
export function partsAt(box: Readonly<Record<keyof PlainParts, Span>>, place: readonly number[]): Parts {
  let axis = 0
  const at = (key: keyof PlainParts): number => {
    const { least, most } = box[key]
    return most > least ? least + (place[axis++] ?? 0) * (most - least) : least
  }
  return {
    shunt1F: at('shunt1F'),
    shunt2F: at('shunt2F'),
    series1H: at('series1H'),
    series2H: at('series2H'),
    sourceNodeF: at('sourceNodeF'),
    loadNodeF: at('loadNodeF'),
    crossF: at('crossF'),
    chokeH: at('chokeH'),
  }
}

/** The boxes that count: with and without what earns nothing. */
export function boxesOf(around: Surroundings, marked: Span, at: number): Readonly<Record<keyof PlainParts, Span>>[] {
  const full = boxOf(around, marked, at)
  const none = { least: 0, most: 0 }
  const withLoad = full.loadNodeF.most > 0 ? [full, { ...full, loadNodeF: none }] : [full]
  return full.sourceNodeF.most > 0 ? withLoad.flatMap((box) => [box, { ...box, sourceNodeF: none }]) : withLoad
}

/** Lowest loss found, dB, in one box. `draws` random points, the best `starts` of them searched on. */
export function densest(
  asked: Asked,
  box: Readonly<Record<keyof PlainParts, Span>>,
  effort: { readonly draws: number; readonly starts: number; readonly seed: number },
): number {
  const axes = KEYS.filter((key) => box[key].most > box[key].least).length
  const next = drawing(effort.seed)
  const lossAt = (place: readonly number[]) => nodalDb(asked, partsAt(box, place))
  const points = [
    ...Array.from({ length: 1 << axes }, (_, k) => Array.from({ length: axes }, (_, i) => (k >> i) & 1)),
    ...Array.from({ length: axes > 0 ? effort.draws : 0 }, () => Array.from({ length: axes }, next)),
  ].map((place) => ({ place, db: lossAt(place) }))
  const best = points.toSorted((a, b) => a.db - b.db).slice(0, effort.starts)
  return Math.min(...best.map(({ place, db }) => searchOn(lossAt, place, db)))
}

function searchOn(lossAt: (place: readonly number[]) => number, from: readonly number[], fromDb: number): number {
  let place = from
  let db = fromDb
  const ways = directions(from.length)
  for (let step = 0.1, round = 0; step > SMALLEST_STEP && round < MAX_ROUNDS; round++) {
    let better = false
    for (const way of ways) {
      const moved = place.map((x, i) => Math.min(1, Math.max(0, x + step * (way[i] ?? 0))))
      const movedDb = lossAt(moved)
      if (movedDb < db) {
        better = true
        place = moved
        db = movedDb
      }
    }
    step *= better ? 1.5 : 0.5
  }
  return db
}

/** One part up or down, and two together either way. */
function directions(axes: number): readonly number[][] {
  const unit = (i: number, sign: number) => Array.from({ length: axes }, (_, k) => (k === i ? sign : 0))
  const single = Array.from({ length: axes }, (_, i) => [unit(i, 1), unit(i, -1)]).flat()
  const double = single.flatMap((a, i) => single.slice(i + 1).map((b) => a.map((x, k) => x + (b[k] ?? 0))))
  return [...single, ...double.filter((way) => way.some((x) => x !== 0))]
}
