/** Bytes made small for the storage, away from the screen. */
import { pack } from './packed.ts'
import type { Steps } from './serve.ts'

export async function run(bytes: Blob): Promise<Steps<ArrayBuffer>> {
  return given(await pack(bytes))
}

/** All of it is done when it is opened. */
function* given(packed: ArrayBuffer): Steps<ArrayBuffer> {
  yield { doneFrac: 1 }
  return packed
}

export const handedOver = (packed: ArrayBuffer): readonly ArrayBuffer[] => [packed]
