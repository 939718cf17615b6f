/** A file of the copy that the browser threw away. */

/** Where it stands in the copy, where the host has it, and the hash of its bytes. */
export type Missing = { readonly key: string; readonly address: string; readonly integrity: string | undefined }

/** The copy's own cache; its name carries the address of the app. */
async function copyOf(scope: string): Promise<Cache | undefined> {
  const name = (await caches.keys()).find((one) => one.includes('-precache-') && one.endsWith(scope))
  return name === undefined ? undefined : caches.open(name)
}

/** Puts it back into the copy; without room there, it is fetched again the next time. */
async function keep(key: string, answer: Response, scope: string): Promise<void> {
  try {
    await (await copyOf(scope))?.put(key, answer)
  } catch {
    // a full device: what is there runs all the same
  }
}

/**
 * The file as the copy held it, put back there where there is room; undefined where the host does not have it, or has other bytes: those
 * would be of another version, or nobody's.
 */
export async function mended({ key, address, integrity }: Missing, scope: string): Promise<Response | undefined> {
  if (integrity === undefined) return undefined
  try {
    const answer = await fetch(address, { integrity, cache: 'no-cache' })
    if (!answer.ok) return undefined
    await keep(key, answer.clone(), scope)
    return answer
  } catch {
    return undefined
  }
}
