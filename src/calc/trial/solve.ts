/** The two readings of a trial that say most of the circuit, and the impedance they give, with what their error leaves open. */
import { type CapacitorTrial, type Parallel, parallelFromOne, parallelFromTwo } from '../network/capacitor-trial.ts'
import type { OhmSpan } from '../network/clamp.ts'
import { spanFromOne, spanFromTwo } from '../network/trial-span.ts'
import type { JudgedStep, TrialReading } from './four-numbers.ts'

/** Above half its own resonance a trial part is no capacitor any more. */
const RESONANCE_SHARE = 0.5

/** f = 1/(2π√(L·C)) in Hz; farads and henries ≥ 0, infinite where either is 0. */
export const ownResonanceHz = (farads: number, leadH: number): number => 1 / (2 * Math.PI * Math.sqrt(leadH * farads))

/** Whether a part of these leads is still a capacitor at this frequency. */
export const isCapacitorAt = (farads: number, leadH: number, hz: number): boolean =>
  hz <= RESONANCE_SHARE * ownResonanceHz(farads, leadH)

/** Capacitance from one leg to chassis: between the wires it counts twice on each leg. */
export const legFarads = ({ farads, place }: { readonly farads: number; readonly place: string }): number =>
  place === 'between' ? 2 * farads : farads

/** A pair of readings: the largest and the smallest capacitor that lowered the noise by more than the error of a reading. */
export type ReadPair = { readonly first: CapacitorTrial; readonly second?: CapacitorTrial }

/** Where and how the readings were taken; `isPair`: an adapter stood on each of two wires. */
export type ReadAt = { readonly hz: number; readonly leadH: number; readonly isPair: boolean }

/**
 * Steps with a reading and a capacitor to the place that counts, below half the own resonance of the part. The smallest
 * and the largest stand for all: the further apart, the less an error counts. Undefined where none is left.
 */
export function readPair(reading: TrialReading, q: ReadAt): ReadPair | undefined {
  // one on each wire to chassis: the impedance of the pair sees both
  const count = q.isPair && reading.place === 'chassis' ? 2 : 1
  const usable = usableSteps(reading, q.hz, q.leadH)
    .map(({ farads, fallDb }): CapacitorTrial => ({ farad: count * farads, dropDb: fallDb ?? 0 }))
    .sort((a, b) => a.farad - b.farad)
  const [first, last] = [usable[0], usable.at(-1)]
  if (first === undefined || last === undefined) return undefined
  return last.farad > first.farad ? { first, second: last } : { first: last }
}

const usableSteps = ({ steps, place, voids }: TrialReading, hz: number, leadH: number): readonly JudgedStep[] =>
  voids.some((reason) => reason !== 'not-monotonic' && reason !== 'signal-bare')
    ? []
    : steps.filter(
        (step) =>
          step.part === 'capacitor' &&
          step.place === place &&
          step.fallDb !== undefined &&
          isCapacitorAt(step.farads, leadH, hz),
      )

export type Solved = {
  readonly pair: ReadPair
  /** undefined where no passive circuit gives these readings as they stand */
  readonly parallel: Parallel | undefined
  /** over the whole error of the readings; undefined where none inside it has a circuit */
  readonly span: OhmSpan | undefined
}

/** Zs ∥ Zl and the span of its resistive part; `offDb` is what one reading may be off, and a fall is two readings. */
export function solveTrial(pair: ReadPair, hz: number, fallOffDb: number): Solved {
  const { first, second } = pair
  if (second === undefined) {
    const ohm = parallelFromOne(first, hz)
    const span = spanFromOne(first, hz, fallOffDb)
    return {
      pair,
      parallel: ohm === undefined ? undefined : { ohm, siemens: 0 },
      span: span.most > 0 ? span : undefined,
    }
  }
  return { pair, parallel: parallelFromTwo(first, second, hz), span: spanFromTwo(first, second, hz, fallOffDb) }
}
