/** Two traces of the same place, without and with a filter: what it took off. */
import { levelIn } from '../level.ts'
import type { Spectrum } from './types.ts'

export type MeasuredLoss =
  | { readonly ok: true; readonly hz: Float64Array; readonly db: Float64Array }
  | { readonly ok: false; readonly message: string }

/**
 * Measured insertion loss = before − after at every frequency of `before` that `after` reaches too, the latter straight
 * between its rows over log frequency. Definition of insertion loss; both traces in one bandwidth and detector.
 */
export function measuredLoss(before: Spectrum, after: Spectrum): MeasuredLoss {
  const isField = (one: Spectrum) => one.unit === 'dBµV/m'
  const isCurrent = (one: Spectrum) => one.unit === 'dBµA'
  if (isField(before) !== isField(after) || isCurrent(before) !== isCurrent(after))
    return {
      ok: false,
      message: `Before is in ${before.unit ?? 'dB'} and after in ${after.unit ?? 'dB'}: measure both alike.`,
    }
  const from = after.hz[0] ?? Number.POSITIVE_INFINITY
  const to = after.hz.at(-1) ?? Number.NEGATIVE_INFINITY
  const rows = [...before.hz.keys()].filter((i) => (before.hz[i] as number) >= from && (before.hz[i] as number) <= to)
  if (rows.length === 0) return { ok: false, message: 'The two traces have no frequency in common.' }
  const shiftDb = levelIn(
    { db: 0, ...(after.unit === undefined ? {} : { unit: after.unit }) },
    before.unit,
    RECEIVER_OHM,
  )
  const hz = new Float64Array(rows.length)
  const db = new Float64Array(rows.length)
  let at = 0
  rows.forEach((row, k) => {
    const f = before.hz[row] as number
    while (at < after.hz.length - 2 && (after.hz[at + 1] as number) < f) at += 1
    hz[k] = f
    db[k] = (before.db[row] as number) - (valueBetween(after, at, f) + shiftDb)
  })
  return { ok: true, hz, db }
}

/** What dBm is read in. */
const RECEIVER_OHM = 50

function valueBetween({ hz, db }: Spectrum, at: number, f: number): number {
  const [f0, f1] = [hz[at] as number, hz[at + 1] ?? (hz[at] as number)]
  const [y0, y1] = [db[at] as number, db[at + 1] ?? (db[at] as number)]
  if (f1 <= f0) return Math.max(y0, y1)
  const share = Math.min(1, Math.max(0, Math.log(f / f0) / Math.log(f1 / f0)))
  return y0 + (y1 - y0) * share
}
