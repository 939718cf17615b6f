/** Every call to a storage of the browser, counted, and one of them (or all from one on) failing, as SQLite's own tests do. */
import { IDBFactory } from 'fake-indexeddb'
import 'fake-indexeddb/auto'

/** `throws`: at once; `aborts`: the call is taken and its transaction is lost afterwards. */
export type Failure = { readonly at: number; readonly how: 'throws' | 'full' | 'aborts'; readonly forGood: boolean }

const NAMES = { throws: 'UnknownError', full: 'QuotaExceededError', aborts: 'AbortError' } as const

let calls = 0
let failure: Failure | undefined

/** From now on calls are counted from one; undefined: none fails. */
export function expectFailure(next: Failure | undefined): void {
  calls = 0
  failure = next
}

export const callsSoFar = (): number => calls

/** Whether the call that is made now fails. */
function isDue(): boolean {
  calls++
  return failure !== undefined && (failure.forGood ? calls >= failure.at : calls === failure.at)
}

const broken = () => new DOMException('made to fail', NAMES[failure?.how ?? 'throws'])

type Method = (this: object, ...given: never[]) => unknown

/** Puts the counter before a method of a class. */
function guard(owner: object, name: string): void {
  const real = (owner as Record<string, Method>)[name]
  if (real === undefined) throw new Error(`no ${name}`)
  const guarded: Method = function (this: object, ...given: never[]) {
    // the database makes this one for itself, when it is opened
    const isOwn = (given as readonly unknown[])[1] === 'versionchange'
    if (isOwn || !isDue()) return real.apply(this, given)
    const tx = (this as { transaction?: unknown }).transaction
    if (failure?.how === 'aborts' && typeof tx === 'object' && tx !== null && 'abort' in tx) {
      const asked = real.apply(this, given)
      ;(tx as IDBTransaction).abort()
      return asked
    }
    throw broken()
  }
  Object.defineProperty(owner, name, { configurable: true, writable: true, value: guarded })
}

/** The small synchronous storage, whose names are its own keys. */
function smallStorage(): Storage {
  const texts: Record<string, string> = {}
  const guarded = <T>(job: () => T): T => {
    if (isDue()) throw broken()
    return job()
  }
  const hidden = (value: unknown) => ({ value, enumerable: false })
  return (
    Object.create(null, {}) &&
    (Object.defineProperties(texts, {
      getItem: hidden((name: string) => guarded(() => texts[name] ?? null)),
      setItem: hidden((name: string, text: string) =>
        guarded(() => {
          texts[name] = text
        }),
      ),
      removeItem: hidden((name: string) =>
        guarded(() => {
          delete texts[name]
        }),
      ),
    }) as unknown as Storage)
  )
}

/** Says something to nobody: the windows of earlier runs are still there, and must not join in. */
class DeafChannel extends EventTarget {
  postMessage(): void {
    // nobody hears
  }
}

let isGuarded = false

/** A browser with nothing kept in it. */
export function emptyBrowser(): void {
  globalThis.indexedDB = new IDBFactory()
  Object.defineProperty(globalThis, 'localStorage', { configurable: true, value: smallStorage() })
  if (isGuarded) return
  isGuarded = true
  guard(IDBFactory.prototype, 'open')
  guard(IDBDatabase.prototype, 'transaction')
  for (const name of ['get', 'put', 'delete', 'getAll', 'getAllKeys', 'openCursor'])
    guard(IDBObjectStore.prototype, name)
  globalThis.BroadcastChannel = DeafChannel as unknown as typeof BroadcastChannel
  guard(DeafChannel.prototype, 'postMessage')
}
