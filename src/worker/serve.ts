/** The worker's side of a job: runs it in slices, tells how far it is, and stops when asked. Holds no calculation. */
import type { Progress } from '../calc/types.ts'
import { foundIn, sliceOf, TOLD_EVERY_MS } from './slice.ts'

/**
 * What a job is: plain data in and out, and progress in between, with parts of the answer where it finds some before the
 * end. It may be abandoned between two steps. One that has to open a file first begins when it is open.
 */
export type Run<Input, Output> = (input: Input) => Steps<Output> | Promise<Steps<Output>>
export type Steps<Output> = Generator<Progress, Output>

/** What of an answer goes over without a copy: nobody here needs it any more. */
export type HandedOver<Output> = (output: Output) => readonly ArrayBuffer[]

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
  postMessage: (word: Word<Output>, handedOver: Transferable[]) => void
}

/** Between two slices a stop can be heard. */
const SLICE_MS = 16

const nothing = (): readonly ArrayBuffer[] => []

/** Takes orders from `port` until the worker ends. */
export function serve<Input, Output>(
  run: Run<Input, Output>,
  port: Port<Input, Output>,
  handedOver: HandedOver<Output> = nothing,
): void {
  const running = new Map<number, { readonly steps: Steps<Output>; toldMs: number; spentMs: number }>()
  /** jobs whose file is being opened */
  const opening = new Set<number>()
  // A message to oneself comes after what the window sent; a timer would wait 4 ms after every slice.
  const { port1: turn, port2: next } = new MessageChannel()

  const end = (word: Word<Output>) => {
    running.delete(word.id)
    opening.delete(word.id)
    port.postMessage(word, word.is === 'done' ? [...handedOver(word.output)] : [])
  }
  const fail = (id: number, error: unknown) =>
    end({ is: 'broken', id, message: error instanceof Error ? error.message : String(error) })
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
        port.postMessage({ is: 'under-way', id, doneFrac, ...(found === undefined ? {} : { found }) }, [])
      }
      next.postMessage(id)
    } catch (error) {
      fail(id, error)
    }
  }
  const begin = (id: number, steps: Steps<Output>) => {
    running.set(id, { steps, toldMs: performance.now(), spentMs: 0 })
    advance(id)
  }
  const open = async (id: number, opened: Promise<Steps<Output>>) => {
    opening.add(id)
    try {
      const steps = await opened
      if (opening.delete(id)) begin(id, steps)
    } catch (error) {
      if (opening.has(id)) fail(id, error)
    }
  }
  turn.onmessage = ({ data }) => advance(data)
  port.onmessage = ({ data: order }) => {
    if (order.is === 'stop') return end({ is: 'stopped', id: order.id })
    const steps = run(order.input)
    if (steps instanceof Promise) void open(order.id, steps)
    else begin(order.id, steps)
  }
}
