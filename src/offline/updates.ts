/**
 * Registration and updates of the offline copy.
 *
 * `offlineReady`     true once this browser holds a copy this window can go on with: from now on it works without a network
 * `isCopyMissing`    true while it is known that this browser holds no copy to start from
 * `isNetworkGone`    true while the browser says that there is no network
 * `updateReady`      a newer version waits; nothing changes until `applyUpdate()`
 * `updatedElsewhere` another tab took the update; this one keeps its text and should offer a reload
 * `reloadAdvised`    a part of this old version is no longer on the host
 * `applyUpdate()`    switch to the waiting version and reload this tab only
 */
import { signal } from '@preact/signals'

export const offlineReady = signal(false)
export const isCopyMissing = signal(false)
export const isNetworkGone = signal(false)
export const updateReady = signal(false)
export const updatedElsewhere = signal(false)
export const reloadAdvised = signal(false)

let apply: () => void = () => location.reload()

/** Takes the waiting update; only the tab that asked is reloaded. */
export const applyUpdate = (): void => apply()

function followNetwork(): void {
  const look = () => {
    isNetworkGone.value = navigator.onLine === false
  }
  look()
  for (const kind of ['online', 'offline']) window.addEventListener(kind, look)
}

/**
 * Registers the worker and keeps looking for updates. `?no-sw` in the address removes it instead. `free`: when the screen
 * stands; the copy is 1 MB, and a phone that fetches it beside the first screen shows that later.
 */
export async function startOffline(free: Promise<void> = Promise.resolve()): Promise<void> {
  followNetwork()
  window.addEventListener('vite:preloadError', (event) => {
    event.preventDefault()
    reloadAdvised.value = true
  })
  const cameFromCopy = 'serviceWorker' in navigator && navigator.serviceWorker.controller !== null
  isCopyMissing.value = !cameFromCopy
  if (!('serviceWorker' in navigator)) return
  if (new URLSearchParams(location.search).has('no-sw')) return (await import('./removal.ts')).unregisterAll()
  await free
  const { register } = await import('./register.ts')
  const told = { offlineReady, isCopyMissing, updateReady, updatedElsewhere }
  apply = (await register({ told, script: import.meta.url, cameFromCopy })) ?? apply
}
