/**
 * Writes in the order they were asked for.
 *
 * `saveState`      idle | saving | saved | failed
 * `storeNotice`    sentence to show while the storage has trouble, else undefined
 * `isStoreOdd`     whether what is stored is in a form this version cannot use as it is
 * `enqueue(job)`   runs after everything asked for before; resolves when it is on disk, waits when the storage fails
 * `save(step)`     the same for a change to stored data, which also survives a window that closes too soon
 * `recover()`      once at start: carries out what earlier windows left unwritten
 * `unwritten()`    the changes that are not on disk yet, oldest first
 * `retrySave()`    tries again from the write that failed
 * `settled()`      resolves when nothing is being written
 * `holdBack(hold)` from now on these changes are held back, see long-text.ts
 * `stopSaving()`   nothing is written by this window any more
 * `erasedElsewhere`  another window has erased everything: nothing is written here any more either
 *
 * A failed write stops the queue: a later write must never be overtaken by an earlier one that is retried.
 */
import { type ReadonlySignal, signal } from '@preact/signals'
import { countUp } from '../store/browser-storage.ts'
import type { Late } from '../store/edits.ts'
import type { Take } from '../store/restore-left.ts'
import { mergeSteps, performStep, type Step, type Write } from '../store/steps.ts'
import { StoreError, watchStore } from '../store/trouble.ts'
import { noteUnsaved, takeUnsaved } from './journal.ts'
import { onNews } from './other-windows.ts'

export type SaveState = 'idle' | 'saving' | 'saved' | 'failed'

/** A change to stored data. `whole`: writes all of what it changes, for the case that it is not there any more. */
type Change = {
  readonly step: Step
  readonly late: Late
  readonly whole?: (() => Step | undefined) | undefined
  readonly by?: Write | undefined
}

type Job = {
  readonly key: string
  readonly run: (() => Promise<void>) | Change
  readonly done: () => void
}

const state = signal<SaveState>('idle')
const notice = signal<string | undefined>(undefined)
export const saveState: ReadonlySignal<SaveState> = state
export const storeNotice: ReadonlySignal<string | undefined> = notice

const odd = signal(false)
export const isStoreOdd: ReadonlySignal<boolean> = odd

const erased = signal(false)
export const erasedElsewhere: ReadonlySignal<boolean> = erased

/** Keeps changes that are dear to write in another way until it is time to write them. */
export type Hold = {
  /** notes what waits; gives what it does not keep itself. `isStopped`: nothing is written any more */
  readonly keep: (steps: readonly Step[], isStopped: boolean) => readonly Step[]
  /** whether this change, the only one that waits, is not to be written yet */
  readonly delays: (step: Step) => boolean
  /** it is time */
  readonly hurry: () => void
  /** writes a change, and with it that it waits no more */
  readonly write: Write
}
let hold: Hold | undefined

/** Gives what is called when it is time. */
export function holdBack(by: Hold): () => void {
  hold = by
  return () => {
    // a full device would fail at every key twice, and the button that tries again would flicker
    if (state.value !== 'failed') start(true)
  }
}

const waiting: Job[] = []
let running: Promise<void> = Promise.resolve()
let isRunning = false
let isStopped = false
let written = ''

async function carryOut({ step, late, whole, by = hold?.write ?? performStep }: Change): Promise<void> {
  if (await by(step, late)) return
  const all = whole?.()
  if (all === undefined || !(await performStep(all))) throw new StoreError('gone')
}

async function drain(): Promise<void> {
  let lost: string | undefined
  for (let job = waiting[0]; job !== undefined && !isStopped; job = waiting[0]) {
    try {
      await (typeof job.run === 'function' ? job.run() : carryOut(job.run))
    } catch (error) {
      const words = error instanceof StoreError ? error.message : `The last change is not saved: ${String(error)}`
      // What cannot be written at all must not hold up the rest.
      if (error instanceof StoreError && error.trouble === 'gone') lost = words
      else {
        notice.value = words
        state.value = 'failed'
        return
      }
    }
    waiting.shift()
    noteWaiting()
    // keys into one text are one change
    if (job.key === '' || job.key !== written) countUp('changes')
    written = job.key
    job.done()
  }
  state.value = 'saved'
  notice.value = lost
}

const changeOf = ({ run }: Job): readonly Change[] => (typeof run === 'function' ? [] : [run])

/** Keeps the copy of what is not on disk yet up to date. */
function noteWaiting(): void {
  // What has a way of its own stays where it was found until it is written: out of a second copy it would come again.
  const steps = waiting.flatMap(changeOf).flatMap(({ step, by }) => (by === undefined ? [step] : []))
  noteUnsaved(hold?.keep(steps, isStopped) ?? steps)
}

export function unwritten(): readonly Pick<Change, 'step' | 'late'>[] {
  return waiting.flatMap(changeOf)
}

function start(isTime = false): void {
  const [first, second] = waiting
  if (isRunning || isHeld || isStopped || first === undefined) return
  if (!isTime && !second && typeof first.run !== 'function' && hold?.delays(first.run.step)) return
  isRunning = true
  state.value = 'saving'
  running = drain().finally(() => {
    isRunning = false
  })
}

/**
 * The job that stands for both, when the last one waits for the same and has not begun. One that failed has begun too: a
 * silent storage may have it on the disk after all, and made on what was before that, the next would find a rival there.
 */
function merged(last: Job | undefined, job: Job): Job | undefined {
  const hasBegun = waiting.length < 2 && (isRunning || state.value === 'failed')
  if (last === undefined || hasBegun || job.key === '' || last.key !== job.key) return undefined
  const done = () => {
    last.done()
    job.done()
  }
  if (typeof last.run === 'function' || typeof job.run === 'function') return { ...job, done }
  const step = mergeSteps(last.run.step, job.run.step)
  return step && { ...job, run: { ...job.run, step }, done }
}

function push(key: string, run: Job['run']): Promise<void> {
  if (isStopped) return Promise.resolve()
  return new Promise((done) => {
    const job = { key, run, done }
    const both = merged(waiting.at(-1), job)
    if (both === undefined) waiting.push(job)
    else waiting[waiting.length - 1] = both
    if (typeof run !== 'function') noteWaiting()
    if (state.value !== 'failed') start()
  })
}

/**
 * Queues a write. A `key` names what is written as a whole: a write that still waits under the same key
 * is replaced, since only the newest matters.
 */
export function enqueue(run: () => Promise<void>, key = ''): Promise<void> {
  return push(key, run)
}

/** Queues a change to stored data. */
export function save(step: Step, key = '', whole?: () => Step | undefined): Promise<void> {
  return push(key, { step, late: false, whole })
}

let recovered: Promise<void> | undefined
/** True while it is not known yet what was left unwritten: it goes before anything that is asked for here. */
let isHeld = false

/** Carries out what earlier windows left unwritten; later calls wait for the first. */
export function recover(): Promise<void> {
  recovered ??= takeBack()
  return recovered
}

async function takeBack(): Promise<void> {
  isHeld = true
  const take: Take = (steps, late, done = () => {}, by) => {
    const last = steps.length - 1
    waiting.unshift(
      ...steps.map((step, at) => ({ key: '', run: { step, late, by }, done: at < last ? () => {} : done })),
    )
    if (last < 0) done()
    noteWaiting()
  }
  // What cannot be read now is still there at the next start.
  await takeUnsaved(take).catch(() => undefined)
  isHeld = false
  if (state.value !== 'failed') start()
}

/** Tries again from the write that failed. */
export function retrySave(): Promise<void> {
  start(true)
  return running
}

/** Resolves when the queue is empty or has stopped at a failure. */
export async function settled(): Promise<void> {
  await recovered
  hold?.hurry()
  while (isRunning) await running
}

export function stopSaving(): void {
  isStopped = true
  waiting.length = 0
  noteWaiting()
}

onNews((news) => {
  if (news.is !== 'erased') return
  stopSaving()
  erased.value = true
})

watchStore((told) => {
  notice.value = told?.message
  odd.value = told?.trouble === 'newer' || told?.trouble === 'missing'
  // The storage answers again: what waited for it goes on.
  if (told === undefined && state.value === 'failed') start(true)
})
