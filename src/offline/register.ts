/// <reference types="trusted-types" />
/**
 * Registers the worker of the offline copy and follows it from download to activation. Fetched once the first screen stands.
 *
 * vite-plugin-pwa's own registration is not used: it reloads other tabs and is blocked under Trusted Types.
 */
import type { Signal } from '@preact/signals'
import { Workbox } from 'workbox-window'

const HOUR_MS = 3_600_000

export type Registered = {
  /** what is told of the copy from now on, see updates.ts */
  readonly told: Readonly<
    Record<'offlineReady' | 'isCopyMissing' | 'updateReady' | 'updatedElsewhere', Signal<boolean>>
  >
  /** the address of a script that every version names anew */
  readonly script: string
  readonly cameFromCopy: boolean
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

/** Gives what switches to the waiting version; only the tab that asked is reloaded. */
export async function register({ told, script, cameFromCopy }: Registered): Promise<(() => void) | undefined> {
  // Types of workbox-window predate Trusted Types; it hands the address on unchanged.
  const workbox = new Workbox(workerAddress() as string, { updateViaCache: 'none' })
  const registration = await workbox.register({ immediate: true })
  if (registration === undefined) return undefined
  let askedHere = false
  let isLooking = false

  /** Another worker than the one this window came from is in charge now. */
  const replaced = () => {
    told.updateReady.value = false
    if (askedHere) location.reload()
    else told.updatedElsewhere.value = true
  }
  const haveCopy = () => {
    told.offlineReady.value = true
    told.isCopyMissing.value = false
  }
  /** Follows one worker from download to activation. */
  const follow = (worker: ServiceWorker | null) => {
    if (worker === null) return
    const isFirst = registration.active === null
    const look = () => {
      if (worker.state === 'installed' && !isFirst) told.updateReady.value = true
      if (worker.state !== 'activated') return
      if (isFirst) haveCopy()
      else replaced()
    }
    worker.addEventListener('statechange', look)
    look()
  }
  /**
   * Asks the host for a newer version; silent when there is no network. One look at a time: a window that comes to the
   * front is told so by several events at once, and several looks at once may leave the browser waiting for ever.
   */
  const check = () => {
    if (isLooking || document.visibilityState !== 'visible') return
    isLooking = true
    const done = () => {
      isLooking = false
    }
    registration.update().then(done, done)
  }
  /**
   * A window that came from an older copy may start so late that the newer worker is in charge before anything here could
   * follow it; nothing would ever be told then. So the worker in charge is asked whether its copy holds this window's
   * script: only then has this window a copy to go on with.
   */
  const askWhetherCurrent = () => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = ({ data }) => {
      if (data === false) replaced()
      else haveCopy()
      port1.close()
    }
    registration.active?.postMessage({ type: 'HOLDS', url: script }, [port2])
  }

  // A window that came from a copy asks first whether it is still this one: to an older window the newer copy is of no use.
  if (registration.active !== null && !cameFromCopy) haveCopy()
  follow(registration.waiting)
  follow(registration.installing)
  registration.addEventListener('updatefound', () => follow(registration.installing))
  if (cameFromCopy) askWhetherCurrent()
  for (const kind of ['pageshow', 'focus', 'online']) window.addEventListener(kind, check)
  document.addEventListener('visibilitychange', check)
  setInterval(check, HOUR_MS)
  return () => {
    askedHere = true
    if (registration.waiting) workbox.messageSkipWaiting()
    else location.reload()
  }
}
