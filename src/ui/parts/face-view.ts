/** What of a drawn face is seen: zoom and middle, in the units of the face, and which contact is meant. */
import type { Face, FacePlace } from '../../calc/connector/face.ts'

/** The part of the face on the screen; `zoom` 1 shows all of it. */
export type FaceView = { readonly zoom: number; readonly x: number; readonly y: number }

/** The frame it is drawn into. */
export type FaceFrame = {
  readonly widthPx: number
  readonly heightPx: number
  /** pixels between two contacts when all of the face is seen */
  readonly wholePx: number
}

/** A contact and its name can be read and hit from here on. */
const MOST_PX = 64
/** The name of a contact is drawn where neighbours are this far apart. */
export const NAME_FROM_PX = 30
const LEAST_HEIGHT_PX = 132
/** A face is never higher than this many times its width. */
const MOST_HEIGHT = 1

export const WHOLE: FaceView = { zoom: 1, x: 0, y: 0 }

export function frameOf({ halfWidth, halfHeight }: Face, widthPx: number): FaceFrame {
  const wholePx = Math.min(widthPx / (2 * halfWidth), MOST_PX, (widthPx * MOST_HEIGHT) / (2 * halfHeight))
  return { widthPx, heightPx: Math.max(wholePx * 2 * halfHeight, LEAST_HEIGHT_PX), wholePx }
}

export const pxApart = ({ wholePx }: FaceFrame, { zoom }: FaceView): number => wholePx * zoom

export const mostZoom = ({ wholePx }: FaceFrame): number => Math.max(1, MOST_PX / wholePx)

/** The box of the drawing that is seen: left, top, width, height. */
export function boxOf(frame: FaceFrame, view: FaceView): readonly [number, number, number, number] {
  const px = pxApart(frame, view)
  const [width, height] = [frame.widthPx / px, frame.heightPx / px]
  return [view.x - width / 2, view.y - height / 2, width, height]
}

/** The same view with its zoom within limits, and never beside the face. */
export function clamped(face: Face, frame: FaceFrame, { zoom, x, y }: FaceView): FaceView {
  const held = Math.min(Math.max(zoom, 1), mostZoom(frame))
  const px = frame.wholePx * held
  const within = (at: number, half: number, sizePx: number) => {
    const most = Math.max(0, half - sizePx / px / 2)
    return Math.min(Math.max(at, -most), most)
  }
  return {
    zoom: held,
    x: within(x, face.halfWidth, frame.widthPx),
    y: within(y, face.halfHeight, frame.heightPx),
  }
}

export type PixelPoint = { readonly x: number; readonly y: number }

/** Where on the face a point of the frame lies. */
export function faceAt(frame: FaceFrame, view: FaceView, { x, y }: PixelPoint): PixelPoint {
  const [left, top, width, height] = boxOf(frame, view)
  return { x: left + (x / frame.widthPx) * width, y: top + (y / frame.heightPx) * height }
}

/** Zoomed by a factor, the point under the finger staying there. */
export function zoomedAt(
  face: Face,
  frame: FaceFrame,
  view: FaceView,
  given: PixelPoint & { readonly by: number },
): FaceView {
  const held = faceAt(frame, view, given)
  const zoom = Math.min(Math.max(view.zoom * given.by, 1), mostZoom(frame))
  const px = frame.wholePx * zoom
  return clamped(face, frame, {
    zoom,
    x: held.x - (given.x - frame.widthPx / 2) / px,
    y: held.y - (given.y - frame.heightPx / 2) / px,
  })
}

export function moved(face: Face, frame: FaceFrame, view: FaceView, { x, y }: PixelPoint): FaceView {
  const px = pxApart(frame, view)
  return clamped(face, frame, { ...view, x: view.x - x / px, y: view.y - y / px })
}

/** A finger is this wide. */
const REACH_PX = 24

/** The contact nearest to a point, if it is within a finger's reach. */
export function contactAt(face: Face, frame: FaceFrame, view: FaceView, point: PixelPoint): FacePlace | undefined {
  const at = faceAt(frame, view, point)
  const reach = Math.max(REACH_PX / pxApart(frame, view), 0.5)
  let best: { place: FacePlace; away: number } | undefined
  for (const place of face.places) {
    const away = Math.hypot(place.x - at.x, place.y - at.y)
    if (away <= reach && (best === undefined || away < best.away)) best = { place, away }
  }
  return best?.place
}

/** The next contact in a direction: the nearest of those that lie more ahead than aside. */
export function neighbour(places: readonly FacePlace[], from: FacePlace, { x, y }: PixelPoint): FacePlace | undefined {
  let best: { place: FacePlace; away: number } | undefined
  for (const place of places) {
    const [dx, dy] = [place.x - from.x, place.y - from.y]
    const ahead = dx * x + dy * y
    const aside = Math.abs(dx * y - dy * x)
    if (ahead < 0.1 || aside > ahead * 1.2) continue
    const away = ahead + 2 * aside
    if (best === undefined || away < best.away) best = { place, away }
  }
  return best?.place
}

/** The view with a contact in it, zoomed as it is. */
export function showing(face: Face, frame: FaceFrame, view: FaceView, place: FacePlace): FaceView {
  const [left, top, width, height] = boxOf(frame, view)
  const isSeen =
    place.x > left + 0.5 && place.x < left + width - 0.5 && place.y > top + 0.5 && place.y < top + height - 0.5
  return isSeen ? view : clamped(face, frame, { ...view, x: place.x, y: place.y })
}
