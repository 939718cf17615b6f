/** Where the contacts of a connector stand on its mating face, drawn after no maker's part. */

/** Number of contacts of each row, top to bottom, of the trapezoid rectangular shells. Common practice (DIN 41652 / MIL-DTL-24308 shells). */
export const RECTANGULAR_ROWS: Readonly<Record<number, readonly number[]>> = {
  9: [5, 4],
  15: [8, 7],
  25: [13, 12],
  37: [19, 18],
  50: [17, 16, 17],
}

export type FaceShape = 'rectangular' | 'ring'

/** The face one looks at: the pin insert, or the socket insert, which is its mirror image. */
export type FaceView = 'pins' | 'sockets'

export type FacePlace = { readonly id: string; readonly x: number; readonly y: number }

/** Places in units of the distance between neighbours, the middle at 0, y downwards. */
export type Face = {
  readonly shape: FaceShape
  readonly places: readonly FacePlace[]
  /** half the width and height that hold every contact with one radius around it */
  readonly halfWidth: number
  readonly halfHeight: number
}

/** Rows are 2.84 mm apart where contacts are 2.77 mm apart (same shells). */
const ROW_STEP = 2.84 / 2.77
const AROUND = 0.75

/**
 * The real pattern of a rectangular shell; where there is none for that count, plain rings: one contact, then 6, 12, 18 …,
 * the outermost ring spread evenly. Contact 1 of a rectangular pin insert is top left, of a socket insert top right.
 */
export function faceOf(ids: readonly string[], shape: FaceShape, view: FaceView = 'pins'): Face {
  const rows = shape === 'rectangular' ? RECTANGULAR_ROWS[ids.length] : undefined
  const spots = rows ? rowSpots(rows) : ringSpots(ids.length)
  const mirror = view === 'sockets' ? -1 : 1
  const places = spots.map(([x, y], i) => ({ id: ids[i] as string, x: x === 0 ? 0 : mirror * x, y }))
  const furthest = (of: (place: FacePlace) => number) =>
    places.reduce((most, place) => Math.max(most, Math.abs(of(place))), 0) + AROUND
  return {
    shape: rows ? 'rectangular' : 'ring',
    places,
    halfWidth: furthest(({ x }) => x),
    halfHeight: furthest(({ y }) => y),
  }
}

type Spot = readonly [number, number]

function rowSpots(rows: readonly number[]): readonly Spot[] {
  const top = (-(rows.length - 1) * ROW_STEP) / 2
  return rows.flatMap((count, row) =>
    Array.from({ length: count }, (_, i): Spot => [i - (count - 1) / 2, top + row * ROW_STEP]),
  )
}

/** Outer ring first, clockwise from the top, so that the first names stand where one looks for them. */
function ringSpots(count: number): readonly Spot[] {
  const spots: Spot[] = []
  for (const { radius, many } of ringsOf(count)) {
    for (let i = 0; i < many; i++) {
      const angle = (2 * Math.PI * i) / many
      spots.push([radius * Math.sin(angle), -radius * Math.cos(angle)])
    }
  }
  return spots
}

/** Rings from the outside in; neighbours on a ring, and the rings themselves, are at least one distance apart. */
function ringsOf(count: number): readonly { readonly radius: number; readonly many: number }[] {
  if (count <= 1) return [{ radius: 0, many: count }]
  let best: { radius: number; many: number }[] | undefined
  for (const innermost of [1, 2, 3, 4, 5, 6]) {
    const rings = ringsFrom(innermost, count)
    if (rings && (!best || (rings[0] as { radius: number }).radius < (best[0] as { radius: number }).radius))
      best = rings
  }
  return best as { radius: number; many: number }[]
}

function ringsFrom(innermost: number, count: number): { radius: number; many: number }[] | undefined {
  if (innermost > count) return undefined
  const rings: { radius: number; many: number }[] = []
  let radius = innermost === 1 ? 0 : 0.5 / Math.sin(Math.PI / innermost)
  let left = count
  let many = innermost
  while (left > 0) {
    // the outermost ring may be sparse: it is spread evenly
    const here = Math.min(many, left)
    rings.unshift({ radius, many: here })
    left -= here
    radius += 1
    many = Math.floor(Math.PI / Math.asin(0.5 / radius))
  }
  return rings
}
