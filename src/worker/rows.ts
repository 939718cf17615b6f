/** A spectrum as one run of bytes, frequencies and then levels: a blob goes from thread to thread without a copy. */
import type { Spectrum } from '../calc/trace/types.ts'

export const rowsOf = ({ hz, db }: Pick<Spectrum, 'hz' | 'db'>): Blob =>
  new Blob([hz as Float64Array<ArrayBuffer>, db as Float64Array<ArrayBuffer>])

/** Fails where the bytes are no such run. */
export function spectrumIn(bytes: ArrayBuffer): Pick<Spectrum, 'hz' | 'db'> {
  const all = new Float64Array(bytes)
  const rows = all.length / 2
  if (!Number.isInteger(rows) || rows === 0) throw new RangeError('no rows')
  return { hz: all.subarray(0, rows), db: all.subarray(rows) }
}
