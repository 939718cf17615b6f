/** Bytes made small for the storage, away from the screen. */
import { pack } from './packed.ts'
import type { Steps } from './serve.ts'

export async function run(bytes: Blob): Promise<Steps<ArrayBuffer>> {
  const packed = await pack(bytes)
  // biome-ignore lint/correctness/useYield: it is done when it begins
  return (function* () {
    return packed
  })()
}

export const handedOver = (packed: ArrayBuffer): readonly ArrayBuffer[] => [packed]
