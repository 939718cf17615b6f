/** Which windows of the app are open. Behind the same guard as browser-storage.ts: nothing here throws. */

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
