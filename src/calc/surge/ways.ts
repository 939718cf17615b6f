/** The ways a surge can come: its sign, what the line holds before it, which end of the breakdown spread; and what each shows. */
import { type RunFigures, usedFracOf } from './runs.ts'
import type { Changed, SurgeSetup } from './setup.ts'

/** One way to run the pulse. */
export type Way = { readonly changed: Changed; readonly variant: number }

/** What is judged of a run. */
export type Metric = 'load' | 'capacitor' | 'usedFrac' | 'connector'

/** A way that comes to this share of the worst with the parts as entered may overtake it inside the box. */
const CONTENDS = 0.75

type WaysQuestion = {
  readonly setup: Pick<SurgeSetup, 'met'>
  readonly ways: readonly Way[]
  /** the runs with the parts as entered, by way */
  readonly asEntered: readonly RunFigures[]
}

/**
 * The ways to run each place of the box, with the metrics each may decide: the worst with the parts as entered, and what
 * comes near it. Of two that mirror each other (a part that is the same for both signs, a line that rests at 0 V) one.
 */
export function contendersOf(q: WaysQuestion, metrics: readonly Metric[]): ReadonlyMap<Way, readonly Metric[]> {
  const isBothWays = q.setup.met === undefined || q.setup.met.bidirectional
  const isMirrored = ({ changed, variant }: Way): boolean =>
    isBothWays &&
    (changed.restV ?? 0) === 0 &&
    changed.sign === -1 &&
    q.ways.some((w) => w.variant === variant && (w.changed.restV ?? 0) === 0 && w.changed.sign === 1)
  const contenders = new Map<Way, readonly Metric[]>()
  for (const metric of metrics) {
    const values = q.asEntered.map((run) => metricOf(run, metric) ?? 0)
    const worst = Math.max(...values)
    for (const [i, way] of q.ways.entries())
      if ((values[i] ?? 0) >= CONTENDS * worst && !isMirrored(way))
        contenders.set(way, [...(contenders.get(way) ?? []), metric])
  }
  return contenders
}

/** One figure of a run; undefined where the circuit has none. */
export function metricOf(run: RunFigures, metric: Metric): number | undefined {
  switch (metric) {
    case 'load':
      return run.load.value
    case 'connector':
      return run.connector.value
    case 'capacitor':
      return run.capacitor?.value
    case 'usedFrac':
      return run.used && usedFracOf(run.used)
  }
}
