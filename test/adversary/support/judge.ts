/** Refutes answers: no yes may fail anywhere in its box, no no may have a standard value that holds in all of it. */
import type { Topology } from '../../../src/calc/types.ts'
import { axesOf, boxOf, cornersOf, fittedAt, NOTHING_THERE, placesOf, searchDown } from './box.ts'
import { hasConversion, worstConversionDb } from './conversion.ts'
import { CAPACITORS, COILS, hasChoke, hasCrossOnSingle, lineOf, type WindowFacts } from './facts.ts'
import { lossDb } from './noise.ts'
import {
  capacitanceMargin,
  coilMargin,
  dampingOf,
  hasSignal,
  isInBand,
  isSeries,
  LEAST_DAMPING,
  type Margin,
  mostLegF,
  ohmOf,
  ownMargin,
  permittedMargin,
  signalPlaces,
  worst,
} from './signal.ts'

/** How hard to look: points drawn, and the worst of all to search on from. */
export type Effort = { readonly draws: number; readonly starts: number }

export const FULL: Effort = { draws: 200, starts: 5 }
/** Before the whole effort is worth it. */
export const CORNERS: Effort = { draws: 0, starts: 0 }

/** Numbers 0…1, the same for the same seed. */
export function drawing(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

type Point = { readonly at: readonly number[]; readonly variant: number; readonly value: number }

/**
 * The lowest value over the box and over every variant (what stands where, what is asked): all corners, points drawn at
 * random, then on from the worst of them. Stops as soon as it falls under `enough`.
 */
export function lowest(
  axes: number,
  variants: number,
  valueAt: (at: readonly number[], variant: number) => number,
  { draws, starts }: Effort,
  next: () => number,
  enough = Number.NEGATIVE_INFINITY,
): number {
  const points: Point[] = []
  let least = Number.POSITIVE_INFINITY
  const look = (at: readonly number[]): boolean => {
    for (let variant = 0; variant < variants; variant++) {
      const value = valueAt(at, variant)
      least = Math.min(least, value)
      points.push({ at, variant, value })
      if (value < enough) return true
    }
    return false
  }
  for (const corner of cornersOf(axes)) if (look(corner)) return least
  for (let draw = 0; draw < (axes > 0 ? draws : 0); draw++) if (look(Array.from({ length: axes }, next))) return least
  const from = points.toSorted((a, b) => a.value - b.value).slice(0, axes > 0 ? starts : 0)
  for (const { at, variant } of from) {
    least = Math.min(least, searchDown((moved) => valueAt(moved, variant), at).value)
    if (least < enough) return least
  }
  return least
}

/** What lies between the wires of a pair is nothing to its common mode. */
const noisePlaces = (facts: WindowFacts) =>
  placesOf(lineOf(facts).isPair && facts.mode === 'common' ? { ...facts, existingF: 0 } : facts)

/** Least of loss − need over the box, dB. */
export function noiseMargin(
  facts: WindowFacts,
  topology: Topology,
  markedF: number,
  effort: Effort,
  next: () => number,
  enough?: number,
): number {
  const box = boxOf(facts, topology, markedF)
  const variants = noisePlaces(facts).flatMap((places) =>
    facts.needs.flatMap((need) => facts.sourceOhm.map((sourceOhm) => ({ places, need, sourceOhm }))),
  )
  const valueAt = (at: readonly number[], variant: number): number => {
    const { places, need, sourceOhm } = variants[variant] as (typeof variants)[number]
    return lossDb(facts, fittedAt(box, at, places), need.hz, sourceOhm) - need.db
  }
  return lowest(axesOf(box).length, variants.length, valueAt, effort, next, enough)
}

const UNKNOWN: Margin = { db: Number.NEGATIVE_INFINITY, what: 'no criterion' }

/** What a coil does at its worst over the box: the margin to a failure. */
function worstCoil(
  facts: WindowFacts,
  topology: Topology,
  markedF: number,
  effort: Effort,
  next: () => number,
): Margin {
  if (!isSeries(facts, { topology }) || !hasSignal(lineOf(facts)))
    return { db: Number.POSITIVE_INFINITY, what: 'no coil' }
  const box = boxOf(facts, topology, markedF)
  const variants = signalPlaces(facts).flatMap((places) => [false, true].map((isReversed) => ({ places, isReversed })))
  let what = ''
  const valueAt = (at: readonly number[], variant: number): number => {
    const { places, isReversed } = variants[variant] as (typeof variants)[number]
    const margin = coilMargin(facts, fittedAt(box, at, places), isReversed) ?? UNKNOWN
    what = margin.what
    return margin.db
  }
  const db = lowest(axesOf(box).length, variants.length, valueAt, effort, next)
  return { db, what }
}

/** Least damping over the box; Infinity where nothing can ring. */
export function leastDamping(
  facts: WindowFacts,
  topology: Topology,
  markedF: number,
  effort: Effort,
  next: () => number,
): number {
  if (!isSeries(facts, { topology })) return Number.POSITIVE_INFINITY
  const box = boxOf(facts, topology, markedF)
  const valueAt = (at: readonly number[]): number =>
    dampingOf(facts, fittedAt(box, at, NOTHING_THERE)) ?? Number.POSITIVE_INFINITY
  // A step is followed in time: a few draws of it cost as much as all of the closed form.
  const isStepped = facts.damper !== undefined || topology === 'T'
  const within = isStepped ? { draws: Math.min(effort.draws, 12), starts: 0 } : effort
  return lowest(axesOf(box).length, 1, valueAt, within, next)
}

/** What bounds a supply's capacitance, on each line to chassis; `lacks` names what a yes still needs. */
export type Ceiling = Margin & { readonly lacks?: string }

const A_RULE = 'the load of the rule chosen'
const roomDb = (most: number, value: number): number => 20 * Math.log10(most / value)

function supplyCeiling(facts: WindowFacts, legF: number, markedF: number): Ceiling {
  const { limit } = lineOf(facts)
  if (limit.is !== 'supply') throw new TypeError('not a supply')
  const onLegF = legF + facts.suppressorF + facts.existingF
  const said: Margin[] = []
  const navyF = facts.navyRule ? navyFarads(limit.hz, facts.loadW) : undefined
  if (navyF !== undefined) said.push({ what: 'navy', db: roomDb(navyF, onLegF) })
  if (limit.worstHz > 0 && facts.chassisLimitA !== undefined)
    said.push({
      what: 'chassis-current',
      db: roomDb(facts.chassisLimitA, 2 * Math.PI * limit.worstHz * limit.worstRmsV * onLegF),
    })
  // What fits the contact is no limit of the current an AC line puts into its chassis.
  const isShort = said.length === 0 && (limit.worstHz > 0 || facts.maxBuildableF === undefined)
  if (facts.maxBuildableF !== undefined) said.push({ what: 'fits', db: roomDb(facts.maxBuildableF, markedF) })
  const lacks = facts.navyRule && navyF === undefined ? A_RULE : isShort ? 'a limit' : undefined
  return { ...worst(said), ...(lacks === undefined ? {} : { lacks }) }
}

/** 4.2.2: 0.02 µF a line at 400 Hz; on DC 0.075 µF a kilowatt of load, 0.03 µF below half of one. */
function navyFarads(supplyHz: number, loadW: number | undefined): number | undefined {
  if (supplyHz > 0) return 0.02e-6
  if (loadW === undefined) return undefined
  return loadW < 500 ? 0.03e-6 : 0.075e-9 * loadW
}

/** Everything that bounds a part wherever in its box it is. */
export function ceilingOf(facts: WindowFacts, topology: Topology, markedF: number): Ceiling {
  const legF = mostLegF(facts, { topology }, markedF)
  const own = ownMargin(facts, legF)
  const kinds = hasSignal(lineOf(facts)) ? signalCeiling(facts, legF, markedF) : supplyCeiling(facts, legF, markedF)
  // A limit of the user's own does where the kind has none, but never instead of a rule that was chosen.
  const hasOwn = [facts.ownCeilingF, facts.ownLossDb, facts.ownPhaseDeg].some((limit) => limit !== undefined)
  const isReplaced = hasOwn && kinds.lacks !== A_RULE
  const lacks = own.lacks ?? (isReplaced ? undefined : kinds.lacks)
  const { db, what } = worst([own, kinds])
  return { db, what, ...(lacks === undefined ? {} : { lacks }) }
}

function signalCeiling(facts: WindowFacts, legF: number, markedF: number): Ceiling {
  const margin = capacitanceMargin(facts, legF)
  const fits =
    facts.maxBuildableF === undefined || markedF === 0
      ? []
      : [{ what: 'fits', db: roomDb(facts.maxBuildableF, markedF) }]
  return margin === undefined ? { ...worst(fits), lacks: 'a criterion' } : worst([margin, ...fits])
}

/** Rounding of a figure that stands exactly at its limit. */
const HAIR_DB = 1e-4
export const MISS_DB = 0.01

/**
 * What refutes a yes; undefined when nothing does. `markedF` 0 = nothing but the coil (or nothing at all). `lumped`: as
 * the noise meets it, where that is not the same.
 */
export function refuteYes(
  facts: WindowFacts,
  topology: Topology,
  markedF: number,
  verdict: 'ok' | 'marginal',
  effort: Effort,
  next: () => number,
  lumped = facts,
): string | undefined {
  const shortBy = (db: number, what: string) => `${what} by ${(-db).toFixed(4)} dB`
  if (isInBand(facts)) return 'noise inside the band of the signal'
  if (facts.isOneWire && facts.chokeH > 0) return 'a core around one wire'
  if (COILS[topology] > 0 && isBeadUnknown(facts)) return 'a bead where it is not known'
  if (hasCrossOnSingle(facts)) return 'a line-to-line capacitor on one wire'
  const ceiling = ceilingOf(facts, topology, markedF)
  if (ceiling.lacks !== undefined) return `nothing is known of ${ceiling.lacks}`
  if (ceiling.db < -HAIR_DB) return shortBy(ceiling.db, ceiling.what)
  if (isSeries(facts, { topology }) && hasSignal(lineOf(facts))) {
    if (ohmOf(facts) === undefined) return 'a coil against a signal resistance nobody knows'
    const coil = worstCoil(facts, topology, markedF, effort, next)
    if (coil.db < -HAIR_DB) return shortBy(coil.db, coil.what)
  }
  const balance = balanceMargin(facts, topology, markedF, effort, next)
  if (balance < -MISS_DB) return shortBy(balance, 'too much becomes signal')
  if (verdict === 'ok') {
    const permitted = permittedMargin(facts, mostLegF(facts, { topology }, markedF))
    if (permitted.db < -HAIR_DB) return shortBy(permitted.db, permitted.what)
    const damping = leastDamping(facts, topology, markedF, effort, next)
    if (damping < LEAST_DAMPING - 1e-6) return `damping ${damping.toFixed(4)}`
  }
  const noise = noiseMargin(lumped, topology, markedF, effort, next)
  return noise < -MISS_DB ? shortBy(noise, 'need missed') : undefined
}

/** What is required of the balance, less what the box has; Infinity where nothing is. */
function balanceMargin(
  facts: WindowFacts,
  topology: Topology,
  markedF: number,
  effort: Effort,
  next: () => number,
): number {
  const { mostConversionDb } = facts
  if (mostConversionDb === undefined || !hasConversion(facts)) return Number.POSITIVE_INFINITY
  return mostConversionDb - worstConversionDb(facts, topology, markedF, effort, next, lowest)
}

/** Noise outside the frequencies a curve was read at. */
const isBeadUnknown = ({ bead, needs }: WindowFacts): boolean =>
  bead !== undefined && needs.some(({ hz }) => hz < (bead.hz[0] ?? 0) || hz > (bead.hz.at(-1) ?? 0))

const E12 = [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82]
/** 1 pF to 100 µF. */
export const STANDARD_VALUES_F: readonly number[] = [
  ...[-12, -11, -10, -9, -8, -7, -6, -5].flatMap((decade) =>
    E12.map((digits) => Number((digits * 10 ** (decade - 1)).toPrecision(2))),
  ),
  1e-4,
]
export const SPARE_DB = 0.1

/** A standard value that holds over its whole box with room to spare, where a no was said; undefined when there is none. */
export function refuteNo(facts: WindowFacts, topologies: readonly Topology[], next: () => number): string | undefined {
  if (isInBand(facts)) return undefined
  // A no is not a matter of what was left out of a curve.
  for (const topology of topologies.filter((one) => COILS[one] === 0 || !isBeadUnknown(facts)))
    for (const markedF of valuesOf(facts, topology))
      if (holdsWithSpare(facts, topology, markedF, next)) return `${topology} ${markedF} F holds`
  return undefined
}

/** Standard values; an inductor alone has none, and a choke may do it with none. */
const valuesOf = (facts: WindowFacts, topology: Topology): readonly number[] => {
  if (CAPACITORS[topology] === 0) return [0]
  return topology === 'C' && hasChoke(facts) ? [0, ...STANDARD_VALUES_F] : STANDARD_VALUES_F
}

function holdsWithSpare(facts: WindowFacts, topology: Topology, markedF: number, next: () => number): boolean {
  if (ceilingOf(facts, topology, markedF).db < 0) return false
  const isHeld = (effort: Effort) => noiseMargin(facts, topology, markedF, effort, next, SPARE_DB) >= SPARE_DB
  if (!isHeld(CORNERS)) return false
  if (worstCoil(facts, topology, markedF, CORNERS, next).db < 0) return false
  if (balanceMargin(facts, topology, markedF, CORNERS, next) < SPARE_DB) return false
  return (
    isHeld(FULL) &&
    worstCoil(facts, topology, markedF, FULL, next).db >= 0 &&
    balanceMargin(facts, topology, markedF, FULL, next) >= SPARE_DB
  )
}
