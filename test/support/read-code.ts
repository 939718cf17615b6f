/** Reads a square code back from the path it is drawn with. */
import jsQR from 'jsqr'

/** Pixels for each module: a reader needs some. */
const SCALE = 4

/** The text of a code drawn as unit squares on `modules` × `modules`; undefined when no reader finds one. */
export function readCode(path: string, modules: number): string | undefined {
  const side = modules * SCALE
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255)
  for (const [, x, y, width] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g)) {
    for (let row = Number(y) * SCALE; row < (Number(y) + 1) * SCALE; row += 1) {
      for (let column = Number(x) * SCALE; column < (Number(x) + Number(width)) * SCALE; column += 1) {
        pixels.fill(0, (row * side + column) * 4, (row * side + column) * 4 + 3)
      }
    }
  }
  return jsQR(pixels, side, side)?.data
}
