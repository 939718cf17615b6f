/** Fingers, wheel and double tap on a trace: pan with one, zoom with two. Log frequency sideways. */

export type HertzSpan = { readonly fromHz: number; readonly toHz: number }

/** Nearer than this nobody measures. */
const NARROWEST = 1 + 1e-5

/** The span made wider (factor > 1) or narrower about a place on it (0…1), never beyond the whole. */
export function zoomed(span: HertzSpan, whole: HertzSpan, factor: number, at: number): HertzSpan {
  const width = Math.log(span.toHz / span.fromHz)
  const most = Math.log(whole.toHz / whole.fromHz)
  const next = Math.min(most, Math.max(Math.min(most, Math.log(NARROWEST)), width * factor))
  const centre = Math.log(span.fromHz) + width * at
  return inside(centre - next * at, next, whole)
}

/** The span moved by a share of its width; it stops at the ends of the whole. */
export function panned(span: HertzSpan, whole: HertzSpan, byFrac: number): HertzSpan {
  const width = Math.log(span.toHz / span.fromHz)
  return inside(Math.log(span.fromHz) + byFrac * width, width, whole)
}

function inside(from: number, width: number, whole: HertzSpan): HertzSpan {
  const [least, most] = [Math.log(whole.fromHz), Math.log(whole.toHz)]
  const start = Math.min(Math.max(least, from), Math.max(least, most - width))
  const isWhole = width >= most - least
  return {
    fromHz: start <= least ? whole.fromHz : Math.exp(start),
    toHz: isWhole || start + width >= most ? whole.toHz : Math.exp(start + width),
  }
}

export type Gestures = { readonly end: () => void }

type On = {
  readonly span: () => HertzSpan
  readonly whole: HertzSpan
  readonly to: (next: HertzSpan) => void
}

const DOUBLE_MS = 350

export function gesturesOn(over: HTMLElement, { span, whole, to }: On): Gestures {
  const fingers = new Map<number, number>()
  let lastTapMs = 0
  const widthPx = () => Math.max(1, over.clientWidth)
  const down = (event: PointerEvent) => {
    fingers.set(event.pointerId, event.offsetX)
    over.setPointerCapture(event.pointerId)
    if (fingers.size !== 1) return
    if (event.timeStamp - lastTapMs < DOUBLE_MS) to(whole)
    lastTapMs = event.timeStamp
  }
  const move = (event: PointerEvent) => {
    const before = fingers.get(event.pointerId)
    if (before === undefined) return
    if (Math.abs(event.offsetX - before) > 4) lastTapMs = 0
    const other = [...fingers].find(([id]) => id !== event.pointerId)?.[1]
    if (other === undefined) to(panned(span(), whole, (before - event.offsetX) / widthPx()))
    else {
      const [apart, now] = [Math.abs(before - other), Math.abs(event.offsetX - other)]
      if (now > 8 && apart > 8) to(zoomed(span(), whole, apart / now, other / widthPx()))
    }
    fingers.set(event.pointerId, event.offsetX)
  }
  const up = (event: PointerEvent) => fingers.delete(event.pointerId)
  const wheel = (event: WheelEvent) => {
    // the page scrolls; two fingers on a pad come as a wheel with Ctrl
    if (!event.ctrlKey) return
    event.preventDefault()
    to(zoomed(span(), whole, event.deltaY > 0 ? 1.25 : 0.8, event.offsetX / widthPx()))
  }
  over.addEventListener('pointerdown', down)
  over.addEventListener('pointermove', move)
  over.addEventListener('pointerup', up)
  over.addEventListener('pointercancel', up)
  over.addEventListener('wheel', wheel, { passive: false })
  return {
    end: () => {
      over.removeEventListener('pointerdown', down)
      over.removeEventListener('pointermove', move)
      over.removeEventListener('pointerup', up)
      over.removeEventListener('pointercancel', up)
      over.removeEventListener('wheel', wheel)
    },
  }
}
