/// <reference lib="WebWorker" />
/** The worker: everything precached, nothing fetched later, updates only when the page asks. */
import { addPlugins, cleanupOutdatedCaches, matchPrecache, precacheAndRoute } from 'workbox-precaching'
import { NavigationRoute, registerRoute } from 'workbox-routing'
import { isPageInPlaceOfFile } from './guard.ts'

declare const self: ServiceWorkerGlobalScope & {
  readonly __WB_MANIFEST: (string | { url: string; revision: string | null })[]
}

addPlugins([
  {
    // A host that answers missing files with its start page would otherwise fill the cache with it: refuse the install.
    cacheWillUpdate: async ({ request, response }) =>
      response.ok && !isPageInPlaceOfFile(request.url, response.headers.get('content-type')) ? response : null,
  },
])
precacheAndRoute(self.__WB_MANIFEST)
cleanupOutdatedCaches()

registerRoute(
  new NavigationRoute(async ({ url }) => {
    const scope = new URL(self.registration.scope)
    // Any other address under the scope goes to the start page; the browser keeps the #fragment.
    if (url.pathname !== scope.pathname) return Response.redirect(scope.href)
    return (await matchPrecache('index.html')) ?? fetch(scope.href)
  }),
)

self.addEventListener('activate', (event) => {
  event.waitUntil(self.clients.claim())
})

self.addEventListener('message', (event) => {
  if (event.data?.type === 'SKIP_WAITING') void self.skipWaiting()
})
