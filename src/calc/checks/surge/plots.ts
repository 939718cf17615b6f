/** The curves of a run thinned for drawing, and the shape of the waveform. */
import type { Waveform } from '../../../reference/waveforms.ts'
import type { Pulse } from '../../surge/pulse.ts'
import { type Ring, type Shape, shapeOf, shapeTimes } from '../../surge/shape.ts'
import type { Trace } from '../../surge/trace.ts'
import type { Picture, PlotCurve } from '../../types.ts'

type Plot = Extract<Picture, { is: 'plot' }>

const BINS = 240
const SHAPE_POINTS = 361

/** Lowest and highest sample of each bin, in time order, up to a time in s. */
export function thin(sec: Float64Array, y: Float64Array, toSec: number): { x: Float64Array; y: Float64Array } {
  const keptX: number[] = []
  const keptY: number[] = []
  const keep = (i: number) => {
    const at = sec[i] ?? 0
    if (keptX.length > 0 && at <= (keptX.at(-1) ?? 0)) return
    keptX.push(at)
    keptY.push(y[i] ?? 0)
  }
  let i = 0
  for (let bin = 0; bin < BINS && i < sec.length; bin++) {
    const end = (toSec * (bin + 1)) / BINS
    let [low, high] = [i, i]
    const from = i
    while (i < sec.length && (sec[i] ?? 0) <= end) {
      if ((y[i] ?? 0) < (y[low] ?? 0)) low = i
      if ((y[i] ?? 0) > (y[high] ?? 0)) high = i
      i += 1
    }
    if (i === from) continue
    if (bin === 0) keep(from)
    keep(Math.min(low, high))
    keep(Math.max(low, high))
  }
  return { x: Float64Array.from(keptX), y: Float64Array.from(keptY) }
}

/** Long enough to see the peak, the ring and most of the tail. */
function shownSec(pulse: Pulse, trace: Trace, lastPeakSec: number): number {
  const endSec = trace.sec[trace.count - 1] ?? 0
  const wanted = pulse.ring ? 12 / pulse.ring.hz : 2 * shapeTimes(pulse.shape).halfSec
  return Math.min(endSec, Math.max(wanted, 2 * lastPeakSec))
}

/** Volts over time at the connector, the suppressor and the load, with what the circuit withstands as a limit. */
export function voltsPlot(given: {
  readonly pulse: Pulse
  readonly trace: Trace
  readonly hasSuppressor: boolean
  readonly loadPeak: { readonly value: number; readonly sec: number }
  readonly withstandV: number | undefined
}): Plot {
  const { pulse, trace, loadPeak } = given
  const toSec = shownSec(pulse, trace, loadPeak.sec)
  const curve = (id: string, label: string, style: PlotCurve['style'], volts: Float64Array): PlotCurve => ({
    id,
    label,
    style,
    ...thin(trace.sec, volts, toSec),
  })
  return {
    is: 'plot',
    title: 'Volts over time',
    xLabel: 'Time',
    xQuantity: 'time',
    xScale: 'linear',
    yLabel: 'Volts',
    yQuantity: 'voltage',
    curves: [
      curve('load', 'load', 'solid', trace.loadV),
      curve('connector', 'connector', 'dashed', trace.connectorV),
      ...(given.hasSuppressor ? [curve('suppressor', 'suppressor', 'dashed', trace.clampV)] : []),
    ],
    bands: [],
    limits:
      given.withstandV === undefined
        ? []
        : [{ label: 'circuit withstands', x: loadPeak.sec, y: given.withstandV, must: 'most' }],
    flags: [],
  }
}

/** The waveform on its own: open-circuit volts, or amperes into a short. */
export function shapePlot(pulse: Pulse, sign: 1 | -1): Plot {
  const isCurrent = pulse.row.form === 'current'
  const { shape, row, ring } = pulse
  const peak = sign * (isCurrent ? pulse.shortCircuitA : pulse.openCircuitV)
  return curveOf(row.name, shape, ring, {
    peak,
    yLabel: isCurrent ? 'Short-circuit current' : 'Open-circuit volts',
    yQuantity: isCurrent ? 'current' : 'voltage',
    label: isCurrent ? 'into a short' : 'open circuit',
  })
}

/** The shape of a row before any volts are known, as a share of its peak; undefined for a pulse of one's own. */
export function plainShapePlot(row: Waveform): Plot | undefined {
  if (!row.shape) return undefined
  return curveOf(row.name, shapeOf(row.shape, row.ring), row.ring, {
    peak: 1,
    yLabel: 'Share of the peak',
    yQuantity: 'fraction',
    label: row.form,
  })
}

type Drawn = Pick<Plot, 'yLabel' | 'yQuantity'> & { readonly peak: number; readonly label: string }

function curveOf(name: string, shape: Shape, ring: Ring | undefined, { peak, label, ...axis }: Drawn): Plot {
  const toSec = ring ? 10 / ring.hz : Math.min(shape.endSec * 1.05, 3 * shapeTimes(shape).halfSec)
  const x = Float64Array.from({ length: SHAPE_POINTS }, (_, i) => (toSec * i) / (SHAPE_POINTS - 1))
  return {
    is: 'plot',
    title: `Shape: ${name}`,
    xLabel: 'Time',
    xQuantity: 'time',
    xScale: 'linear',
    ...axis,
    curves: [{ id: 'shape', label, style: 'solid', x, y: x.map((sec) => peak * shape.at(sec)) }],
    bands: [],
    limits: [],
    flags: [],
  }
}
