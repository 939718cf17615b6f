/** Bytes made small for the storage, and back. */

/** Whether this browser can. */
export const canPack = (): boolean => typeof CompressionStream === 'function'

const through = (bytes: Blob, change: GenericTransformStream): Response =>
  new Response(bytes.stream().pipeThrough(change as ReadableWritablePair<Uint8Array, Uint8Array>))

export const pack = (bytes: Blob): Promise<ArrayBuffer> => through(bytes, new CompressionStream('gzip')).arrayBuffer()

/** Fails where the bytes are none that were packed. */
export const unpack = (bytes: ArrayBuffer): Promise<Blob> =>
  through(new Blob([bytes]), new DecompressionStream('gzip')).blob()

export const unpackText = async (bytes: ArrayBuffer): Promise<string> => (await unpack(bytes)).text()
