/** One part a capacitor, one part a coil, each by itself: points of the box a mark stands for, and a search through it. */
import type { Topology } from '../../../src/calc/types.ts'
import { CAPACITORS, COILS, capacitorShare, chokeSpans, inductanceSpan, type Span, type WindowFacts } from './facts.ts'

/** Where on the line something stands: not at all, before the filter, behind it. */
export type Place = 'nowhere' | 'source' | 'load'

/** What was really fitted: every figure of one leg. */
export type Fitted = {
  readonly topology: Topology
  readonly c1F: number
  readonly c2F: number
  readonly l1H: number
  readonly l2H: number
  /** share of its marked farads the line-to-line capacitor has */
  readonly crossShare: number
  /** share of its 0 V capacitance the suppressor has */
  readonly suppressorShare: number
  /** of a common-mode choke; 0 = none */
  readonly windingH: number
  readonly leakageH: number
  /** shares of its curve that a bead on either side has, resistance and reactance apart */
  readonly r1Share: number
  readonly x1Share: number
  readonly r2Share: number
  readonly x2Share: number
  /** a resistor and a capacitor in series; 0 = none */
  readonly dampF: number
  readonly dampOhm: number
  readonly suppressorAt: Place
  readonly existingAt: Place
}

export type Places = Pick<Fitted, 'suppressorAt' | 'existingAt'>
export const NOTHING_THERE: Places = { suppressorAt: 'nowhere', existingAt: 'nowhere' }

/** Least share of its 0 V capacitance a suppressor keeps at its working voltage. */
const SUPPRESSOR_SHARE: Span = { least: 0.3, most: 1 }
const AS_MARKED: Span = { least: 1, most: 1 }

export type Box = {
  readonly topology: Topology
  readonly c1F: Span
  readonly c2F: Span
  readonly l1H: Span
  readonly l2H: Span
  readonly crossShare: Span
  readonly suppressorShare: Span
  readonly windingH: Span
  readonly leakageH: Span
  readonly r1Share: Span
  readonly x1Share: Span
  readonly r2Share: Span
  readonly x2Share: Span
  readonly dampF: Span
  readonly dampOhm: Span
}

export const KEYS = [
  'c1F',
  'c2F',
  'l1H',
  'l2H',
  'crossShare',
  'suppressorShare',
  'windingH',
  'leakageH',
  'r1Share',
  'x1Share',
  'r2Share',
  'x2Share',
  'dampF',
  'dampOhm',
] as const
const NONE: Span = { least: 0, most: 0 }

export function boxOf(facts: WindowFacts, topology: Topology, markedF: number): Box {
  const share = capacitorShare(facts)
  const capacitor = { least: share.least * markedF, most: share.most * markedF }
  const { bead, damper, tolLow, tolHigh } = facts
  const coil = bead === undefined ? inductanceSpan(facts) : NONE
  const curve = bead === undefined ? AS_MARKED : { least: (1 - tolLow) * (1 - bead.lostFrac), most: 1 + tolHigh }
  const isDamped = damper !== undefined && CAPACITORS[topology] > 0
  const first = COILS[topology] > 0 ? curve : AS_MARKED
  const second = COILS[topology] > 1 ? curve : AS_MARKED
  return {
    topology,
    c1F: CAPACITORS[topology] > 0 ? capacitor : NONE,
    c2F: CAPACITORS[topology] > 1 ? capacitor : NONE,
    l1H: COILS[topology] > 0 ? coil : NONE,
    l2H: COILS[topology] > 1 ? coil : NONE,
    crossShare: facts.crossF > 0 ? share : AS_MARKED,
    suppressorShare: facts.suppressorF > 0 ? SUPPRESSOR_SHARE : AS_MARKED,
    ...chokeSpans(facts),
    r1Share: first,
    x1Share: first,
    r2Share: second,
    x2Share: second,
    dampF: isDamped ? { least: share.least * damper.farads, most: share.most * damper.farads } : NONE,
    // resistors within 5 %
    dampOhm: isDamped ? { least: 0.95 * damper.ohm, most: 1.05 * damper.ohm } : NONE,
  }
}

/** Every place things can stand at: before the filter, behind it, or not at this end of the line at all. */
export function placesOf(facts: WindowFacts): readonly Places[] {
  const existing: readonly Place[] = facts.existingF > 0 ? ['nowhere', 'source', 'load'] : ['nowhere']
  const suppressor: readonly Place[] = facts.suppressorF > 0 ? ['nowhere', 'source', 'load'] : ['nowhere']
  return existing.flatMap((existingAt) => suppressor.map((suppressorAt) => ({ existingAt, suppressorAt })))
}

/** Axes of the box that have an extent. */
export const axesOf = (box: Box): readonly (typeof KEYS)[number][] =>
  KEYS.filter((key) => box[key].most > box[key].least)

/** The point at shares 0…1 of the axes. */
export function fittedAt(box: Box, at: readonly number[], places: Places): Fitted {
  let axis = 0
  const value = (key: (typeof KEYS)[number]): number => {
    const { least, most } = box[key]
    return most > least ? least + (at[axis++] ?? 0) * (most - least) : least
  }
  return {
    topology: box.topology,
    c1F: value('c1F'),
    c2F: value('c2F'),
    l1H: value('l1H'),
    l2H: value('l2H'),
    crossShare: value('crossShare'),
    suppressorShare: value('suppressorShare'),
    windingH: value('windingH'),
    leakageH: value('leakageH'),
    r1Share: value('r1Share'),
    x1Share: value('x1Share'),
    r2Share: value('r2Share'),
    x2Share: value('x2Share'),
    dampF: value('dampF'),
    dampOhm: value('dampOhm'),
    ...places,
  }
}

export const cornersOf = (axes: number): readonly (readonly number[])[] =>
  Array.from({ length: 1 << axes }, (_, k) => Array.from({ length: axes }, (_, i) => (k >> i) & 1))

const SMALLEST_STEP = 1e-6
const MOST_ROUNDS = 60

/** Walks down from a point: every axis up and down by itself, steps growing while they help and halving while not. */
export function searchDown(
  valueAt: (at: readonly number[]) => number,
  from: readonly number[],
): { readonly value: number; readonly at: readonly number[] } {
  let at = [...from]
  let value = valueAt(at)
  const step = at.map(() => 0.15)
  for (let round = 0; round < MOST_ROUNDS && step.some((size) => Math.abs(size) > SMALLEST_STEP); round++) {
    for (let axis = 0; axis < at.length; axis++) {
      const size = step[axis] as number
      if (Math.abs(size) <= SMALLEST_STEP) continue
      const moved = at.map((x, i) => (i === axis ? Math.min(1, Math.max(0, x + size)) : x))
      const found = moved[axis] === at[axis] ? Number.POSITIVE_INFINITY : valueAt(moved)
      if (found < value) {
        value = found
        at = moved
        step[axis] = size * 1.7
      } else step[axis] = -size * 0.5
    }
  }
  return { value, at }
}
