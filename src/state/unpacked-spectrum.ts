/** A stored spectrum, unpacked. */
import { LEVEL_UNITS } from '../calc/quantity/level-unit.ts'
import type { Spectrum } from '../calc/trace/types.ts'
import type { KeptTrace } from '../store/traces.ts'
import { unpack } from './packed.ts'

/** Frequencies, then levels, as they were packed; fails where the content is damaged. */
export async function spectrumOf({ bytes, unit }: KeptTrace): Promise<Spectrum> {
  const all = new Float64Array(await unpack(bytes))
  const rows = all.length / 2
  if (!Number.isInteger(rows) || rows === 0) throw new RangeError('no rows')
  return {
    hz: all.subarray(0, rows),
    db: all.subarray(rows),
    unit: LEVEL_UNITS.find((one) => one === unit),
  }
}
