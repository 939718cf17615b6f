/** Files the copy holds deflated: under their own address with `.z` behind it, see scripts/packed-copies.mjs. */

const PACKED = '.z'

/** What the browser has to be told of a file that is made here. */
const TYPES: Readonly<Record<string, string>> = { js: 'text/javascript', txt: 'text/plain; charset=utf-8' }

/** Where else a file may stand in the copy. */
export const packedAddress = (url: URL): URL[] => [new URL(`${url.origin}${url.pathname}${PACKED}`)]

/** The file itself from what was kept of it. */
export function unpacked(response: Response, address: string): Response {
  const { pathname } = new URL(address)
  if (!pathname.endsWith(PACKED) || response.body === null) return response
  const type = TYPES[pathname.slice(0, -PACKED.length).split('.').at(-1) ?? ''] ?? 'application/octet-stream'
  const whole = response.body.pipeThrough(new DecompressionStream('deflate-raw'))
  return new Response(whole, { headers: { 'Content-Type': type, 'X-Content-Type-Options': 'nosniff' } })
}
