/** The two readings of a trial that say most of the circuit, and the impedance they give, with what their error leaves open. */
import { type CapacitorTrial, type Parallel, parallelFromOne, parallelFromTwo } from '../network/capacitor-trial.ts'
import type { OhmSpan } from '../network/clamp.ts'
import { mostReactive, spanFromOne, spanFromTwo } from '../network/trial-span.ts'
import type { JudgedStep, TrialReading } from './four-numbers.ts'

/** Above half its own resonance a trial part is no capacitor any more. */
const RESONANCE_SHARE = 0.5

/** f = 1/(2π√(L·C)) in Hz; farads and henries ≥ 0, infinite where either is 0. */
export const ownResonanceHz = (farads: number, leadH: number): number => 1 / (2 * Math.PI * Math.sqrt(leadH * farads))

/** What an adapter may be off its mark where nobody said, a share: the usual tolerance of a set (practice). */
export const USUAL_ADAPTER_FRAC = 0.1

/** Whether a part of these leads is still a capacitor at this frequency. */
export const isCapacitorAt = (farads: number, leadH: number, hz: number): boolean =>
  hz <= RESONANCE_SHARE * ownResonanceHz(farads, leadH)

/** Capacitance from one leg to chassis: between the wires it counts twice on each leg. */
export const legFarads = ({ farads, place }: { readonly farads: number; readonly place: string }): number =>
  place === 'between' ? 2 * farads : farads

/** One on each wire to chassis: the impedance of the pair sees both. */
export const adapterCount = ({ place }: Pick<TrialReading, 'place'>, isPair: boolean): number =>
  isPair && place === 'chassis' ? 2 : 1

/** A pair of readings: the largest and the smallest capacitor that lowered the noise by more than the error of a reading. */
export type ReadPair = { readonly first: CapacitorTrial; readonly second?: CapacitorTrial }

/** Where and how the readings were taken; `isPair`: an adapter stood on each of two wires. */
export type ReadAt = { readonly hz: number; readonly leadH: number; readonly isPair: boolean }

/**
 * Steps with a reading and a capacitor to the place that counts, below half the own resonance of the part. The smallest
 * and the largest stand for all: the further apart, the less an error counts. Undefined where none is left.
 */
export function readPair(reading: TrialReading, q: ReadAt): ReadPair | undefined {
  const count = adapterCount(reading, q.isPair)
  const usable = usableSteps(reading, q.hz, q.leadH)
    .map(({ farads, fallDb }): CapacitorTrial => ({ farad: count * farads, dropDb: fallDb ?? 0 }))
    .sort((a, b) => a.farad - b.farad)
  const [first, last] = [usable[0], usable.at(-1)]
  if (first === undefined || last === undefined) return undefined
  return last.farad > first.farad ? { first, second: last } : { first: last }
}

/** Steps with a reading that still were capacitors; none of a trial whose readings say nothing. */
export const usableSteps = ({ steps, place, voids }: TrialReading, hz: number, leadH: number): readonly JudgedStep[] =>
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
  /** largest susceptance over conductance inside the whole error; undefined where one capacitor says nothing of it */
  readonly reactiveShare?: number
}

/**
 * Zs ∥ Zl and the span of its resistive part. `fallOffDb`: what a fall may be off, the difference of two readings;
 * `adapterFrac`: what each capacitor may be off its mark, a share. The span is that of every corner of both.
 */
export function solveTrial(pair: ReadPair, hz: number, fallOffDb: number, adapterFrac = 0): Solved {
  const { first, second } = pair
  const scales = adapterFrac === 0 ? [1] : [1 - adapterFrac, 1 + adapterFrac]
  const scaled = (trial: CapacitorTrial, scale: number): CapacitorTrial => ({ ...trial, farad: scale * trial.farad })
  if (second === undefined) {
    const ohm = parallelFromOne(first, hz)
    const span = hull(scales.map((scale) => spanFromOne(scaled(first, scale), hz, fallOffDb)))
    return {
      pair,
      parallel: ohm === undefined ? undefined : { ohm, siemens: 0 },
      span: span !== undefined && span.most > 0 ? span : undefined,
    }
  }
  const spans = scales.flatMap((one) =>
    scales.flatMap((other) => spanFromTwo(scaled(first, one), scaled(second, other), hz, fallOffDb) ?? []),
  )
  const shares = scales.flatMap((one) =>
    scales.map((other) => mostReactive(scaled(first, one), scaled(second, other), hz, fallOffDb)),
  )
  return {
    pair,
    parallel: parallelFromTwo(first, second, hz),
    span: hull(spans),
    reactiveShare: Math.max(...shares),
  }
}

/** The least and the most of them all; undefined where there is none. */
const hull = (spans: readonly OhmSpan[]): OhmSpan | undefined =>
  spans.length === 0
    ? undefined
    : { least: Math.min(...spans.map(({ least }) => least)), most: Math.max(...spans.map(({ most }) => most)) }
