/// <reference lib="WebWorker" />
/**
 * The worker: everything precached, nothing fetched later, updates only when the page asks.
 * It is run by public/worker.js, which is what the browser registers and which refuses it when it did not arrive whole.
 */
import {
  addPlugins,
  cleanupOutdatedCaches,
  getCacheKeyForURL,
  matchPrecache,
  precacheAndRoute,
} from 'workbox-precaching'
import { NavigationRoute, registerRoute } from 'workbox-routing'
import { isPageInPlaceOfFile } from './guard.ts'
import { mended } from './mend.ts'
import { isSharedHere, keepShared } from './share-target.ts'
import { entriesHere, packedAddress, unpacked } from './unpacked.ts'

declare const self: ServiceWorkerGlobalScope & {
  /** Every file of the build with the hash of its bytes: another file under its address fails the install. */
  readonly __WB_MANIFEST: { url: string; revision: string | null; integrity: string }[]
  /** Set by the last line of this file, read by public/worker.js. */
  stillpinIsWhole?: boolean
}

addPlugins([
  {
    // A host that answers missing files with its start page would otherwise fill the cache with it: refuse the install.
    cacheWillUpdate: async ({ request, response }) =>
      response.ok && !isPageInPlaceOfFile(request.url, response.headers.get('content-type')) ? response : null,
    cachedResponseWillBeUsed: async ({ request, cachedResponse }) =>
      cachedResponse === undefined ? undefined : unpacked(cachedResponse, request.url),
    // A file of the copy the browser threw away, and the host did not give as it is: the copy may hold it packed. What is
    // missing at the install refuses that; bytes of another hash are run by nobody.
    handlerDidError: async ({ request, event }) => (event.type === 'install' ? undefined : fromHost(request.url)),
  },
])
const entries = entriesHere(self.__WB_MANIFEST)
precacheAndRoute(entries, { urlManipulation: ({ url }) => packedAddress(url) })
cleanupOutdatedCaches()

const inScope = (address: string): string => new URL(address, self.registration.scope).href

/** What the copy should hold under an address, from the host. */
async function inCopy(address: string): Promise<Response | undefined> {
  const key = getCacheKeyForURL(address)
  const integrity = entries.find(({ url }) => inScope(url) === address)?.integrity
  return key === undefined ? undefined : mended({ key, address, integrity }, self.registration.scope)
}

/** A script or text that the copy holds packed. */
async function fromHost(address: string): Promise<Response | undefined> {
  for (const { href } of packedAddress(new URL(address))) {
    const found = await inCopy(href)
    if (found !== undefined) return unpacked(found, href)
  }
  return undefined
}

registerRoute(
  new NavigationRoute(async ({ url }) => {
    const scope = new URL(self.registration.scope)
    // Any other address under the scope goes to the start page; the browser keeps the #fragment.
    if (url.pathname !== scope.pathname) return Response.redirect(scope.href)
    return (await matchPrecache('index.html')) ?? (await inCopy(inScope('index.html'))) ?? fetch(scope.href)
  }),
)

registerRoute(
  ({ url }) => isSharedHere(url, self.registration.scope),
  ({ request }) => keepShared(request, self.registration.scope),
  'POST',
)

self.addEventListener('activate', (event) => {
  event.waitUntil(self.clients.claim())
})

const holds = (address: string): boolean =>
  [new URL(address), ...packedAddress(new URL(address))].some(({ href }) => getCacheKeyForURL(href) !== undefined)

self.addEventListener('message', (event) => {
  if (event.data?.type === 'SKIP_WAITING') void self.skipWaiting()
  // A window asks whether the script it runs is part of this copy; one that is older learns it this way.
  if (event.data?.type === 'HOLDS') event.ports[0]?.postMessage(holds(event.data.url))
})

self.stillpinIsWhole = true
