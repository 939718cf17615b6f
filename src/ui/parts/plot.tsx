import { useContext, useState } from 'preact/hooks'
import type { PlotCurve } from '../../calc/types.ts'
import {
  type AxisUnit,
  axisName,
  axisUnit,
  decades,
  linearScale,
  linearTicks,
  logScale,
  type Scale,
  type Span,
  textWidth,
  tickText,
} from './axis.ts'
import { COMING, usePartsDrawn } from './coming.tsx'
import { printed } from './figure.ts'
import { Icon } from './icon.tsx'
import { curvePath, type PlotPicture, valueAt, xSpan, ySpan } from './plot-shape.ts'
import { KnownWidth, usePictureId, useWidth } from './width.ts'

const LETTER_PX = 12
const TOP_PX = 26
const LOG_TICK_PX = 60
const TICK_PX = 42
const FOOT_PX = 26

/** What follows its place, its bands and its axes: the curves, the reading of a point. */
const [CURVES, PARTS] = [1, 2] as const

type Frame = {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  readonly x: Scale
  readonly y: Scale
  readonly xs: Span
  readonly ys: Span
  readonly xUnit: AxisUnit
  readonly yUnit: AxisUnit
}

/** How high a plot is for its width: on a sheet flatter than on a screen. */
const heightOf = (widthPx: number, isOnSheet: boolean): number =>
  Math.round(isOnSheet ? widthPx * 0.45 : Math.min(340, Math.max(190, widthPx * 0.55)))

function frameOf(picture: PlotPicture, widthPx: number, isOnSheet: boolean): Frame {
  const bottom = TOP_PX + heightOf(widthPx, isOnSheet)
  const ys = ySpan(picture, 5)
  const yUnit = axisUnit(ys, picture.yQuantity)
  const widest = Math.max(...linearTicks(ys, 5).map((tick) => tickText(tick, yUnit).length))
  const left = textWidth('0'.repeat(widest), LETTER_PX) + 8
  const right = widthPx - 2
  const xs = xSpan(picture)
  const scale = picture.xScale === 'log' ? logScale : linearScale
  return {
    left,
    right,
    top: TOP_PX,
    bottom,
    xs,
    ys,
    x: scale(xs, [left, right]),
    y: linearScale(ys, [bottom, TOP_PX]),
    xUnit: axisUnit(xs, picture.xQuantity),
    yUnit,
  }
}

/** Curves over frequency (or any x): the circuit solid, the bench dashed, the need as a mark the curve must clear. */
export function Plot({ picture }: { readonly picture: PlotPicture }) {
  const { box, widthPx } = useWidth<HTMLElement>()
  const clip = usePictureId()
  const drawn = usePartsDrawn(PARTS)
  const frame = frameOf(picture, widthPx, useContext(KnownWidth) !== undefined)
  return (
    <figure class="picture plot" ref={box}>
      <figcaption>{picture.title}</figcaption>
      <ul class="legend">
        {picture.curves.map((curve) => (
          <li key={curve.id}>
            <svg viewBox="0 0 28 10" width="28" height="10" aria-hidden="true">
              <path class={curveClass(picture, curve)} d="M0 5H28" />
            </svg>
            {curve.label}
          </li>
        ))}
      </ul>
      <svg viewBox={`0 0 ${widthPx} ${frame.bottom + FOOT_PX}`} role="img" aria-label={spoken(picture)}>
        <defs>
          <clipPath id={clip}>
            <rect x={frame.left} y={frame.top} width={frame.right - frame.left} height={frame.bottom - frame.top} />
          </clipPath>
        </defs>
        <Bands picture={picture} frame={frame} />
        <Grid picture={picture} frame={frame} />
        <g clip-path={`url(#${clip})`}>
          {drawn >= CURVES &&
            picture.curves.map((curve) => (
              <path key={curve.id} class={curveClass(picture, curve)} d={curvePath(curve, frame.x, frame.y)} />
            ))}
        </g>
        {drawn >= CURVES && <Limits picture={picture} frame={frame} />}
      </svg>
      <p class="axis-name muted small">
        {picture.xScale === 'log' ? picture.xLabel : axisName(picture.xLabel, frame.xUnit)}
      </p>
      {picture.flags.length > 0 && (
        <ul class="findings">
          {picture.flags.map((flag) => (
            <li key={flag} class="finding marginal">
              <Icon name="marginal" />
              <span>{flag}</span>
            </li>
          ))}
        </ul>
      )}
      {drawn < PARTS ? COMING : <Readout picture={picture} xs={frame.xs} />}
    </figure>
  )
}

/** A second dashed curve gets dots, so that the legend tells them apart without colour. */
function curveClass(picture: PlotPicture, curve: PlotCurve): string {
  const dashed = picture.curves.filter((each) => each.style === 'dashed')
  return dashed.indexOf(curve) > 0 ? 'curve dashed dots' : `curve ${curve.style}`
}

function Grid({ picture, frame }: { readonly picture: PlotPicture; readonly frame: Frame }) {
  const isLog = picture.xScale === 'log'
  const room = Math.floor((frame.right - frame.left) / (isLog ? LOG_TICK_PX : TICK_PX))
  const across = isLog ? decades(frame.xs, room) : linearTicks(frame.xs, room)
  const tickWord = (tick: number) => (isLog ? printed(tick, picture.xQuantity) : tickText(tick, frame.xUnit))
  return (
    <g class="axis">
      <text x="0" y="14" font-size={LETTER_PX}>
        {axisName(picture.yLabel, frame.yUnit)}
      </text>
      {linearTicks(frame.ys, 5).map((tick) => (
        <g key={tick}>
          <path class={tick === 0 ? 'rule zero' : 'rule'} d={`M${frame.left} ${frame.y(tick)}H${frame.right}`} />
          <text x={frame.left - 6} y={frame.y(tick) + 4} text-anchor="end" font-size={LETTER_PX}>
            {tickText(tick, frame.yUnit)}
          </text>
        </g>
      ))}
      {across.map((tick) => {
        const xPx = frame.x(tick)
        const half = textWidth(tickWord(tick), LETTER_PX) / 2
        const anchor = xPx > frame.right - half ? 'end' : xPx < half ? 'start' : 'middle'
        return (
          <g key={tick}>
            <path class="rule" d={`M${xPx} ${frame.top}V${frame.bottom + 4}`} />
            <text x={xPx} y={frame.bottom + 18} text-anchor={anchor} font-size={LETTER_PX}>
              {tickWord(tick)}
            </text>
          </g>
        )
      })}
    </g>
  )
}

function Bands({ picture, frame }: { readonly picture: PlotPicture; readonly frame: Frame }) {
  return (
    <g class="bands">
      {picture.bands.map((band) => {
        const from = Math.max(frame.left, frame.x(Math.max(band.from, frame.xs.min)))
        const to = Math.min(frame.right, frame.x(Math.min(band.to, frame.xs.max)))
        if (to <= from) return null
        const width = textWidth(band.label, LETTER_PX)
        const start = Math.max(frame.left + 4, Math.min(from + 4, frame.right - width - 4))
        return (
          <g key={band.label}>
            <rect x={from} y={frame.top} width={to - from} height={frame.bottom - frame.top} />
            <text class="halo" x={start} y={frame.bottom - 6} font-size={LETTER_PX}>
              {band.label}
            </text>
          </g>
        )
      })}
    </g>
  )
}

function Limits({ picture, frame }: { readonly picture: PlotPicture; readonly frame: Frame }) {
  const [first] = picture.curves
  return (
    <g>
      {picture.limits.map((limit) => {
        const xPx = frame.x(limit.x)
        const yPx = frame.y(limit.y)
        const reached = first ? valueAt(first, limit.x) : undefined
        const met = reached !== undefined && (limit.must === 'least' ? reached >= limit.y : reached <= limit.y)
        const roomRight = xPx + 12 + textWidth(limit.label, LETTER_PX) <= frame.right
        const up = limit.must === 'least' ? 1 : -1
        return (
          <g key={`${limit.label}${limit.x}`} class={met ? 'limit ok' : 'limit fails'}>
            <path class="drop" d={`M${xPx} ${yPx}V${frame.bottom}`} />
            <path class="bar" d={`M${xPx - 8} ${yPx}h16M${xPx - 8} ${yPx}v${up * 5}M${xPx + 8} ${yPx}v${up * 5}`} />
            <text
              class="halo"
              x={roomRight ? xPx + 12 : xPx - 12}
              y={yPx + 4}
              text-anchor={roomRight ? 'start' : 'end'}
              font-size={LETTER_PX}
            >
              {limit.label}
            </text>
          </g>
        )
      })}
    </g>
  )
}

const STEPS = 200

/** Reads any point off the curves: by slider, so that a thumb, a key and a screen reader can all do it. */
function Readout({ picture, xs }: { readonly picture: PlotPicture; readonly xs: Span }) {
  const [step, setStep] = useState(STEPS / 2)
  const at = pointAt(xs, picture.xScale, step / STEPS)
  const words = picture.curves.map((curve) => {
    const value = valueAt(curve, at)
    return `${curve.label} ${value === undefined ? '–' : printed(value, picture.yQuantity)}`
  })
  const place = printed(at, picture.xQuantity)
  return (
    <details class="fold read-point">
      <summary>Read a point</summary>
      <label class="readout">
        <span class="unseen">Where to read</span>
        <input
          type="range"
          min="0"
          max={STEPS}
          value={step}
          aria-valuetext={`at ${place}: ${words.join(', ')}`}
          onInput={(event) => setStep(Number(event.currentTarget.value))}
        />
        <span>
          <strong>{place}</strong>: {words.join(' · ')}
        </span>
      </label>
    </details>
  )
}

function pointAt(xs: Span, scale: 'log' | 'linear', share: number): number {
  return scale === 'log' ? xs.min * (xs.max / xs.min) ** share : xs.min + share * (xs.max - xs.min)
}

function spoken(picture: PlotPicture): string {
  const xs = xSpan(picture)
  const points = [0, 0.25, 0.5, 0.75, 1].map((share) => pointAt(xs, picture.xScale, share))
  const curves = picture.curves.map((curve) => {
    const read = points.map((at) => {
      const value = valueAt(curve, Math.min(at, xs.max))
      return value === undefined ? '' : `${printed(value, picture.yQuantity)} at ${printed(at, picture.xQuantity)}`
    })
    return `${curve.label}: ${read.filter((part) => part !== '').join(', ')}`
  })
  return [picture.title, ...curves, ...picture.limits.map((limit) => limit.label), ...picture.flags]
    .map((part) => part.replace(/\.$/, ''))
    .join('. ')
}
