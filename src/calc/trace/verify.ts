/** A part tried on every row of a trace. */
import { PROVED_DB } from '../bounds/box.ts'
import type { Progress } from '../types.ts'

/** Steps of log frequency over the rows that need anything; a resonance narrower than one is not looked for. */
const STEPS = 500
/** A row this far under the loss at both ends of its step and at its hardest row is met. */
const CLEAR_DB = 1
/** Rows that are missed are added one a twentieth of a decade, the hardest first. */
const APART_DECADES = 0.05
const MOST_ADDED = 6

export type Tried = {
  /** rows that are missed, the hardest of each stretch, hardest first */
  readonly missed: readonly number[]
  /** least of loss − need over all rows that need anything */
  readonly leastDb: number
  readonly leastRow: number
}

/**
 * Tries `lossAt` (dB over frequency) on every row: exactly on the hardest row of each step and wherever a row comes within
 * 1 dB of the loss there, by the ends of the step elsewhere. Where few rows need anything, exactly on each.
 */
export function* tryRows(
  hz: Float64Array,
  neededDb: Float64Array,
  lossAt: (hz: number) => number,
): Generator<Progress, Tried> {
  const rows = rowsInNeed(neededDb)
  const missed: { readonly row: number; readonly shortDb: number }[] = []
  let leastDb = Number.POSITIVE_INFINITY
  let leastRow = -1
  const tryRow = (row: number): number => {
    const loss = lossAt(hz[row] as number)
    const spareDb = loss - (neededDb[row] as number)
    if (spareDb < leastDb) [leastDb, leastRow] = [spareDb, row]
    if (spareDb < -PROVED_DB) missed.push({ row, shortDb: -spareDb })
    return loss
  }
  let from = 0
  const step = Math.log((hz[rows.at(-1) ?? 0] as number) / (hz[rows[0] ?? 0] as number)) / STEPS
  while (from < rows.length) {
    const edgeHz = (hz[rows[from] as number] as number) * Math.exp(step)
    let to = from + 1
    while (to < rows.length && (hz[rows[to] as number] as number) <= edgeHz) to += 1
    const inside = rows.subarray(from, to)
    const hardest = inside.reduce((a, b) => ((neededDb[b] as number) > (neededDb[a] as number) ? b : a))
    const ends = [...new Set([inside[0] as number, inside.at(-1) as number, hardest])]
    const floorDb = Math.min(...ends.map(tryRow)) - CLEAR_DB
    for (const row of inside) if ((neededDb[row] as number) > floorDb && !ends.includes(row)) tryRow(row)
    from = to
    yield { doneFrac: from / rows.length }
  }
  return { missed: hardestApart(hz, missed), leastDb, leastRow }
}

function rowsInNeed(neededDb: Float64Array): Int32Array {
  let count = 0
  for (let i = 0; i < neededDb.length; i++) if ((neededDb[i] as number) > 0) count += 1
  const rows = new Int32Array(count)
  let at = 0
  for (let i = 0; i < neededDb.length; i++) if ((neededDb[i] as number) > 0) rows[at++] = i
  return rows
}

function hardestApart(
  hz: Float64Array,
  missed: readonly { readonly row: number; readonly shortDb: number }[],
): readonly number[] {
  const kept: number[] = []
  for (const { row } of [...missed].sort((a, b) => b.shortDb - a.shortDb)) {
    const decades = Math.log10(hz[row] as number)
    if (kept.every((other) => Math.abs(Math.log10(hz[other] as number) - decades) >= APART_DECADES)) kept.push(row)
    if (kept.length === MOST_ADDED) break
  }
  return kept
}
