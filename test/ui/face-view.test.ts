import { describe, expect, it } from 'vitest'
import { faceOf } from '../../src/calc/connector/face.ts'
import {
  boxOf,
  clamped,
  contactAt,
  faceAt,
  frameOf,
  mostZoom,
  moved,
  NAME_FROM_PX,
  neighbour,
  pxApart,
  showing,
  WHOLE,
  zoomedAt,
} from '../../src/ui/parts/face-view.ts'
import fc from '../support/property.ts'

const PHONE_PX = 328
const idsOf = (count: number) => Array.from({ length: count }, (_, i) => String(i + 1))
const faceWith = (count: number, shape: 'rectangular' | 'ring' = 'ring') => faceOf(idsOf(count), shape)

describe('the view of a face', () => {
  it('shows every contact at first, and can be zoomed until 128 can be read and hit on a phone', () => {
    for (const [count, shape] of [
      [128, 'ring'],
      [256, 'ring'],
      [37, 'rectangular'],
      [50, 'rectangular'],
    ] as const) {
      const face = faceWith(count, shape)
      const frame = frameOf(face, PHONE_PX)
      const [left, top, width, height] = boxOf(frame, WHOLE)
      for (const { x, y } of face.places) {
        expect(x).toBeGreaterThan(left)
        expect(x).toBeLessThan(left + width)
        expect(y).toBeGreaterThan(top)
        expect(y).toBeLessThan(top + height)
      }
      const close = zoomedAt(face, frame, WHOLE, { x: 100, y: 50, by: 1000 })
      // room for a finger, and for a name of three signs in letters of 16 px and more
      expect(pxApart(frame, close)).toBeCloseTo(64, 6)
      expect(close.zoom).toBe(mostZoom(frame))
      expect(pxApart(frame, close)).toBeGreaterThan(NAME_FROM_PX)
    }
  })

  it('keeps the point under the finger where it is, and never shows what is beside the face', () => {
    const face = faceWith(128)
    const frame = frameOf(face, PHONE_PX)
    const point = fc.record({ x: fc.integer({ min: 0, max: PHONE_PX }), y: fc.integer({ min: 0, max: PHONE_PX }) })
    fc.assert(
      fc.property(point, fc.double({ min: 1.2, max: 2, noNaN: true }), point, (at, by, drag) => {
        const twice = zoomedAt(face, frame, WHOLE, { ...at, by: 2 })
        const next = zoomedAt(face, frame, twice, { ...at, by })
        const [left, top, width, height] = boxOf(frame, next)
        expect(left).toBeGreaterThanOrEqual(-face.halfWidth - 1e-9)
        expect(top).toBeGreaterThanOrEqual(-face.halfHeight - 1e-9)
        expect(left + width).toBeLessThanOrEqual(face.halfWidth + 1e-9)
        expect(top + height).toBeLessThanOrEqual(face.halfHeight + 1e-9)
        // zooming in keeps it exactly: what was held within the face stays so
        const [before, after] = [faceAt(frame, twice, at), faceAt(frame, next, at)]
        expect(Math.hypot(before.x - after.x, before.y - after.y)).toBeLessThan(1e-9)
        const far = moved(face, frame, next, { x: drag.x * 10, y: drag.y * 10 })
        expect(boxOf(frame, far)[0]).toBeGreaterThanOrEqual(-face.halfWidth - 1e-9)
        const whole = zoomedAt(face, frame, far, { ...at, by: 1e-3 })
        expect([whole.zoom, Math.abs(whole.x), Math.abs(whole.y)]).toEqual([1, 0, 0])
      }),
    )
  })

  it('means the nearest contact, and none where no finger reaches one', () => {
    const face = faceWith(9, 'rectangular')
    const frame = frameOf(face, PHONE_PX)
    for (const { id, x, y } of face.places) {
      const px = pxApart(frame, WHOLE)
      const at = { x: frame.widthPx / 2 + x * px + 8, y: frame.heightPx / 2 + y * px - 8 }
      expect(contactAt(face, frame, WHOLE, at)?.id).toBe(id)
    }
    expect(contactAt(face, frame, WHOLE, { x: 2, y: 2 })).toBeUndefined()
  })

  it('goes by arrow keys to every contact of a face, and brings it into view', () => {
    const ways = [
      { x: 1, y: 0 },
      { x: -1, y: 0 },
      { x: 0, y: 1 },
      { x: 0, y: -1 },
    ]
    for (const face of [faceWith(37, 'rectangular'), faceWith(50, 'rectangular'), faceWith(61), faceWith(128)]) {
      const [first] = face.places
      const reached = new Set(first ? [first] : [])
      for (const place of reached)
        for (const way of ways) {
          const next = neighbour(face.places, place, way)
          if (next) reached.add(next)
        }
      expect(reached.size).toBe(face.places.length)
      const frame = frameOf(face, PHONE_PX)
      const close = clamped(face, frame, { zoom: 100, x: 0, y: 0 })
      for (const place of face.places) {
        const [left, top, width, height] = boxOf(frame, showing(face, frame, close, place))
        expect(place.x - left).toBeGreaterThan(0.4)
        expect(left + width - place.x).toBeGreaterThan(0.4)
        expect(place.y - top).toBeGreaterThan(0.4)
        expect(top + height - place.y).toBeGreaterThan(0.4)
      }
    }
  })
})
