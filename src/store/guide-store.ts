/** The guide on disk: seeded from the bundle, read from the store, with the bundle to fall back on. */
import type { Guide } from '../guide/types.ts'
import { readOne, writeOne } from './db.ts'
import { isRecord } from './plain.ts'
import { StoreError } from './trouble.ts'

/** The guide that comes with the app, with its fingerprint. */
export type BundledGuide = { readonly guide: Guide; readonly digest: string }

/** Where the guide came from, and the sentence to show when that is not the plain case. */
export type LoadedGuide = { readonly guide: Guide; readonly from: 'store' | 'bundle'; readonly notice?: string }

const KEY = 'current'
/** What ails the storage is said where it is noticed. */
const UNREACHED = 'The stored guide cannot be reached, so the one that came with the app is used.'

/**
 * Fingerprint of a guide's content: 53-bit FNV-style hash of its JSON text, as hexadecimal.
 * Finds damage and forgotten version numbers; it is no protection against intent.
 */
export function guideDigest(guide: unknown): string {
  const text = JSON.stringify(guide) ?? ''
  let high = 0x9747b28c
  let low = 0x811c9dc5
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index)
    low = Math.imul(low ^ code, 0x01000193)
    high = Math.imul(high ^ code, 0x5bd1e995)
  }
  return `${(high >>> 0).toString(16).padStart(8, '0')}${(low >>> 0).toString(16).padStart(8, '0')}-${text.length}`
}

type Found = { readonly state: 'none' | 'older' | 'newer' | 'damaged' | 'same'; readonly stored?: Guide }

type IsGuide = (raw: unknown) => raw is Guide

/** Whatever stored it may have been wrong itself: what is letter for letter as it was stored need not be a guide. */
function compare(raw: unknown, bundled: BundledGuide, isGuide: IsGuide): Found {
  if (raw === undefined) return { state: 'none' }
  const stored = isRecord(raw) ? raw['guide'] : undefined
  if (!isRecord(raw) || !isRecord(stored) || raw['digest'] !== guideDigest(stored)) return { state: 'damaged' }
  // a newer one may have another shape
  if (Number(stored['version']) > bundled.guide.version) return { state: 'newer' }
  if (!isGuide(stored)) return { state: 'damaged' }
  return raw['digest'] === bundled.digest ? { state: 'same', stored } : { state: 'older' }
}

async function fromStore(bundled: BundledGuide, isGuide: IsGuide): Promise<LoadedGuide> {
  const { guide } = bundled
  const { state, stored } = compare(await readOne('guide', KEY), bundled, isGuide)
  if (stored !== undefined) return { guide: stored, from: 'store' }
  if (state === 'newer')
    return {
      guide,
      from: 'bundle',
      notice:
        'A newer window of Stillpin has stored a newer guide. This window uses its own; reload for the newer one.',
    }
  await writeOne('guide', KEY, bundled)
  if (state === 'damaged')
    return {
      guide,
      from: 'bundle',
      notice: 'The stored guide was damaged. It was replaced by the one that came with the app.',
    }
  const { stored: seeded } = compare(await readOne('guide', KEY), bundled, isGuide)
  return seeded === undefined ? { guide, from: 'bundle' } : { guide: seeded, from: 'store' }
}

/**
 * The guide to use. A bundle that is newer, or differs at the same version, replaces the stored content.
 * Stored content that is damaged, missing or newer than this app: the bundled guide, with a notice where it matters.
 * Never fails and never waits long: without storage, or when it does not answer, the bundle is used.
 */
export async function loadStoredGuide(bundled: BundledGuide, isGuide: IsGuide): Promise<LoadedGuide> {
  try {
    return await fromStore(bundled, isGuide)
  } catch (error) {
    if (!(error instanceof StoreError)) throw error
    return { guide: bundled.guide, from: 'bundle', notice: UNREACHED }
  }
}
