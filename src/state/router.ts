/**
 * Where we are. Addresses are a contract: `#/ask`, `#/ask/<node>`, `#/check`, `#/check/<id>?k=v&…`, `#/log`,
 * `#/log/<id>`, `#/log/<complaint>/<line>/<check>`, `#/log/<complaint>/connector/<connector>/…`, `#/notes`,
 * `#/notes/<id>`, `#/notes/<id>?find=<words looked for>`. A missing key means the default, `key=` means "known to be empty".
 */
import { signal } from '@preact/signals'

export type Pair = { readonly key: string; readonly text: string }

export type Place = 'ask' | 'check' | 'log' | 'notes'

export type Route =
  | {
      readonly place: Place
      readonly id: string | undefined
      readonly query: readonly Pair[]
      /** a check of a line of the complaint `id` */
      readonly kept?: { readonly lineId: string; readonly check: string }
      /** a connector of the complaint `id`, and what follows it: the view, and what of it is open */
      readonly connector?: readonly string[]
    }
  | { readonly place: 'nowhere'; readonly path: string }

const PLACES: readonly Place[] = ['ask', 'check', 'log', 'notes']

/** One character in UTF-8, percent-encoded. */
const ENCODED = /%[0-7][\da-f]|%[cd][\da-f]%[89ab][\da-f]|%e[\da-f](?:%[89ab][\da-f]){2}|%f[0-7](?:%[89ab][\da-f]){3}/gi

/** decodeURIComponent that keeps what it cannot decode as it stands; `+` stays a plus. */
export function decodeText(raw: string): string {
  return raw.replace(ENCODED, (encoded) => {
    try {
      return decodeURIComponent(encoded)
    } catch {
      return encoded
    }
  })
}

/** encodeURIComponent, and the few marks that message apps cut off at the end of a link. */
export function encodeText(text: string): string {
  return encodeURIComponent(text.replace(/\p{Surrogate}/gu, '\uFFFD')).replace(
    /[!'()*]/g,
    (mark) => `%${mark.charCodeAt(0).toString(16).toUpperCase()}`,
  )
}

export function readQuery(raw: string): readonly Pair[] {
  return raw
    .split('&')
    .filter((part) => part !== '')
    .map((part) => {
      const at = part.indexOf('=')
      return at < 0
        ? { key: decodeText(part), text: '' }
        : { key: decodeText(part.slice(0, at)), text: decodeText(part.slice(at + 1)) }
    })
}

export function writeQuery(pairs: readonly Pair[]): string {
  return pairs.map(({ key, text }) => `${encodeText(key)}=${encodeText(text)}`).join('&')
}

/** Reads a location hash. An empty one is the first place; anything unknown is `nowhere`, with its path. */
export function readHash(hash: string): Route {
  const raw = hash.replace(/^#/, '')
  if (raw === '' || raw === '/') return { place: 'ask', id: undefined, query: [] }
  const mark = raw.indexOf('?')
  const path = mark < 0 ? raw : raw.slice(0, mark)
  const [root, first, second = '', ...rest] = path.split('/')
  const place = PLACES.find((known) => known === first)
  const nowhere: Route = { place: 'nowhere', path: decodeText(path) }
  if (root !== '' || place === undefined) return nowhere
  const id = second === '' ? undefined : decodeText(second)
  const query = mark < 0 ? [] : readQuery(raw.slice(mark + 1))
  if (rest.length === 0) return { place, id, query }
  const steps = rest.map(decodeText)
  const [lineId = '', check = '', ...more] = steps
  if (place !== 'log' || id === undefined || steps.includes('')) return nowhere
  if (lineId === 'connector' && check !== '') return { place, id, query, connector: [check, ...more] }
  if (check === '' || more.length > 0) return nowhere
  return { place, id, query, kept: { lineId, check } }
}

export function hashOf(place: Place, id?: string, query: readonly Pair[] = []): string {
  const path = id === undefined ? `#/${place}` : `#/${place}/${encodeText(id)}`
  return query.length === 0 ? path : `${path}?${writeQuery(query)}`
}

/** The address of a check of a kept line. */
export function hashOfKept(complaintId: string, lineId: string, check: string): string {
  return `${hashOf('log', complaintId)}/${encodeText(lineId)}/${encodeText(check)}`
}

export const route = signal<Route>(readHash(globalThis.location?.hash ?? ''), { name: 'route' })

/** The address the screen belongs to, once somebody follows the address bar. */
export const routed: { hash?: string } = {}

/** Follows the address bar; returns the function that stops doing so. */
export function startRouter(): () => void {
  const follow = () => {
    routed.hash = location.hash
    route.value = readHash(location.hash)
  }
  follow()
  addEventListener('hashchange', follow)
  return () => removeEventListener('hashchange', follow)
}

export function goTo(hash: string): void {
  location.hash = hash
}
