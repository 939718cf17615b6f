/** The guide on disk: seeded from the bundle, read from the store, with the bundle to fall back on. */
import type { Progress } from '../calc/types.ts'
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

/** Letters between two steps of a fingerprint. */
const PIECE = 20_000

function* digestSteps(guide: unknown): Generator<Progress, string> {
  const text = JSON.stringify(guide) ?? ''
  let high = 0x9747b28c
  let low = 0x811c9dc5
  for (let from = 0; from < text.length; from += PIECE) {
    const to = Math.min(text.length, from + PIECE)
    for (let index = from; index < to; index++) {
      const code = text.charCodeAt(index)
      low = Math.imul(low ^ code, 0x01000193)
      high = Math.imul(high ^ code, 0x5bd1e995)
    }
    yield { doneFrac: to / text.length }
  }
  return `${(high >>> 0).toString(16).padStart(8, '0')}${(low >>> 0).toString(16).padStart(8, '0')}-${text.length}`
}

/**
 * Fingerprint of a guide's content: 53-bit FNV-style hash of its JSON text, as hexadecimal.
 * Finds damage and forgotten version numbers; it is no protection against intent.
 */
export function guideDigest(guide: unknown): string {
  const steps = digestSteps(guide)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

type Found = { readonly state: 'none' | 'older' | 'newer' | 'damaged' | 'same'; readonly stored?: Guide }

type Steps<R> = Generator<Progress, R>
/** What the guide is read with: whether something has the shape of one, and what lets the page do something else meanwhile. */
export type Reader = {
  readonly shape: (raw: unknown) => Steps<boolean>
  readonly pause: () => Promise<void>
}

/** It is read while something else opens: at once it took 10 ms of a desk. */
const SLICE_MS = 4

/** The slices of a computation tell their progress and can be stopped, and are no part of every start: these are. */
async function inSlices<R>(steps: Steps<R>, pause: Reader['pause']): Promise<R> {
  let untilMs = performance.now() + SLICE_MS
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
    if (performance.now() < untilMs) continue
    await pause()
    untilMs = performance.now() + SLICE_MS
  }
}

/** Whatever stored it may have been wrong itself: what is letter for letter as it was stored need not be a guide. */
function* compare(raw: unknown, bundled: BundledGuide, shape: Reader['shape']): Steps<Found> {
  if (raw === undefined) return { state: 'none' }
  const stored = isRecord(raw) ? raw['guide'] : undefined
  if (!isRecord(raw) || !isRecord(stored) || raw['digest'] !== (yield* digestSteps(stored))) return { state: 'damaged' }
  // a newer one may have another shape
  if (Number(stored['version']) > bundled.guide.version) return { state: 'newer' }
  if (!(yield* shape(stored))) return { state: 'damaged' }
  if (raw['digest'] !== bundled.digest) return { state: 'older' }
  // its shape was looked at
  return { state: 'same', stored: stored as unknown as Guide }
}

async function fromStore(bundled: BundledGuide, { shape, pause }: Reader): Promise<LoadedGuide> {
  const { guide } = bundled
  const found = async (): Promise<Found> => inSlices(compare(await readOne('guide', KEY), bundled, shape), pause)
  const { state, stored } = await found()
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
  const { stored: seeded } = await found()
  return seeded === undefined ? { guide, from: 'bundle' } : { guide: seeded, from: 'store' }
}

/**
 * The guide to use. A bundle that is newer, or differs at the same version, replaces the stored content.
 * Stored content that is damaged, missing or newer than this app: the bundled guide, with a notice where it matters.
 * Never fails and never waits long: without storage, or when it does not answer, the bundle is used.
 */
export async function loadStoredGuide(bundled: BundledGuide, reader: Reader): Promise<LoadedGuide> {
  try {
    return await fromStore(bundled, reader)
  } catch (error) {
    if (!(error instanceof StoreError)) throw error
    return { guide: bundled.guide, from: 'bundle', notice: UNREACHED }
  }
}
