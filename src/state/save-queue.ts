/**
 * Writes in the order they were asked for.
 *
 * `saveState`      idle | saving | saved | failed
 * `storeNotice`    sentence to show while the storage has trouble, else undefined
 * `enqueue(job)`   runs after everything asked for before; resolves when it is on disk, waits when the storage fails
 * `save(step)`     the same for a change to stored data, which also survives a window that closes too soon
 * `recover()`      once at start: carries out what earlier windows left unwritten
 * `retrySave()`    tries again from the write that failed
 * `settled()`      resolves when nothing is being written
 *
 * A failed write stops the queue: a later write must never be overtaken by an earlier one that is retried.
 */
import { type ReadonlySignal, signal } from '@preact/signals'
import { performLate, performStep, type Step } from '../store/steps.ts'
import { StoreError, watchStore } from '../store/trouble.ts'
import { noteUnsaved, takeUnsaved } from './journal.ts'

export type SaveState = 'idle' | 'saving' | 'saved' | 'failed'
type Job = {
  readonly key: string
  readonly run: () => Promise<void>
  readonly done: () => void
  readonly step: Step | undefined
}

const state = signal<SaveState>('idle')
const notice = signal<string | undefined>(undefined)
export const saveState: ReadonlySignal<SaveState> = state
export const storeNotice: ReadonlySignal<string | undefined> = notice

const waiting: Job[] = []
let running: Promise<void> = Promise.resolve()
let isRunning = false

async function drain(): Promise<void> {
  for (let job = waiting[0]; job !== undefined; job = waiting[0]) {
    try {
      await job.run()
    } catch (error) {
      notice.value = error instanceof StoreError ? error.message : `The last change is not saved: ${String(error)}`
      state.value = 'failed'
      return
    }
    waiting.shift()
    noteWaiting()
    job.done()
  }
  state.value = 'saved'
  notice.value = undefined
}

/** Keeps the copy of what is not on disk yet up to date. */
function noteWaiting(): void {
  noteUnsaved(waiting.flatMap((job) => job.step ?? []))
}

function start(): void {
  if (isRunning || waiting.length === 0) return
  isRunning = true
  state.value = 'saving'
  running = drain().finally(() => {
    isRunning = false
  })
}

/**
 * Queues a write. A `key` names what is written as a whole: a write that still waits under the same key
 * is replaced, since only the newest matters.
 */
export function enqueue(run: () => Promise<void>, key = '', step?: Step): Promise<void> {
  return new Promise((done) => {
    const last = waiting.at(-1)
    const isWaiting = last !== undefined && waiting.length > 1 && key !== '' && last.key === key
    if (isWaiting) {
      waiting[waiting.length - 1] = {
        key,
        run,
        step,
        done: () => {
          last.done()
          done()
        },
      }
    } else waiting.push({ key, run, done, step })
    if (step !== undefined) noteWaiting()
    if (state.value !== 'failed') start()
  })
}

/** Queues a change to stored data. */
export function save(step: Step, key = ''): Promise<void> {
  return enqueue(() => performStep(step), key, step)
}

let recovered: Promise<void> | undefined

/** Carries out what earlier windows left unwritten; later calls wait for the first. */
export function recover(): Promise<void> {
  recovered ??= Promise.all(takeUnsaved().map((step) => enqueue(() => performLate(step), '', step))).then(
    () => undefined,
  )
  return recovered
}

/** Tries again from the write that failed. */
export function retrySave(): Promise<void> {
  start()
  return running
}

/** Resolves when the queue is empty or has stopped at a failure. */
export async function settled(): Promise<void> {
  while (isRunning) await running
}

watchStore((trouble) => {
  notice.value = trouble?.message
})
