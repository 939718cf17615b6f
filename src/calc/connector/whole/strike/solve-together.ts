/** Steps the lines together, corner by corner of their junctions, and reads what is judged on the way. */
import { type Ring, shapeOf } from '../../../surge/shape.ts'
import { runSec } from '../../../surge/solve.ts'
import type { Progress } from '../../../types.ts'
import { Stepper } from './stepper.ts'
import { systemOf } from './system.ts'
import type { Struck, StruckFigures } from './together.ts'
import { Watcher } from './watcher.ts'

/** Sanity stop: far above what any real pulse needs. */
const MOST_STEPS = 200_000
/** Lines stepped between two pauses. */
const LINES_PER_SLICE = 60
/** Longest step, of the run; of a ring, of its period. */
const LONGEST = 1 / 200
const LONGEST_OF_RING = 1 / 40
/** How far the source may be from a straight line over a step, of its peak. */
const SOURCE_BEND = 5e-4

/**
 * Runs one strike. All volts and amperes within 0.5 % of ngspice. Throws RangeError for a source without resistance.
 * Source: implicit steps of order 4 between corners that are located (derived).
 */
export function* strikeTogether(struck: Struck): Generator<Progress, StruckFigures> {
  const system = systemOf(struck)
  const shape = shapeOf(struck.spec, struck.ring)
  const endSec = Math.max(...struck.lines.map(({ circuit }) => runSec(circuit, shape)))
  const stepper = new Stepper(system, shape)
  const watcher = new Watcher(system, stepper)
  const stops = [...shape.corners.filter((sec) => sec < endSec), endSec]
  const longest = Math.min(endSec * LONGEST, struck.ring === undefined ? endSec : LONGEST_OF_RING / struck.ring.hz)
  let step = Math.min(longest, shape.riseSec / 64)
  let steps = 0
  let since = 0
  for (const stop of stops) {
    while (stop - stepper.sec > endSec * 1e-12 && steps < MOST_STEPS) {
      step = Math.min(step, longest, bent(shape, stepper.sec, Math.min(step, longest)))
      const left = stop - stepper.sec
      // the last stretch to a corner in one step, or in two alike
      const take = left <= 1.001 * step ? left : left < 2 * step ? left / 2 : step
      const next = stepper.advance(take)
      watcher.look()
      step = next
      steps += 1
      since += system.lines.length
      if (struck.ring !== undefined && isSpent(struck.ring, stepper)) return watcher.figures(true)
      if (since < LINES_PER_SLICE) continue
      since = 0
      yield { doneFrac: Math.min(1, stepper.sec / endSec) }
    }
    step = Math.min(step, shape.riseSec / 64)
  }
  return watcher.figures(steps < MOST_STEPS)
}

/** Periods in which nothing conducts before a ring that has built up all it can is called over. */
const QUIET_PERIODS = 6

/**
 * A ring that decays has made its highest peaks within Q periods whatever it meets, and a part that has been blocked for some
 * of them blocks for good: what is left moves no peak and no joule.
 */
const isSpent = ({ hz, q }: Ring, { sec, conductedSec }: Stepper): boolean =>
  sec * hz > q && (sec - conductedSec) * hz > QUIET_PERIODS

/** A step over which the source is nearly straight, at most `step`. */
function bent({ at }: { readonly at: (sec: number) => number }, sec: number, step: number): number {
  let tried = step
  for (let i = 0; i < 40; i++) {
    const [a, m, b] = [at(sec), at(sec + tried / 2), at(sec + tried)]
    if (Math.abs(m - (a + b) / 2) <= SOURCE_BEND * Math.max(0.05, Math.abs(a), Math.abs(b))) return tried
    tried /= 2
  }
  return tried
}
