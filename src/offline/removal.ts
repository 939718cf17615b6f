/** Takes the offline copy off this device: its workers and its caches, and nothing of other apps on the same host. */

const isOurs = (address: string): boolean => address.startsWith(new URL('.', document.baseURI).href)

/** Ends the registration of every worker of this app. */
export async function unregisterAll(): Promise<void> {
  const all = await navigator.serviceWorker.getRegistrations()
  await Promise.all(all.filter(({ scope }) => isOurs(scope)).map((one) => one.unregister()))
}

/** Workers and caches; a browser without them has nothing to take off. Never throws. */
export async function removeOfflineCopy(): Promise<void> {
  try {
    await unregisterAll()
    // The precache carries the address of its app at the end of its name.
    const names = await caches.keys()
    await Promise.all(
      names.filter((name) => isOurs(name.slice(name.indexOf('http')))).map((name) => caches.delete(name)),
    )
  } catch {
    // Refused here: then nothing was stored here either.
  }
}
