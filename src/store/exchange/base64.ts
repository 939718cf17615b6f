/** Bytes as text of a file, and back: RFC 4648, with its filling. */

/** As many bytes at once as a call takes arguments; a multiple of three, so that the pieces fit together. */
const PIECE_BYTES = 0x6000

export function toBase64(bytes: ArrayBuffer): string {
  const all = new Uint8Array(bytes)
  let text = ''
  for (let at = 0; at < all.length; at += PIECE_BYTES)
    text += btoa(String.fromCharCode(...all.subarray(at, at + PIECE_BYTES)))
  return text
}

/** Undefined where it is none, or none that `toBase64` writes: what comes in goes out the same. */
export function fromBase64(text: string): ArrayBuffer | undefined {
  if (text.length % 4 !== 0 || !/^[A-Za-z\d+/]*={0,2}$/.test(text)) return undefined
  const binary = atob(text)
  const bytes = new Uint8Array(binary.length)
  for (let at = 0; at < binary.length; at++) bytes[at] = binary.charCodeAt(at)
  const end = bytes.length - (bytes.length % 3)
  return toBase64(bytes.slice(end).buffer) === text.slice((end / 3) * 4) ? bytes.buffer : undefined
}
