/** A stored spectrum, unpacked. */
import { LEVEL_UNITS } from '../calc/quantity/level-unit.ts'
import type { Spectrum } from '../calc/trace/types.ts'
import type { KeptTrace } from '../store/traces.ts'
import { unpack } from '../worker/packed.ts'
import { spectrumIn } from '../worker/rows.ts'

/** The spectrum, and the run of bytes it came in; fails where the content is damaged. */
export async function spectrumOf({ bytes, unit }: KeptTrace): Promise<{ spectrum: Spectrum; rows: Blob }> {
  const rows = await unpack(bytes)
  const { hz, db } = spectrumIn(await rows.arrayBuffer())
  return { spectrum: { hz, db, unit: LEVEL_UNITS.find((one) => one === unit) }, rows }
}
