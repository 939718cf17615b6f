/** What can go wrong with the storage of a browser. */
export type StoreTrouble = 'unavailable' | 'silent' | 'blocked' | 'newer' | 'missing' | 'full' | 'lost' | 'gone'

const SENTENCES: Readonly<Record<StoreTrouble, string>> = {
  unavailable:
    'This browser does not let the app keep anything here (private window, or storage switched off). Everything works, but nothing will be there after closing.',
  silent:
    'The storage of this browser does not answer; if Stillpin is open in another window, close that. Everything works, but until it answers nothing is kept after closing.',
  blocked: 'Another Stillpin window holds the storage in an older form. Close the other windows.',
  newer: 'What is kept here was written by a newer version of Stillpin; this window shows and changes nothing of it.',
  missing: 'Part of the storage is missing on this device: not everything can be shown or saved.',
  full: 'The storage of this device is full, so the last change is not saved. It is still on the screen: free some space, then save again.',
  gone: 'What was changed is no longer on this device, and this window does not hold the whole of it: the change is not saved. Copy the text if it matters.',
  lost: 'The browser lost the storage. What is on the screen is not saved yet: try again, or reload.',
}

/** A storage failure with a sentence fit for the screen in `message`. */
export class StoreError extends Error {
  readonly trouble: StoreTrouble

  constructor(trouble: StoreTrouble, cause?: unknown) {
    super(SENTENCES[trouble], { cause })
    this.name = 'StoreError'
    this.trouble = trouble
  }
}

const nameOf = (error: unknown): string => (error instanceof Error || error instanceof DOMException ? error.name : '')

/** Names of errors after which the connection is worth reopening once. */
const LOST_NAMES = new Set(['InvalidStateError', 'UnknownError', 'AbortError', 'TransactionInactiveError'])

/** True when the connection died rather than the request being wrong. */
export function isLostConnection(error: unknown): boolean {
  return LOST_NAMES.has(nameOf(error))
}

/** Any storage error as a `StoreError`. */
export function asStoreError(error: unknown): StoreError {
  if (error instanceof StoreError) return error
  const name = nameOf(error)
  if (name === 'QuotaExceededError') return new StoreError('full', error)
  if (name === 'VersionError') return new StoreError('newer', error)
  if (name === 'NotFoundError') return new StoreError('missing', error)
  if (isLostConnection(error)) return new StoreError('lost', error)
  return new StoreError('unavailable', error)
}

type Listener = (trouble: StoreError | undefined) => void

const listeners = new Set<Listener>()

/** Calls `listener` on every storage trouble, and with undefined when a blocked storage opened after all. Returns the way to stop. */
export function watchStore(listener: Listener): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** Tells every watcher. */
export function reportTrouble(trouble: StoreError | undefined): void {
  for (const listener of listeners) listener(trouble)
}
