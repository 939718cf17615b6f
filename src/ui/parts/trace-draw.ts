/** Curves of a trace drawn onto a canvas: as many points as there are pixels, whatever the file holds. */
import { type Blocks, drawnBetween } from '../../calc/trace/decimate.ts'

export type TraceCurve = {
  readonly id: string
  readonly label: string
  readonly look: 'solid' | 'dashed' | 'dots' | 'limit'
  readonly hz: Float64Array
  readonly db: Float64Array
  /** of a long curve, to read a fraction of it */
  readonly blocks?: Blocks
  /** dB to take off at a frequency: what a filter leaves of the curve */
  readonly less?: { readonly hz: Float64Array; readonly db: Float64Array }
}

export type Frame = {
  readonly fromHz: number
  readonly toHz: number
  readonly pixels: number
  readonly x: (hz: number) => number
  readonly y: (db: number) => number
}

const DASHES: Readonly<Record<TraceCurve['look'], readonly number[]>> = {
  solid: [],
  dashed: [9, 5],
  dots: [2, 4],
  limit: [14, 4, 3, 4],
}
export const WIDTH_PX: Readonly<Record<TraceCurve['look'], number>> = {
  solid: 1.25,
  dashed: 1.25,
  dots: 1.75,
  limit: 2.25,
}

/** From the left to the right: down and up where several rows share a pixel. */
export function drawCurve(
  canvas: CanvasRenderingContext2D,
  curve: TraceCurve,
  frame: Frame,
  { colour, ratio }: { readonly colour: string; readonly ratio: number },
): void {
  const { hz, least, most, count } = seen(curve, frame)
  const takeOff = lessOf(curve)
  canvas.save()
  canvas.strokeStyle = colour
  canvas.lineWidth = WIDTH_PX[curve.look] * ratio
  canvas.lineJoin = 'round'
  canvas.setLineDash(DASHES[curve.look].map((length) => length * ratio))
  canvas.beginPath()
  for (let i = 0; i < count; i++) {
    const f = hz[i] as number
    const off = takeOff(f)
    const x = frame.x(f)
    const [first, second] = i % 2 === 0 ? [least[i], most[i]] : [most[i], least[i]]
    const y = frame.y((first as number) - off)
    if (i === 0) canvas.moveTo(x, y)
    else canvas.lineTo(x, y)
    if (second !== first) canvas.lineTo(x, frame.y((second as number) - off))
  }
  canvas.stroke()
  canvas.restore()
}

function seen({ hz, db, blocks }: TraceCurve, { fromHz, toHz, pixels }: Frame) {
  return blocks === undefined
    ? { hz, least: db, most: db, count: hz.length }
    : drawnBetween({ hz, db }, blocks, { fromHz, toHz, pixels })
}

/** What a filter takes off, straight between its points; walks on with rising frequencies. */
function lessOf({ less }: TraceCurve): (hz: number) => number {
  if (less === undefined || less.hz.length === 0) return () => 0
  const { hz, db } = less
  let at = 0
  return (f) => {
    while (at < hz.length - 2 && (hz[at + 1] as number) < f) at += 1
    const [f0, f1] = [hz[at] as number, hz[at + 1] ?? (hz[at] as number)]
    const share = f1 > f0 ? Math.min(1, Math.max(0, Math.log(f / f0) / Math.log(f1 / f0))) : 0
    return (db[at] as number) + ((db[at + 1] ?? (db[at] as number)) - (db[at] as number)) * share
  }
}

/** Least and most over every curve, grown a little; what a filter leaves may go below. */
export function levelSpan(curves: readonly TraceCurve[]): readonly [number, number] {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const { db, blocks } of curves) {
    const [low, high] = blocks === undefined ? [db, db] : [blocks.least, blocks.most]
    for (const value of low) if (value < least) least = value
    for (const value of high) if (value > most) most = value
  }
  if (!(most >= least)) return [0, 100]
  return [Math.floor((least - 5) / 10) * 10, Math.ceil((most + 5) / 10) * 10]
}

export function frequencySpan(curves: readonly TraceCurve[]): readonly [number, number] {
  let [from, to] = [Number.POSITIVE_INFINITY, 0]
  for (const { hz } of curves) {
    if (hz.length === 0) continue
    from = Math.min(from, hz[0] as number)
    to = Math.max(to, hz.at(-1) as number)
  }
  if (!(to > 0)) return [1e4, 1e9]
  return to > from ? [from, to] : [from / 2, to * 2]
}
