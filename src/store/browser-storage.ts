/**
 * Every way this browser keeps or passes on data, behind one guard: where storage is switched off, some browsers throw
 * at the mere mention of it, and the app would stay blank. Nothing here throws; what is not there answers "nothing".
 * No other file of the app names these interfaces but browser-storage-facts.ts and open-windows.ts (the offline part keeps
 * to its caches).
 */

const PREFIX = 'stillpin-'

function quietly<T>(job: () => T, or: T): T {
  try {
    return job()
  } catch {
    return or
  }
}

/** The small synchronous storage: a text under a name, or undefined. */
export function smallText(name: string): string | undefined {
  return quietly(() => localStorage.getItem(PREFIX + name) ?? undefined, undefined)
}

/** Puts a small text under a name; undefined takes it away. Refused or full: nothing happens. */
export function keepSmallText(name: string, text: string | undefined): void {
  quietly(() => {
    if (text === undefined) localStorage.removeItem(PREFIX + name)
    else localStorage.setItem(PREFIX + name, text)
  }, undefined)
}

/** Counts one up under a name. */
export const countUp = (name: string): void => keepSmallText(name, String(Number(smallText(name) ?? 0) + 1))

/** The names in use. */
export function smallNames(): readonly string[] {
  return quietly(
    () =>
      Object.keys(localStorage)
        .filter((key) => key.startsWith(PREFIX))
        .map((key) => key.slice(PREFIX.length)),
    [],
  )
}

/** The browser's databases, or undefined where they are refused. */
export function databases(): IDBFactory | undefined {
  return quietly<IDBFactory | undefined>(() => indexedDB, undefined)
}

/** Asks the browser not to clear the storage; undefined where it cannot be asked. */
export async function askToKeepStorage(): Promise<boolean | undefined> {
  try {
    return await navigator.storage?.persist?.()
  } catch {
    return undefined
  }
}

/** A line to the other windows of this app. */
export type Channel = { readonly send: (message: unknown) => void }

/** Opens a line to the other windows; where there is none, nothing is sent and nothing comes. */
export function openChannel(name: string, onMessage: (message: unknown) => void): Channel {
  return quietly<Channel>(
    () => {
      const channel = new BroadcastChannel(PREFIX + name)
      channel.addEventListener('message', ({ data }) => onMessage(data))
      return { send: (message) => quietly(() => channel.postMessage(message), undefined) }
    },
    { send: () => undefined },
  )
}
