/**
 * Files that another app shared to this one. The worker keeps them, also without a network; they stay until they were
 * brought in or put away.
 */

import { NAME_HEADER, sharedName } from './shared-name.ts'

export type SharedFile = { readonly key: string; readonly name: string; readonly file: Blob }

const scopeHere = (): string => new URL('.', document.baseURI).href

/** How many wait; none of them is read for it. */
export async function countShared(): Promise<number> {
  try {
    if (!(await caches.has(sharedName(scopeHere())))) return 0
    return (await (await caches.open(sharedName(scopeHere()))).keys()).length
  } catch {
    return 0
  }
}

/** The files that wait, the first shared first. A browser without caches has none. */
export async function sharedFiles(): Promise<readonly SharedFile[]> {
  try {
    if (!(await caches.has(sharedName(scopeHere())))) return []
    const cache = await caches.open(sharedName(scopeHere()))
    const read = async ({ url }: Request): Promise<SharedFile | undefined> => {
      const kept = await cache.match(url)
      if (kept === undefined) return undefined
      return { key: url, name: decodeURIComponent(kept.headers.get(NAME_HEADER) ?? ''), file: await kept.blob() }
    }
    const found = await Promise.all((await cache.keys()).map(read))
    return found.flatMap((one) => one ?? [])
  } catch {
    return []
  }
}

/** It was brought in, or is not wanted. */
export async function dropShared(key: string): Promise<void> {
  try {
    await (await caches.open(sharedName(scopeHere()))).delete(key)
  } catch {
    // it stays, and is offered again
  }
}
