import { useEffect, useRef } from 'preact/hooks'
import UPlot from 'uplot'
import 'uplot/dist/uPlot.min.css'
import { formatQuantity } from '../../calc/quantity/format.ts'
import { drawCurve, frequencySpan, levelSpan, type TraceCurve, WIDTH_PX } from './trace-draw.ts'
import { type Gestures, gesturesOn, type HertzSpan, panned, zoomed } from './trace-gestures.ts'
import { useWidth } from './width.ts'

type Given = {
  readonly curves: readonly TraceCurve[]
  readonly unit: string
  /** what it shows, in words */
  readonly label: string
}

const COLOUR_OF: Readonly<Record<TraceCurve['look'], string>> = {
  solid: '--ink',
  dashed: '--accent',
  dots: '--ok',
  limit: '--fail',
}
const LETTERS = '12px B612, sans-serif'

/** So much of what is seen goes by at one tap: what stood at the edge stays on the plot. */
const STEP_FRAC = 0.5

/** A measured trace over log frequency: one finger pans, two zoom, a double tap shows all of it; buttons do the same. */
export function TracePlot({ curves, unit, label }: Given) {
  const { box, widthPx } = useWidth<HTMLElement>()
  const place = useRef<HTMLDivElement>(null)
  const shown = useRef<Shown | undefined>(undefined)
  const whole = frequencySpan(curves)
  const key = `${whole.join()} ${unit}`
  useEffect(() => {
    if (place.current === null) return
    const made = show(place.current, { widthPx, whole: { fromHz: whole[0], toHz: whole[1] }, unit })
    shown.current = made
    return () => {
      shown.current = undefined
      made.end()
    }
  }, [key, widthPx])
  useEffect(() => shown.current?.put(curves), [curves, key, widthPx])
  return (
    <figure class="picture plot trace-plot" ref={box}>
      <figcaption class="unseen">{label}</figcaption>
      <ul class="legend">
        {curves.map(({ id, label: name, look }) => (
          <li key={id}>
            <svg viewBox="0 0 28 10" width="28" height="10" aria-hidden="true">
              <path class={`trace-line ${look}`} d="M0 5H28" stroke-width={WIDTH_PX[look] + 0.75} />
            </svg>
            {name}
          </li>
        ))}
      </ul>
      <div ref={place} class="trace-canvas" role="img" aria-label={label} />
      <div class="actions">
        <button type="button" class="button" onClick={() => shown.current?.zoom(0.5)}>
          Closer
        </button>
        <button type="button" class="button" onClick={() => shown.current?.zoom(2)}>
          Further
        </button>
        <button type="button" class="button" onClick={() => shown.current?.pan(-STEP_FRAC)}>
          Lower
        </button>
        <button type="button" class="button" onClick={() => shown.current?.pan(STEP_FRAC)}>
          Higher
        </button>
        <button type="button" class="button" onClick={() => shown.current?.all()}>
          All of it
        </button>
      </div>
    </figure>
  )
}

type Shown = {
  readonly put: (curves: readonly TraceCurve[]) => void
  readonly zoom: (factor: number) => void
  readonly pan: (byFrac: number) => void
  readonly all: () => void
  readonly end: () => void
}

function show(
  place: HTMLElement,
  { widthPx, whole, unit }: { readonly widthPx: number; readonly whole: HertzSpan; readonly unit: string },
): Shown {
  let curves: readonly TraceCurve[] = []
  let span = whole
  let levels: readonly [number, number] = [0, 100]
  const colours = getComputedStyle(place)
  const ink = (name: string) => colours.getPropertyValue(name)
  const axis = {
    stroke: () => ink('--ink'),
    grid: { stroke: () => ink('--line'), width: 1 },
    ticks: { show: false },
    font: LETTERS,
  }
  const plot = new UPlot(
    {
      width: widthPx,
      height: Math.round(Math.min(380, Math.max(220, widthPx * 0.62))),
      legend: { show: false },
      cursor: { show: false },
      // to the right, room for half of the last frequency
      padding: [8, 28, 0, 0],
      scales: {
        x: { time: false, distr: 3, range: () => [span.fromHz, span.toHz] },
        y: { range: () => [levels[0], levels[1]] },
      },
      axes: [
        {
          ...axis,
          values: (_plot, splits) => splits.map((hz) => (hz === null ? '' : formatQuantity(hz, 'frequency', 3))),
        },
        { ...axis, size: 44, label: unit, labelSize: 18, labelFont: LETTERS },
      ],
      series: [{}, { show: false }],
      hooks: { draw: [draw] },
    },
    [
      [whole.fromHz, whole.toHz],
      [0, 0],
    ],
    place,
  )

  function draw(drawn: UPlot): void {
    const { left, top, width, height } = drawn.bbox
    const canvas = drawn.ctx
    canvas.save()
    canvas.beginPath()
    canvas.rect(left, top, width, height)
    canvas.clip()
    const perDecade = width / Math.log(span.toHz / span.fromHz)
    const [low, high] = levels
    const frame = {
      ...span,
      pixels: Math.round(width),
      x: (hz: number) => left + Math.log(hz / span.fromHz) * perDecade,
      y: (db: number) => top + (height * (high - db)) / (high - low),
    }
    for (const curve of curves)
      drawCurve(canvas, curve, frame, { colour: ink(COLOUR_OF[curve.look]), ratio: devicePixelRatio })
    canvas.restore()
  }

  const to = (next: HertzSpan) => {
    span = next
    plot.setScale('x', { min: span.fromHz, max: span.toHz })
  }
  const gestures: Gestures = gesturesOn(plot.over, { span: () => span, whole, to })
  return {
    put: (next) => {
      curves = next
      levels = levelSpan(next)
      plot.setScale('y', { min: levels[0], max: levels[1] })
    },
    zoom: (factor) => to(zoomed(span, whole, factor, 0.5)),
    pan: (byFrac) => to(panned(span, whole, byFrac)),
    all: () => to(whole),
    end: () => {
      gestures.end()
      plot.destroy()
    },
  }
}
