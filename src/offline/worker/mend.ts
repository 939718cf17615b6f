/** A file of the copy that the browser threw away. */

/** Where it stands in the copy, where the host has it, and the hash of its bytes. */
export type Missing = { readonly key: string; readonly address: string; readonly integrity: string | undefined }

/** The copy's own cache; its name carries the address of the app. */
async function copyOf(scope: string): Promise<Cache | undefined> {
  const name = (await caches.keys()).find((one) => one.includes('-precache-') && one.endsWith(scope))
  return name === undefined ? undefined : caches.open(name)
}

/**
 * The file as the copy held it, put back there; undefined where the host does not have it, or has other bytes: those
 * would be of another version, or nobody's.
 */
export async function mended({ key, address, integrity }: Missing, scope: string): Promise<Response | undefined> {
  if (integrity === undefined) return undefined
  try {
    const answer = await fetch(address, { integrity, cache: 'no-cache' })
    if (!answer.ok) return undefined
    await (await copyOf(scope))?.put(key, answer.clone())
    return answer
  } catch {
    return undefined
  }
}
