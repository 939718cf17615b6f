/** Files the copy holds deflated: under their own address with `.z` behind it, see scripts/packed-copies.mjs. */

const PACKED = '.z'
const FORMAT = 'deflate-raw'

/** What the browser has to be told of a file that is made here. */
const TYPES: Readonly<Record<string, string>> = { js: 'text/javascript', txt: 'text/plain; charset=utf-8' }

export type Entry = { url: string; revision: string | null; integrity?: string }

/** Whether the format is known here: some browsers that run all else have no such stream. */
function canUnpack(): boolean {
  try {
    return new DecompressionStream(FORMAT) !== undefined
  } catch {
    return false
  }
}

/**
 * What is to be kept here: what was packed only where it can be unpacked, else the file itself. The hash is that of the
 * packed bytes, so that one goes without.
 */
export const entriesHere = (entries: readonly Entry[]): Entry[] =>
  canUnpack()
    ? [...entries]
    : entries.map((entry) =>
        entry.url.endsWith(PACKED) ? { url: entry.url.slice(0, -PACKED.length), revision: entry.revision } : entry,
      )

/** Where else a file may stand in the copy. */
export const packedAddress = (url: URL): URL[] => [new URL(`${url.origin}${url.pathname}${PACKED}`)]

/** The file itself from what was kept of it. */
export function unpacked(response: Response, address: string): Response {
  const { pathname } = new URL(address)
  if (!pathname.endsWith(PACKED) || response.body === null) return response
  const type = TYPES[pathname.slice(0, -PACKED.length).split('.').at(-1) ?? ''] ?? 'application/octet-stream'
  const whole = response.body.pipeThrough(new DecompressionStream(FORMAT))
  return new Response(whole, { headers: { 'Content-Type': type, 'X-Content-Type-Options': 'nosniff' } })
}
