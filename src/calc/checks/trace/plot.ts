/** The trace and its limit as a picture. */
import type { Judged } from '../../trace/judge.ts'
import type { Picture, PlotCurve } from '../../types.ts'
import type { TraceSetup } from './setup.ts'

/** Corners of the limit as one curve; steps stand as they are. */
export function limitCurve({ reading: { limit } }: Pick<TraceSetup, 'reading'>): PlotCurve {
  const corners = limit.segments.flat()
  return {
    id: 'limit',
    label: limit.name,
    style: 'dashed',
    x: Float64Array.from(corners, ({ hz }) => hz),
    y: Float64Array.from(corners, ({ db }) => db + limit.relaxedDb),
  }
}

export function tracePlot(setup: TraceSetup, { levelDb }: Judged): Picture {
  const { spectrum, reading } = setup
  return {
    is: 'plot',
    title: reading.limit.side === 'emission' ? 'Trace and limit' : 'Upset level and what has to be withstood',
    xLabel: 'Frequency',
    xQuantity: 'frequency',
    xScale: 'log',
    yLabel: `Level in ${reading.limit.unit}`,
    yQuantity: 'level',
    curves: [{ id: 'trace', label: 'trace', style: 'solid', x: spectrum.hz, y: levelDb }, limitCurve(setup)],
    bands: [],
    limits: [],
    flags: [],
  }
}
