/** The worker's side of a job: runs it in slices, tells how far it is, and stops when asked. Holds no calculation. */
import type { Progress } from '../calc/types.ts'
import { foundIn, sliceOf, TOLD_EVERY_MS } from './slice.ts'

/**
 * What a job is: plain data in and out, and progress in between, with parts of the answer where it finds some before the
 * end. It may be abandoned between two steps.
 */
export type Run<Input, Output> = (input: Input) => Generator<Progress, Output>

/** What the window sends: a job, or that its answer is not wanted any more. */
export type Order<Input> =
  | { readonly is: 'job'; readonly id: number; readonly input: Input }
  | { readonly is: 'stop'; readonly id: number }

/** What the worker sends: how far a job is, and how it ended. */
export type Word<Output> =
  | { readonly is: 'under-way'; readonly id: number; readonly doneFrac: number; readonly found?: unknown }
  /** `spentMs`: what was worked for it, without the way there and back */
  | { readonly is: 'done'; readonly id: number; readonly output: Output; readonly spentMs: number }
  | { readonly is: 'broken'; readonly id: number; readonly message: string }
  | { readonly is: 'stopped'; readonly id: number }

/** Where orders come in and words go out: the worker itself, or one end of a channel. */
type Port<Input, Output> = {
  onmessage: ((event: MessageEvent<Order<Input>>) => void) | null
  postMessage: (word: Word<Output>) => void
}

/** Between two slices a stop can be heard. */
const SLICE_MS = 16

/** Takes orders from `port` until the worker ends. */
export function serve<Input, Output>(run: Run<Input, Output>, port: Port<Input, Output>): void {
  const running = new Map<number, { readonly steps: Generator<Progress, Output>; toldMs: number; spentMs: number }>()
  // A message to oneself comes after what the window sent; a timer would wait 4 ms after every slice.
  const { port1: turn, port2: next } = new MessageChannel()

  const end = (word: Word<Output>) => {
    running.delete(word.id)
    port.postMessage(word)
  }
  const advance = (id: number) => {
    const job = running.get(id)
    if (job === undefined) return
    try {
      const fromMs = performance.now()
      const step = sliceOf(job.steps, SLICE_MS)
      job.spentMs += performance.now() - fromMs
      if (step.done) return end({ is: 'done', id, output: step.value, spentMs: job.spentMs })
      const { doneFrac } = step.value
      const found = foundIn(step.value)
      if (found !== undefined || performance.now() - job.toldMs >= TOLD_EVERY_MS) {
        job.toldMs = performance.now()
        port.postMessage({ is: 'under-way', id, doneFrac, ...(found === undefined ? {} : { found }) })
      }
      next.postMessage(id)
    } catch (error) {
      end({ is: 'broken', id, message: error instanceof Error ? error.message : String(error) })
    }
  }
  turn.onmessage = ({ data }) => advance(data)
  port.onmessage = ({ data: order }) => {
    if (order.is === 'stop') return end({ is: 'stopped', id: order.id })
    running.set(order.id, { steps: run(order.input), toldMs: performance.now(), spentMs: 0 })
    advance(order.id)
  }
}
