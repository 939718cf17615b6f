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

const MARK = 'stillpin-open:'

/** Lets the other windows know that this one is open, under a name, until it ends in whatever way. Gives whether they know. */
export function markOpen(name: string): Promise<boolean> {
  return new Promise((known) => {
    const held = () => {
      known(true)
      return new Promise(() => undefined)
    }
    try {
      navigator.locks.request(MARK + name, held).catch(() => known(false))
    } catch {
      known(false)
    }
  })
}

/** The names of the windows that are open and have said so. */
export async function openNames(): Promise<readonly string[]> {
  try {
    const { held = [] } = await navigator.locks.query()
    return held.flatMap(({ name = '' }) => (name.startsWith(MARK) ? [name.slice(MARK.length)] : []))
  } catch {
    return []
  }
}
