/** Which pieces of a long list are near enough to what is seen to be drawn, and how much room the others take. */

/** Rows that come and go together. */
export const PIECE = 25

export type Seen = {
  /** where the list begins, from the top of what is seen */
  readonly topPx: number
  readonly viewPx: number
}

export type Drawn = {
  readonly from: number
  /** behind the last one */
  readonly to: number
  readonly abovePx: number
  readonly belowPx: number
}

/** `heightsPx`: of the pieces that were drawn before; the others are taken to be as high as those on average. */
export function drawnPieces(count: number, heightsPx: ReadonlyMap<number, number>, guessPx: number, seen: Seen): Drawn {
  const known = [...heightsPx.values()]
  const usualPx = known.length === 0 ? guessPx : known.reduce((sum, px) => sum + px, 0) / known.length
  const heightOf = (piece: number) => heightsPx.get(piece) ?? usualPx
  // A screen more in either direction, so that nothing white is seen while a thumb throws the list.
  const [startPx, endPx] = [-seen.topPx - seen.viewPx, -seen.topPx + 2 * seen.viewPx]
  let [from, to, abovePx, belowPx, atPx] = [0, 0, 0, 0, 0]
  for (let piece = 0; piece < count; piece++) {
    const nextPx = atPx + heightOf(piece)
    if (nextPx < startPx && piece < count - 1) {
      from = piece + 1
      abovePx = nextPx
    } else if (atPx <= endPx || piece === from) to = piece + 1
    else belowPx += heightOf(piece)
    atPx = nextPx
  }
  return { from, to, abovePx, belowPx }
}
