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

type Hash = { high: number; low: number }

function hashOn(hash: Hash, text: string, from: number, to: number): void {
  let { high, low } = hash
  for (let index = from; index < to; index++) {
    const code = text.charCodeAt(index)
    low = Math.imul(low ^ code, 0x01000193)
    high = Math.imul(high ^ code, 0x5bd1e995)
  }
  hash.high = high
  hash.low = low
}

const newHash = (): Hash => ({ high: 0x9747b28c, low: 0x811c9dc5 })
const inHex = (half: number): string => (half >>> 0).toString(16).padStart(8, '0')
const digestIn = ({ high, low }: Hash, text: string): string => `${inHex(high)}${inHex(low)}-${text.length}`
const textOf = (guide: unknown): string => JSON.stringify(guide) ?? ''

/**
 * Fingerprint of a guide's content: 53-bit FNV-style hash of its JSON text, as hexadecimal.
 * Finds damage and forgotten version numbers; it is no protection against intent.
 */
export function guideDigest(guide: unknown): string {
  const text = textOf(guide)
  const hash = newHash()
  hashOn(hash, text, 0, text.length)
  return digestIn(hash, text)
}

/** Lets the page do something else: to read a guide through takes a phone longer than a frame. */
type Pause = () => Promise<void>
const AT_ONCE: Pause = () => Promise.resolve()
/** Letters, and milliseconds, between two pauses. */
const PIECE = 100_000
const STEP_MS = 3

async function digestOf(guide: unknown, pause: Pause): Promise<string> {
  const text = textOf(guide)
  const hash = newHash()
  for (let from = 0; from < text.length; from += PIECE) {
    await pause()
    hashOn(hash, text, from, Math.min(text.length, from + PIECE))
  }
  return digestIn(hash, text)
}

type Found = { readonly state: 'none' | 'older' | 'newer' | 'damaged' | 'same'; readonly stored?: Guide }

/** Tells of one part of what was read after the other whether it is right; the first that is not ends it. */
type Shape = (raw: unknown) => Iterable<boolean>

type Asked = { readonly bundled: BundledGuide; readonly shape: Shape; readonly pause: Pause }

/** Whatever stored it may have been wrong itself: what is letter for letter as it was stored need not be a guide. */
async function isRight(stored: unknown, { shape, pause }: Asked): Promise<boolean> {
  let untilMs = performance.now() + STEP_MS
  for (const part of shape(stored)) {
    if (!part) return false
    if (performance.now() < untilMs) continue
    await pause()
    untilMs = performance.now() + STEP_MS
  }
  return true
}

async function findStored(asked: Asked): Promise<Found> {
  const { bundled, pause } = asked
  const raw = await readOne('guide', KEY)
  if (raw === undefined) return { state: 'none' }
  await pause()
  const stored = isRecord(raw) ? raw['guide'] : undefined
  if (!isRecord(raw) || !isRecord(stored) || raw['digest'] !== (await digestOf(stored, pause)))
    return { state: 'damaged' }
  // a newer one may have another shape
  if (Number(stored['version']) > bundled.guide.version) return { state: 'newer' }
  await pause()
  if (!(await isRight(stored, asked))) return { state: 'damaged' }
  return raw['digest'] === bundled.digest ? { state: 'same', stored: stored as unknown as Guide } : { state: 'older' }
}

async function fromStore(asked: Asked): Promise<LoadedGuide> {
  const { bundled } = asked
  const { guide } = bundled
  const { state, stored: kept } = await findStored(asked)
  if (kept !== undefined) return { guide: kept, from: 'store' }
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
  const { stored: seeded } = await findStored(asked)
  return seeded === undefined ? { guide, from: 'bundle' } : { guide: seeded, from: 'store' }
}

/**
 * The guide to use. A bundle that is newer, or differs at the same version, replaces the stored content.
 * Stored content that is damaged, missing or newer than this app: the bundled guide, with a notice where it matters.
 * Never fails and never waits long: without storage, or when it does not answer, the bundle is used. `pause`: called
 * between pieces of the reading.
 */
export async function loadStoredGuide(
  bundled: BundledGuide,
  shape: Shape,
  pause: Pause = AT_ONCE,
): Promise<LoadedGuide> {
  try {
    return await fromStore({ bundled, shape, pause })
  } catch (error) {
    if (!(error instanceof StoreError)) throw error
    return { guide: bundled.guide, from: 'bundle', notice: UNREACHED }
  }
}
