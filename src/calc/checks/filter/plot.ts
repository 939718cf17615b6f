/** The plot of the filter check. */
import { logGrid, sweepLossInto } from '../../network/chain.ts'
import { BENCH_LOAD, BENCH_SOURCE } from '../../network/circuit.ts'
import type { Ends } from '../../network/shape.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Picture } from '../../types.ts'
import { type Filtered, PRACTICAL_CEILING_DB } from './figures.ts'

const PLOT_POINTS = 241
/** Room above the practical ceiling, so that a curve is seen to pass it. */
const PLOT_TO_DB = 120
const CUT_FLAG = `Drawn to ${PLOT_TO_DB} dB: above about ${PRACTICAL_CEILING_DB} dB leakage past the connector governs.`

const db = (x: number) => formatQuantity(x, 'decibel', 4)

/** Loss over frequency in your circuit and on the bench; `flags` are the sentences shown with it. */
export function lossPlot(q: Filtered, shown: Ends, flags: readonly string[]): Picture {
  const hasEnds = q.ends !== undefined
  const marks = q.frequenciesHz.filter((hz) => hz > 0)
  const low = Math.min(
    1e4,
    ...marks.map((f) => f / 10),
    q.signalToHz === undefined ? 1e4 : Math.max(1, q.signalToHz / 10),
  )
  const x = logGrid(Math.max(1, low), Math.max(1e9, ...marks.map((f) => f * 2)), PLOT_POINTS)
  const circuitY = new Float64Array(x.length)
  const benchY = new Float64Array(x.length)
  sweepLossInto(q.benchCircuit, BENCH_SOURCE, BENCH_LOAD, x, benchY)
  sweepLossInto(q.circuit, shown.source, shown.load, x, circuitY)
  const benchCurve = { id: 'bench', label: 'bench 50 Ω', style: 'dashed' as const, x, y: benchY }
  const yours = { id: 'circuit', label: 'your circuit', style: 'solid' as const, x, y: circuitY }
  const needed = q.neededDb
  const isCut = [...circuitY, ...benchY].some((y) => y > PLOT_TO_DB)
  return {
    is: 'plot',
    title: 'Insertion loss',
    xLabel: 'frequency',
    xQuantity: 'frequency',
    xScale: 'log',
    yLabel: 'dB',
    yQuantity: 'decibel',
    yCeiling: PLOT_TO_DB,
    curves: hasEnds ? [yours, benchCurve] : [benchCurve],
    bands: q.signalToHz === undefined ? [] : [{ label: 'signal', from: x[0] as number, to: q.signalToHz }],
    limits:
      needed === undefined
        ? []
        : marks.map((f) => ({ label: `need ${db(needed)}`, x: f, y: needed, must: 'least' as const })),
    flags: [...flags, ...(isCut ? [CUT_FLAG] : [])],
  }
}
