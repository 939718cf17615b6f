/**
 * How much of the common mode becomes signal: both legs anywhere in the box of tolerances, each part of each leg by itself,
 * the windings of a choke apart by their mismatch. A requirement makes it a bound; without one it is a figure.
 */
import { circuitOf, type Parts, type Surroundings } from '../../bounds/surroundings.ts'
import { coupledOf } from '../../network/choke.ts'
import { hasCapacitor, hasInductor, type NoiseSource } from '../../network/circuit.ts'
import { legConversionRatio } from '../../network/unequal-legs.ts'
import { ratioDb } from '../../pair.ts'
import type { Bound, Topology } from '../../types.ts'
import { sharesOf, type WindowSetup } from './setup.ts'

/** The largest of it, at which frequency. */
export type Conversion = { readonly db: number; readonly hz: number }

export const CONVERSION = 'pair-conversion'

type Span = readonly [least: number, most: number]
/** Of both legs and the choke: what each can be. */
type Box = {
  readonly cap: Span
  readonly coil: Span
  readonly winding: Span
  readonly leakage: Span
}
/** Capacitors and coils of the first leg, of the second, then winding and leakage: places 0…1 in their spans. */
type Place = readonly number[]
const [CAP_1, CAP_2, COIL_1, COIL_2, SECOND, WINDING, LEAKAGE] = [0, 1, 2, 3, 4, 8, 9]

type Asked = {
  readonly around: Surroundings
  readonly setup: WindowSetup
  readonly box: Box
  readonly source: NoiseSource
  readonly hz: number
  /** which winding is the larger */
  readonly sign: 1 | -1
}

const at = ([least, most]: Span, place: number): number => least + place * (most - least)

function ratioAt({ around, setup, box, source, hz, sign }: Asked, place: Place): number {
  const leg = (from: number) =>
    circuitOf(around, {
      ...NOTHING,
      shunt1F: at(box.cap, place[from + CAP_1] as number),
      shunt2F: at(box.cap, place[from + CAP_2] as number),
      series1H: at(box.coil, place[from + COIL_1] as number),
      series2H: at(box.coil, place[from + COIL_2] as number),
      // between the wires, and at its least: the less there is of it the more stands between them
      crossF: 2 * (setup.taken.crossLeastF ?? 0),
    })
  const { choke } = setup
  const windings =
    choke &&
    coupledOf({
      ...choke.windings,
      windingH: at(box.winding, place[WINDING] as number),
      leakageH: at(box.leakage, place[LEAKAGE] as number),
      mismatchFrac: sign * choke.windings.mismatchFrac,
    })
  return legConversionRatio(
    {
      // the bond as it is: a leg of its own meets it twice
      first: { ...leg(0), bondOhm: around.bondOhm / 2, bondH: around.bondH / 2 },
      second: leg(SECOND),
      choke: windings && choke && { windings, side: choke.leg.side },
      source,
      load: around.load,
    },
    hz,
  )
}

const NOTHING: Parts = {
  shunt1F: 0,
  shunt2F: 0,
  series1H: 0,
  series2H: 0,
  sourceNodeF: 0,
  loadNodeF: 0,
  crossF: 0,
  chokeH: 0,
}

function boxAt(setup: WindowSetup, markedF: number): Box {
  const { least, most } = sharesOf(setup)
  const { inductanceH, choke } = setup
  const winding = choke?.windings.windingH ?? 0
  return {
    cap: [least * markedF, most * markedF],
    coil: [inductanceH.least, inductanceH.most],
    winding: [winding, winding * (choke?.size.growth ?? 1)],
    leakage: choke ? [choke.loopH.least, choke.loopH.most] : [0, 0],
  }
}

/** A bead and damping have parts of their own in each leg, which the two legs counted here do not. */
const isUnlikeAnyLeg = ({ elements: { bead, damper } }: WindowSetup): boolean =>
  bead !== undefined || damper !== undefined

/** Everything that is asked of one mark: each noise frequency from each source; undefined where no common mode is. */
function askedOf(topology: Topology, setup: WindowSetup, markedF: number): readonly Asked[] {
  const { around, isPair, mode, choke } = setup
  if (around === undefined || !isPair || mode !== 'common' || isUnlikeAnyLeg(setup)) return []
  const box = boxAt(setup, markedF)
  const { crossF: _, choke: __, ...rest } = around
  const alike = (choke?.windings.mismatchFrac ?? 0) === 0
  return around.sources.flatMap((source) =>
    around.needs
      .filter(({ hz }) => hz > 0)
      .flatMap(({ hz }) =>
        (alike ? ([1] as const) : ([1, -1] as const)).map((sign) => ({
          around: { ...rest, topology },
          setup,
          box,
          source,
          hz,
          sign,
        })),
      ),
  )
}

/** Corners with the capacitors of a leg alike and its coils alike; two legs at the same ends, or the other way round, once. */
function corners(topology: Topology, { choke }: WindowSetup): readonly Place[] {
  const ends = (has: boolean): readonly number[] => (has ? [0, 1] : [0])
  const legs = ends(hasCapacitor(topology)).flatMap((cap) => ends(hasInductor(topology)).map((coil) => [cap, coil]))
  const cores = ends(choke !== undefined).flatMap((winding) => ends(choke !== undefined).map((leak) => [winding, leak]))
  const isUnlike = (choke?.windings.mismatchFrac ?? 0) > 0
  return legs.flatMap(([a = 0, c = 0], i) =>
    legs
      .slice(isUnlike ? 0 : i + 1)
      .flatMap(([b = 0, d = 0]) => cores.map(([winding = 0, leak = 0]) => [a, a, c, c, b, b, d, d, winding, leak])),
  )
}

/** Axes along which a part of this topology can be anything. */
function axesOf(topology: Topology, { choke }: WindowSetup): readonly number[] {
  const each = [
    ...(hasCapacitor(topology) ? [CAP_1] : []),
    ...(topology === 'PI' ? [CAP_2] : []),
    ...(hasInductor(topology) ? [COIL_1] : []),
    ...(topology === 'T' ? [COIL_2] : []),
  ]
  return [...each, ...each.map((axis) => SECOND + axis), ...(choke ? [WINDING, LEAKAGE] : [])]
}

/** Where it is judged more than one corner is gone on from, and further. */
const EFFORT = { shown: { starts: 1, finest: 0.05 }, judged: { starts: 3, finest: 1e-3 } } as const
const ROUNDS = 24

/** The largest conversion over the whole box; undefined where nothing common travels. Searched: corners, then each part. */
export function conversionAt(topology: Topology, setup: WindowSetup, markedF: number): Conversion | undefined {
  const asked = askedOf(topology, setup, markedF)
  const places = corners(topology, setup)
  const axes = axesOf(topology, setup)
  const isShown = setup.mostConversionDb === undefined
  const { starts, finest } = EFFORT[isShown ? 'shown' : 'judged']
  const found = (isShown ? hardest(asked) : asked).flatMap((one) =>
    places.map((place) => ({ one, place, ratio: ratioAt(one, place) })),
  )
  let worst: { readonly ratio: number; readonly hz: number } | undefined
  for (const { one, place, ratio } of found.toSorted((a, b) => b.ratio - a.ratio).slice(0, starts)) {
    const climbed = climb(one, place, ratio, axes, finest)
    if (worst === undefined || climbed > worst.ratio) worst = { ratio: climbed, hz: one.hz }
  }
  return worst && { db: worst.ratio > 0 ? ratioDb(worst.ratio) : Number.NEGATIVE_INFINITY, hz: worst.hz }
}

/** The frequency and source that turn most with one leg at one end of everything and the other at the other. */
function hardest(asked: readonly Asked[]): readonly Asked[] {
  const found = asked.map((one) => ({ one, ratio: ratioAt(one, APART) }))
  return found
    .toSorted((a, b) => b.ratio - a.ratio)
    .slice(0, 1)
    .map(({ one }) => one)
}
const APART: Place = [0, 0, 0, 0, 1, 1, 1, 1, 0, 1]

/** Every part up and down by itself, steps halved where none helps. */
function climb(asked: Asked, from: Place, fromRatio: number, axes: readonly number[], finest: number): number {
  let place = from
  let ratio = fromRatio
  for (let step = 0.25, round = 0; round < ROUNDS && step > finest; round++) {
    let moved = false
    for (const axis of axes)
      for (const by of [step, -step]) {
        const x = Math.min(1, Math.max(0, (place[axis] as number) + by))
        if (x === place[axis]) continue
        const next = place.map((value, i) => (i === axis ? x : value))
        const there = ratioAt(asked, next)
        if (there <= ratio) continue
        ratio = there
        place = next
        moved = true
      }
    if (!moved) step /= 2
  }
  return ratio
}

/** One leg against the other at opposite ends: capacitors, coils, both alike or crossed. */
function holdsAtOpposites(topology: Topology, setup: WindowSetup, markedF: number, limit: number): boolean {
  const places = OPPOSITES.filter(
    ([a, , c, , b, , d]) => (a === b || hasCapacitor(topology)) && (c === d || hasInductor(topology)),
  )
  return askedOf(topology, setup, markedF).every((one) => places.every((place) => ratioAt(one, place) <= limit))
}
const OPPOSITES: readonly Place[] = [
  [0, 0, 0, 0, 1, 1, 0, 0, 0, 1],
  [0, 0, 0, 0, 0, 0, 1, 1, 0, 1],
  [0, 0, 0, 0, 1, 1, 1, 1, 0, 1],
  [0, 0, 1, 1, 1, 1, 0, 0, 0, 1],
]

/** A requirement met to within this is met. */
const HAIR_DB = 1e-6

/** Whether a mark turns more of the common mode into signal than is allowed; what does at a look is not searched. */
export function convertsTooMuch(topology: Topology, setup: WindowSetup, markedF: number): boolean {
  const { mostConversionDb } = setup
  if (mostConversionDb === undefined) return false
  const limit = 10 ** ((mostConversionDb + HAIR_DB) / 20)
  if (!holdsAtOpposites(topology, setup, markedF, limit)) return true
  const found = conversionAt(topology, setup, markedF)
  return found !== undefined && found.db > mostConversionDb + HAIR_DB
}

/** No capacitor at all is another matter: what is taken away begins above it. */
const BELOW_ANY_F = 1e-15
const FROM_F = 1e-12
const TO_F = 1e-5
const PER_DECADE = 5
const HALVINGS = 30

/**
 * The requirement as a bound on one marked capacitor. A small capacitor converts little because it does little, a large one
 * because little of the common mode is left: what is taken away lies between, as the stretches a resonance takes from a
 * need. Read with the legs at opposite ends of the box; what is proposed is searched in full. Empty without a requirement.
 */
export function conversionBounds(topology: Topology, setup: WindowSetup): readonly Bound[] {
  const { mostConversionDb, around } = setup
  if (mostConversionDb === undefined || around === undefined || !hasCapacitor(topology)) return []
  const limit = 10 ** (mostConversionDb / 20)
  const holds = (markedF: number): boolean => holdsAtOpposites(topology, setup, markedF, limit)
  const marks = Array.from(
    { length: Math.round(Math.log10(TO_F / FROM_F) * PER_DECADE) + 1 },
    (_, i) => FROM_F * 10 ** (i / PER_DECADE),
  )
  const held = marks.map(holds)
  const edge = (i: number): number => {
    let [low, high] = [marks[i - 1] as number, marks[i] as number]
    for (let k = 0; k < HALVINGS; k++) {
      const middle = Math.sqrt(low * high)
      if (holds(middle) === held[i - 1]) low = middle
      else high = middle
    }
    return held[i] ? high : low
  }
  const holes: [number, number][] = []
  let from: number | undefined = held[0] ? undefined : BELOW_ANY_F
  for (let i = 1; i < marks.length; i++) {
    if (held[i] === held[i - 1]) continue
    if (held[i]) {
      holes.push([from ?? BELOW_ANY_F, edge(i)])
      from = undefined
    } else from = edge(i)
  }
  if (from !== undefined) holes.push([from, Number.POSITIVE_INFINITY])
  return [
    {
      id: CONVERSION,
      by: { is: 'check', check: 'pair' },
      side: 'least',
      nature: 'need',
      farads: 0,
      per: 'capacitor',
      topology,
      holes,
    },
  ]
}
