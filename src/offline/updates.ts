/// <reference types="trusted-types" />
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
 *
 * vite-plugin-pwa's own registration is not used: it reloads other tabs and is blocked under Trusted Types.
 */
import { signal } from '@preact/signals'
import type { Workbox } from 'workbox-window'

export const offlineReady = signal(false)
export const isCopyMissing = signal(false)
export const isNetworkGone = signal(false)
export const updateReady = signal(false)
export const updatedElsewhere = signal(false)
export const reloadAdvised = signal(false)

const HOUR_MS = 3_600_000

let workbox: Workbox | undefined
let registration: ServiceWorkerRegistration | undefined
let askedHere = false

/** Another worker than the one this window came from is in charge now. */
function replaced(): void {
  updateReady.value = false
  if (askedHere) location.reload()
  else updatedElsewhere.value = true
}

function haveCopy(): void {
  offlineReady.value = true
  isCopyMissing.value = false
}

/** Follows one worker from download to activation. */
function follow(worker: ServiceWorker | null): void {
  if (worker === null || registration === undefined) return
  const isFirst = registration.active === null
  const look = () => {
    if (worker.state === 'installed' && !isFirst) updateReady.value = true
    if (worker.state !== 'activated') return
    if (isFirst) haveCopy()
    else replaced()
  }
  worker.addEventListener('statechange', look)
  look()
}

/** Takes the waiting update; only the tab that asked is reloaded. */
export function applyUpdate(): void {
  askedHere = true
  if (registration?.waiting) workbox?.messageSkipWaiting()
  else location.reload()
}

let isLooking = false

/**
 * Asks the host for a newer version; silent when there is no network. One look at a time: a window that comes to the
 * front is told so by several events at once, and several looks at once may leave the browser waiting for ever.
 */
function check(): void {
  if (isLooking || registration === undefined || document.visibilityState !== 'visible') return
  isLooking = true
  const done = () => {
    isLooking = false
  }
  registration.update().then(done, done)
}

/**
 * A window that came from an older copy may start so late that the newer worker is in charge before anything here could
 * follow it; nothing would ever be told then. So the worker in charge is asked whether its copy holds this very script:
 * only then has this window a copy to go on with.
 */
function askWhetherCurrent(): void {
  const { port1, port2 } = new MessageChannel()
  port1.onmessage = ({ data }) => {
    if (data === false) replaced()
    else haveCopy()
    port1.close()
  }
  registration?.active?.postMessage({ type: 'HOLDS', url: import.meta.url }, [port2])
}

/** The worker's address as the type the browser demands; no other address can come out of this policy. */
function workerAddress(): string | TrustedScriptURL {
  const address = new URL('worker.js', document.baseURI).href
  return (
    window.trustedTypes
      ?.createPolicy('stillpin', { createScriptURL: (_asked: string) => address })
      .createScriptURL('') ?? address
  )
}

function followNetwork(): void {
  const look = () => {
    isNetworkGone.value = navigator.onLine === false
  }
  look()
  for (const kind of ['online', 'offline']) window.addEventListener(kind, look)
}

/** Registers the worker and keeps looking for updates. `?no-sw` in the address removes it instead. */
export async function startOffline(): Promise<void> {
  followNetwork()
  window.addEventListener('vite:preloadError', (event) => {
    event.preventDefault()
    reloadAdvised.value = true
  })
  const cameFromCopy = 'serviceWorker' in navigator && navigator.serviceWorker.controller !== null
  isCopyMissing.value = !cameFromCopy
  if (!('serviceWorker' in navigator)) return
  if (new URLSearchParams(location.search).has('no-sw')) return (await import('./removal.ts')).unregisterAll()
  // Not needed for the first screen: fetched when the worker is registered.
  const { Workbox: Worker } = await import('workbox-window')
  // Types of workbox-window predate Trusted Types; it hands the address on unchanged.
  workbox = new Worker(workerAddress(), { updateViaCache: 'none' })
  registration = await workbox.register({ immediate: true })
  if (registration === undefined) return
  // A window that came from a copy asks first whether it is still this one: to an older window the newer copy is of no use.
  if (registration.active !== null && !cameFromCopy) haveCopy()
  follow(registration.waiting)
  follow(registration.installing)
  registration.addEventListener('updatefound', () => follow(registration?.installing ?? null))
  if (cameFromCopy) askWhetherCurrent()
  for (const kind of ['pageshow', 'focus', 'online']) window.addEventListener(kind, check)
  document.addEventListener('visibilitychange', check)
  setInterval(check, HOUR_MS)
}
