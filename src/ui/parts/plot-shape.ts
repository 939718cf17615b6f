/** Axes and paths of the plot. Pure. */
import type { Picture, PlotCurve } from '../../calc/types.ts'
import { roundedSpan, type Scale, type Span } from './axis.ts'

export type PlotPicture = Extract<Picture, { is: 'plot' }>

/** Sideways span: what the curves cover, and every limit. */
export function xSpan(picture: PlotPicture): Span {
  const log = picture.xScale === 'log'
  const values = [...picture.curves.flatMap((curve) => [...curve.x]), ...picture.limits.map((limit) => limit.x)].filter(
    (value) => Number.isFinite(value) && (!log || value > 0),
  )
  const min = values.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY)
  const max = values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY)
  if (!(max > min)) return log ? { min: 1e4, max: 1e9 } : { min: 0, max: 1 }
  return { min, max }
}

/** Upright span: curves, limits and zero, grown to whole ticks; curves only up to their ceiling. */
export function ySpan(picture: PlotPicture, ticks: number): Span {
  const values = [0, ...picture.limits.map((limit) => limit.y), ...picture.curves.flatMap((curve) => [...curve.y])]
  const finite = values.filter((value) => Number.isFinite(value))
  const min = finite.reduce((least, value) => Math.min(least, value), 0)
  const ceiling = Math.max(picture.yCeiling ?? Number.POSITIVE_INFINITY, ...picture.limits.map((limit) => limit.y))
  const max = Math.min(
    ceiling,
    finite.reduce((most, value) => Math.max(most, value), 0),
  )
  return max > min ? roundedSpan({ min, max }, ticks) : { min: min - 1, max: max + 1 }
}

/** Path of a curve; of the points that share a pixel column only the lowest and the highest stay. */
export function curvePath(curve: PlotCurve, x: Scale, y: Scale): string {
  const parts: string[] = []
  let column: { px: number; low: number; high: number; last: number } | undefined
  let pen = 'M'
  const put = (xPx: number, yPx: number) => {
    parts.push(`${pen}${xPx} ${yPx.toFixed(1)}`)
    pen = 'L'
  }
  const flush = () => {
    if (!column) return
    const near = Math.abs(column.last - column.low) < Math.abs(column.last - column.high)
    const [first, second] = near ? [column.high, column.low] : [column.low, column.high]
    put(column.px, first)
    if (first.toFixed(1) !== second.toFixed(1)) put(column.px, second)
    column = undefined
  }
  for (const [index, at] of curve.x.entries()) {
    const xPx = Math.round(x(at) * 2) / 2
    const yPx = y(curve.y[index] ?? Number.NaN)
    if (!Number.isFinite(yPx) || !Number.isFinite(xPx)) {
      flush()
      pen = 'M'
    } else if (column && column.px === xPx) {
      column = { px: xPx, low: Math.min(column.low, yPx), high: Math.max(column.high, yPx), last: yPx }
    } else {
      flush()
      column = { px: xPx, low: yPx, high: yPx, last: yPx }
    }
  }
  flush()
  return parts.join('')
}

/** The curve's value at a place, straight between its two neighbours; undefined outside the curve. */
export function valueAt(curve: PlotCurve, at: number): number | undefined {
  let low = 0
  let high = curve.x.length - 1
  if (high < 0 || at < (curve.x[0] ?? 0) || at > (curve.x[high] ?? 0)) return undefined
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if ((curve.x[middle] ?? 0) <= at) low = middle
    else high = middle
  }
  const [x0 = 0, x1 = 0, y0 = 0, y1 = 0] = [curve.x[low], curve.x[high], curve.y[low], curve.y[high]]
  return x1 === x0 ? y0 : y0 + ((at - x0) / (x1 - x0)) * (y1 - y0)
}
