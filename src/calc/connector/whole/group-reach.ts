/** What the lines that share one suppressor through steering diodes put across it by themselves. */
import type { LineKind } from '../../../reference/line-kinds.ts'
import { FORWARD_STARTS } from '../../../reference/suppressors.ts'
import { linePeaksOf } from '../../surge/line.ts'

/** Peaks of one line against chassis, undefined = nobody said. */
export type Reach = { readonly highV: number | undefined; readonly lowV: number | undefined }

export const reachOf = (q: {
  readonly kind: LineKind | undefined
  readonly busMaxV: number | undefined
  readonly busMinV: number | undefined
}): Reach => linePeaksOf({ part: { place: 'leg', bidirectional: false }, ...q })

/** Where one of them goes below chassis both its signs have to be steered: a bridge. */
export const needsBridge = (reaches: readonly Reach[]): boolean =>
  reaches.some(({ lowV = 0 }) => lowV < -FORWARD_STARTS.value)

/** Most volts across the part, forward drops not taken off, and the lines (by their place) that put them there. */
export type Across = { readonly volts: number; readonly lines: readonly number[] }

/**
 * Behind single diodes the highest line. In a bridge its two ends stand at the highest and at the lowest of all lines and
 * the plate, which are different lines at one moment: most of high_i − low_j for i ≠ j, the plate at 0 V among them.
 * Source: Kirchhoff's voltage law (derived).
 */
export function acrossPart(reaches: readonly Reach[]): Across {
  const isBridge = needsBridge(reaches)
  let most: Across = { volts: 0, lines: [] }
  const take = (volts: number, lines: readonly number[]) => {
    if (volts > most.volts) most = { volts, lines }
  }
  for (const [i, { highV = 0, lowV = 0 }] of reaches.entries()) {
    take(highV, [i])
    if (!isBridge) continue
    take(-lowV, [i])
    for (const [j, { lowV: otherV = 0 }] of reaches.entries()) if (j !== i) take(highV - otherV, [i, j])
  }
  return most
}
