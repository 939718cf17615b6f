/** A bundle test on a cable nobody measured: what the wire between the coupling and the connector adds by its inductance. */
import type { Progress } from '../types.ts'
import type { SurgeAsked } from './asked.ts'
import { setupAt } from './box.ts'
import { variantsOf } from './part.ts'
import { within } from './progress.ts'
import { runOnce } from './runs.ts'
import { circuitOf, type SurgeSetup } from './setup.ts'
import { type Metric, metricOf } from './ways.ts'
import type { WorstFigures } from './worst.ts'

/** Henries that are tried: from a hand's breadth of wire to 10 m at 1 µH a metre. Common practice, from memory. */
const WAYS_H: readonly number[] = [0.3e-6, 1e-6, 3e-6, 10e-6]

const PEAKS = ['load', 'connector', 'capacitor'] as const satisfies readonly Metric[]

/** A peak, with the inductance at which it is highest. */
export type WayPeak = { readonly volts: number; readonly lineH: number }

/** The highest of each peak over the inductances tried. */
export type LongWay = Readonly<Partial<Record<(typeof PEAKS)[number], WayPeak>>>

/**
 * Runs the worst place of each peak again with the inductance of some metres of wire, which can ring with a capacitor at the
 * connector. undefined: the inductance was entered, or the pulse is injected at the pin. A sample: it refutes, and proves
 * nothing.
 */
export function* longWayOf(
  asked: SurgeAsked,
  setup: SurgeSetup,
  worst: WorstFigures,
): Generator<Progress, LongWay | undefined> {
  if (setup.pulse.bundle === undefined || asked.lineH !== undefined) return undefined
  const highest = new Map<Metric, WayPeak>()
  const tries = PEAKS.flatMap((metric) => WAYS_H.map((lineH) => [metric, lineH] as const))
  for (const [i, [metric, lineH]] of tries.entries()) {
    const found = worst[metric]
    if (found === undefined) continue
    const at = { ...setupAt(setup, found.at.place), lineH }
    const suppressor = variantsOf(at.met)[found.way.variant]
    const run = yield* within(
      runOnce({ circuit: circuitOf(at, suppressor, found.way.changed), shape: at.pulse.shape, options: ROUGH }),
      i / tries.length,
      (i + 1) / tries.length,
    )
    const volts = metricOf(run, metric) ?? 0
    if (volts > (highest.get(metric)?.volts ?? 0)) highest.set(metric, { volts, lineH })
  }
  return Object.fromEntries(highest)
}

/** Three digits decide. */
const ROUGH = { bend: 4e-3 } as const
