/** What this browser says of its storage; fetched where it is shown. Behind the same guard as browser-storage.ts: nothing here throws. */

/** Bytes kept on this device by this app's origin, where the browser says so. */
export async function bytesKept(): Promise<number | undefined> {
  try {
    return (await navigator.storage?.estimate?.())?.usage
  } catch {
    return undefined
  }
}

/** Whether the browser promised not to clear the storage, now or in an earlier visit; undefined where it does not say. */
export async function isStorageKept(): Promise<boolean | undefined> {
  try {
    return await navigator.storage?.persisted?.()
  } catch {
    return undefined
  }
}
