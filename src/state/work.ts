/// <reference types="trusted-types" />
/**
 * Work away from the screen: `runInWorker({is, input}, onProgress, signal)` gives what the job gives, digit for digit.
 * Where no worker can be had (an old browser, a part that is gone), the same job runs here in slices.
 * A job is one line in `JOBS`; its file in `src/worker` exports `run`.
 */
import type { Progress } from '../calc/types.ts'
import checkWorker from '../worker/check.ts?job'
import fitFilterWorker from '../worker/fit-filter.ts?job'
import packWorker from '../worker/pack.ts?job'
import powerClassWorker from '../worker/power-class.ts?job'
import providerWorker from '../worker/provider.ts?job'
import readTraceWorker from '../worker/read-trace.ts?job'
import scheduleWorker from '../worker/schedule.ts?job'
import type { Order, Run, Word } from '../worker/serve.ts'
import settleTraceWorker from '../worker/settle-trace.ts?job'
import type { Found } from '../worker/slice.ts'
import strikeWorker from '../worker/strike.ts?job'
import surgeWorker from '../worker/surge.ts?job'
import windowWorker from '../worker/window.ts?job'
import { stopped } from './stopped.ts'

const job = <One extends Run<never, unknown>>(address: string, here: () => Promise<One>) => ({ address, here })

const JOBS = {
  check: job(checkWorker, async () => (await import('../worker/check.ts')).run),
  provider: job(providerWorker, async () => (await import('../worker/provider.ts')).run),
  window: job(windowWorker, async () => (await import('../worker/window.ts')).run),
  surge: job(surgeWorker, async () => (await import('../worker/surge.ts')).run),
  strike: job(strikeWorker, async () => (await import('../worker/strike.ts')).run),
  fitFilter: job(fitFilterWorker, async () => (await import('../worker/fit-filter.ts')).run),
  schedule: job(scheduleWorker, async () => (await import('../worker/schedule.ts')).run),
  powerClass: job(powerClassWorker, async () => (await import('../worker/power-class.ts')).run),
  readTrace: job(readTraceWorker, async () => (await import('../worker/read-trace.ts')).run),
  pack: job(packWorker, async () => (await import('../worker/pack.ts')).run),
  settleTrace: job(settleTraceWorker, async () => (await import('../worker/settle-trace.ts')).run),
}

type Jobs = typeof JOBS
export type JobName = keyof Jobs
type RunOf<K extends JobName> = Awaited<ReturnType<Jobs[K]['here']>>
export type InputOf<K extends JobName> = Parameters<RunOf<K>>[0]
type StepsOf<K extends JobName> = Awaited<ReturnType<RunOf<K>>>
export type OutputOf<K extends JobName> = StepsOf<K> extends Generator<Progress, infer Output> ? Output : never
type StepOf<K extends JobName> = StepsOf<K> extends Generator<infer Step, unknown> ? Step : never

/** What is asked of a worker: which job, and plain data for it. */
export type Job<K extends JobName = JobName> = { readonly is: K; readonly input: InputOf<K> }

/** A worker that has not heard a stop after this time is in one long step, and is ended. */
const DEAF_AFTER_MS = 1000

type Waiting = {
  readonly onWord: (word: Word<unknown>) => void
  readonly onLost: () => void
}

type Crew = {
  readonly worker: Worker
  readonly waiting: Map<number, Waiting>
}

const crews = new Map<JobName, Crew>()
/** Jobs whose worker could not be started: they run here from then on. */
const lost = new Set<JobName>()
let lastId = 0

/** Whether a job of this kind would leave this thread. */
export const hasWorker = (is: JobName): boolean => typeof Worker === 'function' && !lost.has(is)

let policy: { readonly createScriptURL: (asked: string) => TrustedScriptURL } | undefined

/** The address as the type the browser demands; only those of the jobs come out of this policy. */
function trusted(address: string): string {
  policy ??= window.trustedTypes?.createPolicy('stillpin-work', {
    createScriptURL: (asked: string) => {
      if (Object.values(JOBS).some((one) => one.address === asked)) return asked
      throw new TypeError('No worker of this app has that address.')
    },
  })
  // The types of Worker predate Trusted Types.
  return (policy?.createScriptURL(address) as string | undefined) ?? address
}

function startCrew(is: JobName): Crew {
  const worker = new Worker(trusted(JOBS[is].address), { type: 'module', name: `stillpin ${is}` })
  const crew: Crew = { worker, waiting: new Map() }
  worker.onmessage = ({ data }: MessageEvent<Word<unknown>>) => crew.waiting.get(data.id)?.onWord(data)
  // Its script is gone or cannot be read; what a job itself throws comes as a word.
  worker.onerror = (event) => {
    event.preventDefault()
    lost.add(is)
    dismiss(is, crew)
  }
  crews.set(is, crew)
  return crew
}

/** Ends a worker; what waits for it is told. */
function dismiss(is: JobName, crew: Crew): void {
  crew.worker.terminate()
  if (crews.get(is) === crew) crews.delete(is)
  const waiting = [...crew.waiting.values()]
  crew.waiting.clear()
  for (const { onLost } of waiting) onLost()
}

/** Starts the worker of a job that is going to be asked for: its script is there when the order comes. */
export function readyWorker(is: JobName): void {
  if (hasWorker(is) && !crews.has(is)) startCrew(is)
}

/**
 * Does a job in its worker. Rejects with an `AbortError` when `signal` is set off, and with the job's own error.
 * `onProgress` comes at most every 50 ms, and with everything that is found before the end; `onSpent` tells before the
 * answer what the worker worked for it.
 */
export async function runInWorker<K extends JobName>(
  { is, input }: Job<K>,
  onProgress: (step: StepOf<K>) => void,
  signal: AbortSignal,
  onSpent?: (spentMs: number) => void,
): Promise<OutputOf<K>> {
  while (hasWorker(is)) {
    const outcome = await askWorker({ is, input }, (step) => onProgress(step as StepOf<K>), signal)
    if (outcome === 'lost') continue
    onSpent?.(outcome.spentMs)
    return outcome.output as OutputOf<K>
  }
  const run = (await JOBS[is].here()) as unknown as Run<InputOf<K>, OutputOf<K>>
  const { inSlices } = await import('./in-slices.ts')
  return inSlices((await run(input)) as Generator<StepOf<K> & Progress, OutputOf<K>>, onProgress, signal)
}

function askWorker(
  { is, input }: Job,
  onProgress: (step: Progress & Found) => void,
  signal: AbortSignal,
): Promise<{ readonly output: unknown; readonly spentMs: number } | 'lost'> {
  if (signal.aborted) return Promise.reject(stopped())
  const crew = crews.get(is) ?? startCrew(is)
  lastId += 1
  const id = lastId
  const send = (order: Order<unknown>) => crew.worker.postMessage(order)
  return new Promise((resolve, reject) => {
    send({ is: 'job', id, input })
    const onAbort = () => {
      send({ is: 'stop', id })
      const deaf = setTimeout(() => dismiss(is, crew), DEAF_AFTER_MS)
      const heard = () => clearTimeout(deaf)
      crew.waiting.set(id, { onWord: ({ is: what }) => what === 'under-way' || heard(), onLost: heard })
      reject(stopped())
    }
    const leave = () => {
      crew.waiting.delete(id)
      signal.removeEventListener('abort', onAbort)
    }
    crew.waiting.set(id, {
      onWord: (word) => {
        if (word.is === 'under-way') {
          const { doneFrac, found } = word
          return onProgress({ doneFrac, ...(found === undefined ? {} : { found }) })
        }
        leave()
        if (word.is === 'done') resolve(word)
        if (word.is === 'broken') reject(new Error(word.message))
      },
      onLost: () => {
        leave()
        resolve('lost')
      },
    })
    signal.addEventListener('abort', onAbort, { once: true })
  })
}
