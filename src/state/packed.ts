/** Bytes made small for the storage, and back. */

/** Whether this browser can. */
export const canPack = (): boolean => typeof CompressionStream === 'function'

const through = (bytes: BlobPart, change: GenericTransformStream): Promise<ArrayBuffer> =>
  new Response(
    new Blob([bytes]).stream().pipeThrough(change as ReadableWritablePair<Uint8Array, Uint8Array>),
  ).arrayBuffer()

export const pack = (bytes: BlobPart): Promise<ArrayBuffer> => through(bytes, new CompressionStream('gzip'))

/** Fails where the bytes are none that were packed. */
export const unpack = (bytes: ArrayBuffer): Promise<ArrayBuffer> => through(bytes, new DecompressionStream('gzip'))

export const packText = (text: string): Promise<ArrayBuffer> => pack(text)
export const unpackText = async (bytes: ArrayBuffer): Promise<string> => new TextDecoder().decode(await unpack(bytes))
