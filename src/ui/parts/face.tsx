import type { ComponentChildren } from 'preact'
import { useCallback, useId, useMemo, useRef, useState } from 'preact/hooks'
import type { Face as FaceShape } from '../../calc/connector/face.ts'
import type { ContactMark } from './contact-mark.tsx'
import { type ContactsGiven, FaceContacts, FaceOutline } from './face-drawing.tsx'
import {
  boxOf,
  clamped,
  contactAt,
  type FaceView,
  frameOf,
  mostZoom,
  moved,
  NAME_FROM_PX,
  neighbour,
  type PixelPoint,
  pxApart,
  showing,
  WHOLE,
  zoomedAt,
} from './face-view.ts'
import { useFrameByFrame } from './frame-later.ts'
import { useWidth } from './width.ts'

type Given = {
  readonly face: FaceShape
  readonly markAt: (id: string) => ContactMark
  /** the whole face in words */
  readonly label: string
  /** one contact in words */
  readonly wordsOf: (id: string) => string
  readonly onPick: (id: string) => void
  readonly chosen?: ReadonlySet<string>
  /** tools beside the zoom */
  readonly children?: ComponentChildren
}

/** A finger that moved less than this tapped. */
const STILL_PX = 8
const ZOOM_STEP = 1.6
/** So many contacts are drawn at once: a few milliseconds of a phone's or a desk's frame. */
const AT_ONCE = 43

/** By so much of the frame the view goes on at a tap, for whoever cannot drag. */
const STEP_FRAC = 0.4

const WAYS = [
  { word: 'left', mark: '←', x: 1, y: 0 },
  { word: 'right', mark: '→', x: -1, y: 0 },
  { word: 'up', mark: '↑', x: 0, y: 1 },
  { word: 'down', mark: '↓', x: 0, y: -1 },
] as const

const ARROWS: Readonly<Record<string, PixelPoint>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
}

/**
 * The drawn face: a tap picks a contact, two fingers, buttons or keys zoom it. What it shows is said in words too, and
 * every contact stands in the list beside it.
 */
export function Face({ face, markAt, label, wordsOf, onPick, chosen, children }: Given) {
  const { box, widthPx } = useWidth<HTMLDivElement>(true)
  const frame = useMemo(() => frameOf(face, widthPx), [face, widthPx])
  const [asked, setAsked] = useState<FaceView>(WHOLE)
  const [current, setCurrent] = useState<string | undefined>(undefined)
  const fingers = useRef(new Map<number, PixelPoint>())
  const wasMoved = useRef(false)
  const view = clamped(face, frame, asked)
  const isNamed = pxApart(frame, view) >= NAME_FROM_PX
  const name = useId()
  const optionId = useCallback(
    (id: string) => `${name}-${face.places.findIndex((place) => place.id === id)}`,
    [face, name],
  )
  const told = useMemo(() => ({ markAt, wordsOf }), [markAt, wordsOf])
  // each frame some of them, so that no turn takes long; what stands around them is there from the first
  const pieces = useFrameByFrame(told, Math.ceil(face.places.length / AT_ONCE))
  const change = (next: (now: FaceView) => FaceView) => setAsked((now) => next(clamped(face, frame, now)))
  const pointOf = (event: PointerEvent | WheelEvent): PixelPoint => {
    const own = box.current?.getBoundingClientRect()
    const scale = own === undefined || own.width === 0 ? 1 : frame.widthPx / own.width
    return { x: (event.clientX - (own?.left ?? 0)) * scale, y: (event.clientY - (own?.top ?? 0)) * scale }
  }
  const onDown = (event: PointerEvent) => {
    if (fingers.current.size === 0) wasMoved.current = false
    fingers.current.set(event.pointerId, pointOf(event))
    // a mouse that is let go elsewhere is heard of too
    ;(event.currentTarget as Element).setPointerCapture?.(event.pointerId)
  }
  const onMove = (event: PointerEvent) => {
    const before = fingers.current.get(event.pointerId)
    if (before === undefined) return
    const now = pointOf(event)
    const [other] = [...fingers.current].filter(([id]) => id !== event.pointerId).map(([, point]) => point)
    if (other !== undefined) {
      wasMoved.current = true
      const by = distance(now, other) / Math.max(1, distance(before, other))
      const middle = { x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 }
      change((one) => zoomedAt(face, frame, one, { ...middle, by }))
    } else {
      if (!wasMoved.current && distance(before, now) < STILL_PX) return
      wasMoved.current = true
      change((one) => moved(face, frame, one, { x: now.x - before.x, y: now.y - before.y }))
    }
    fingers.current.set(event.pointerId, now)
  }
  const onUp = (event: PointerEvent) => {
    const isLast = fingers.current.delete(event.pointerId) && fingers.current.size === 0
    if (!isLast || wasMoved.current || event.type !== 'pointerup') return
    const found = contactAt(face, frame, view, pointOf(event))
    if (found !== undefined) onPick(found.id)
  }
  const zoom = (by: number) =>
    change((one) => zoomedAt(face, frame, one, { x: frame.widthPx / 2, y: frame.heightPx / 2, by }))
  const onKey = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const arrow = ARROWS[event.key]
    if (arrow !== undefined) {
      const from = face.places.find(({ id }) => id === current)
      const next = from === undefined ? face.places[0] : (neighbour(face.places, from, arrow) ?? from)
      if (next === undefined) return
      setCurrent(next.id)
      change((one) => showing(face, frame, one, next))
    } else if (event.key === '+' || event.key === '=') zoom(ZOOM_STEP)
    else if (event.key === '-') zoom(1 / ZOOM_STEP)
    else if (event.key === '0') setAsked(WHOLE)
    else if ((event.key === 'Enter' || event.key === ' ') && current !== undefined) onPick(current)
    else return
    event.preventDefault()
    event.stopPropagation()
  }
  return (
    <div class="face">
      <div
        ref={box}
        class={view.zoom > 1 ? 'face-frame zoomed' : 'face-frame'}
        style={{ aspectRatio: `${frame.widthPx} / ${frame.heightPx}` }}
        role="listbox"
        aria-orientation="horizontal"
        {...(current !== undefined && { 'aria-activedescendant': optionId(current) })}
        tabIndex={0}
        aria-label={`${label} Arrow keys go from contact to contact, Enter opens one, plus and minus zoom.`}
        onPointerDown={onDown}
        onPointerMove={onMove}
        onPointerUp={onUp}
        onPointerCancel={onUp}
        onKeyDown={onKey}
        onWheel={(event) => {
          // the same gesture zooms maps: with Control held, and two fingers on a touch pad
          if (!event.ctrlKey) return
          event.preventDefault()
          const point = pointOf(event)
          change((one) => zoomedAt(face, frame, one, { ...point, by: event.deltaY < 0 ? 1.15 : 1 / 1.15 }))
        }}
      >
        <svg class="face-drawing" viewBox={boxOf(frame, view).join(' ')} role="presentation" focusable="false">
          <FaceOutline face={face} />
          {pieces.map(
            (piece, at) =>
              piece && <Piece key={at} {...{ face, at, idOf: optionId, ...piece, isNamed, chosen, current }} />,
          )}
        </svg>
      </div>
      <div class="face-tools">
        {mostZoom(frame) > 1 && (
          <>
            <button type="button" class="button" disabled={view.zoom <= 1} onClick={() => zoom(1 / ZOOM_STEP)}>
              <span aria-hidden="true">−</span>
              <span class="unseen">Zoom out</span>
            </button>
            <button
              type="button"
              class="button"
              disabled={view.zoom >= mostZoom(frame)}
              onClick={() => zoom(ZOOM_STEP)}
            >
              <span aria-hidden="true">+</span>
              <span class="unseen">Zoom in</span>
            </button>
            <button type="button" class="button" disabled={view.zoom <= 1} onClick={() => setAsked(WHOLE)}>
              All<span class="unseen"> of the face</span>
            </button>
          </>
        )}
        {children}
      </div>
      {view.zoom > 1 && (
        <fieldset class="face-tools">
          <legend class="unseen">Move over the face</legend>
          {WAYS.map(({ word, mark, x, y }) => (
            <button
              key={word}
              type="button"
              class="button"
              onClick={() =>
                change((one) =>
                  moved(face, frame, one, { x: x * STEP_FRAC * frame.widthPx, y: y * STEP_FRAC * frame.heightPx }),
                )
              }
            >
              <span aria-hidden="true">{mark}</span>
              <span class="unseen">Move {word}</span>
            </button>
          ))}
        </fieldset>
      )}
    </div>
  )
}

type PieceGiven = Omit<ContactsGiven, 'places' | 'option'> &
  NonNullable<ContactsGiven['option']> & { readonly face: FaceShape; readonly at: number }

/** Contacts that are drawn together, again only where what they show is another: a drag moves the window over them. */
function Piece({ face, at, idOf, wordsOf, ...shown }: PieceGiven) {
  const { markAt, isNamed, chosen, current } = shown
  return useMemo(() => {
    const places = face.places.slice(at * AT_ONCE, (at + 1) * AT_ONCE)
    return <FaceContacts places={places} {...shown} option={{ idOf, wordsOf }} />
  }, [face, at, idOf, wordsOf, markAt, isNamed, chosen, current])
}

const distance = (a: PixelPoint, b: PixelPoint): number => Math.hypot(a.x - b.x, a.y - b.y)
