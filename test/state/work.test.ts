import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { filterCheck } from '../../src/calc/checks/filter/check.ts'
import { evaluateNow } from '../../src/calc/line/evaluate.ts'
import { resolve } from '../../src/calc/line/resolver.ts'
import type { Progress, Result } from '../../src/calc/types.ts'
import { lineFrom } from '../../src/state/opening.ts'
import { readQuery } from '../../src/state/router.ts'
import { type CheckJob, checkJob } from '../../src/worker/answer.ts'
import { run } from '../../src/worker/check.ts'
import { type Order, serve, type Word } from '../../src/worker/serve.ts'
import { WORKED } from '../e2e/support/worked-checks.ts'

type Behaviour = 'works' | 'gone' | 'deaf'
let behaviour: Behaviour = 'works'
let made: FakeWorker[] = []
let slow: ((job: CheckJob) => Generator<Progress, Result>) | undefined

/** A worker in this thread: its orders come in by messages that are copied, as real ones are. */
class FakeWorker {
  onmessage: ((event: { data: Word<Result> }) => void) | null = null
  onerror: ((event: { preventDefault: () => void }) => void) | null = null
  isEnded = false
  readonly orders: Order<CheckJob>[] = []
  private readonly port = {
    onmessage: null as ((event: MessageEvent<Order<CheckJob>>) => void) | null,
    postMessage: (word: Word<Result>) => {
      const data = structuredClone(word)
      queueMicrotask(() => this.isEnded || this.onmessage?.({ data }))
    },
  }
  readonly address: unknown
  readonly options: unknown

  constructor(address: unknown, options: unknown) {
    this.address = address
    this.options = options
    made.push(this)
    serve(slow ?? run, this.port)
    if (behaviour === 'gone') queueMicrotask(() => this.onerror?.({ preventDefault: () => undefined }))
  }

  postMessage(order: Order<CheckJob>): void {
    const data = structuredClone(order)
    this.orders.push(data)
    if (behaviour === 'works') queueMicrotask(() => this.port.onmessage?.(new MessageEvent('message', { data })))
  }

  terminate(): void {
    this.isEnded = true
  }
}

const fields = resolve(lineFrom(filterCheck, readQuery(WORKED['filter']?.query ?? ''))).fields(filterCheck)
const expected = evaluateNow(filterCheck, fields)
const input = checkJob(filterCheck, fields)
const nothing = () => undefined
const never = () => new AbortController().signal

/** Kept alive by what was lost before: a module of its own for each test. */
const freshWork = async () => {
  vi.resetModules()
  return import('../../src/state/work.ts')
}

/** A job that never ends by itself. */
function* endless(): Generator<Progress, Result> {
  for (;;) yield { doneFrac: 0.5 }
}

beforeEach(() => {
  behaviour = 'works'
  made = []
  slow = undefined
  vi.stubGlobal('window', {})
})
afterEach(() => {
  vi.unstubAllGlobals()
  vi.useRealTimers()
})

describe('work away from the screen', () => {
  it('has the worker of a check that never works on the screen’s own thread ready before it is asked', async () => {
    vi.stubGlobal('Worker', FakeWorker)
    vi.resetModules()
    const { awayFor, readyFor } = await import('../../src/state/early-worker.ts')
    // the name comes from an address: what every object has is no check
    for (const check of ['window', 'surge', 'window', 'need', 'no-such-check', 'constructor', '__proto__', undefined])
      readyFor(check)
    expect(made.map(({ options }) => (options as { readonly name: string }).name)).toEqual([
      'stillpin window',
      'stillpin surge',
    ])
    expect([awayFor('window'), awayFor('surge'), awayFor('need')]).toEqual(['window', 'surge', undefined])
  })

  it('is done by one worker, kept for the next job', async () => {
    vi.stubGlobal('Worker', FakeWorker)
    const { runInWorker, hasWorker } = await freshWork()
    expect(hasWorker('check')).toBe(true)
    expect(await runInWorker({ is: 'check', input }, nothing, never())).toEqual(expected)
    expect(await runInWorker({ is: 'check', input }, nothing, never())).toEqual(expected)
    expect(made).toHaveLength(1)
    expect(made[0]?.options).toMatchObject({ type: 'module' })
  })

  it('is done here, with the same answer, where there are no workers', async () => {
    vi.stubGlobal('Worker', undefined)
    const { runInWorker, hasWorker } = await freshWork()
    expect(hasWorker('check')).toBe(false)
    expect(await runInWorker({ is: 'check', input }, nothing, never())).toEqual(expected)
  })

  it('is done here where the script of the worker is gone, and asks for no worker again', async () => {
    behaviour = 'gone'
    vi.stubGlobal('Worker', FakeWorker)
    const { runInWorker, hasWorker } = await freshWork()
    expect(await runInWorker({ is: 'check', input }, nothing, never())).toEqual(expected)
    expect(hasWorker('check')).toBe(false)
    expect(made.map(({ isEnded }) => isEnded)).toEqual([true])
    await runInWorker({ is: 'check', input }, nothing, never())
    expect(made).toHaveLength(1)
  })

  it('is stopped by its signal, and the worker goes on with what comes next', async () => {
    slow = (job) => (job.fields.length === 0 ? endless() : run(job))
    vi.stubGlobal('Worker', FakeWorker)
    const { runInWorker } = await freshWork()
    const stop = new AbortController()
    const told: number[] = []
    const first = runInWorker(
      { is: 'check', input: { check: 'need', fields: [] } },
      ({ doneFrac }) => {
        told.push(doneFrac)
        stop.abort()
      },
      stop.signal,
    )
    await expect(first).rejects.toMatchObject({ name: 'AbortError' })
    expect(told).toEqual([0.5])
    expect(await runInWorker({ is: 'check', input }, nothing, never())).toEqual(expected)
    expect(made).toHaveLength(1)
    expect(made[0]?.orders.map(({ is }) => is)).toEqual(['job', 'stop', 'job'])
  })

  it('does not begin what is stopped already', async () => {
    vi.stubGlobal('Worker', FakeWorker)
    const { runInWorker } = await freshWork()
    const asked = runInWorker({ is: 'check', input }, nothing, AbortSignal.abort())
    await expect(asked).rejects.toMatchObject({ name: 'AbortError' })
    vi.stubGlobal('Worker', undefined)
    const here = (await freshWork()).runInWorker({ is: 'check', input }, nothing, AbortSignal.abort())
    await expect(here).rejects.toMatchObject({ name: 'AbortError' })
  })

  it('ends a worker that does not hear a stop, and gives its other work to a new one', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] })
    behaviour = 'deaf'
    vi.stubGlobal('Worker', FakeWorker)
    const { runInWorker } = await freshWork()
    const stop = new AbortController()
    const first = runInWorker({ is: 'check', input }, nothing, stop.signal)
    const second = runInWorker({ is: 'check', input }, nothing, never())
    stop.abort()
    await expect(first).rejects.toMatchObject({ name: 'AbortError' })
    behaviour = 'works'
    vi.advanceTimersByTime(1001)
    expect(await second).toEqual(expected)
    expect(made.map(({ isEnded }) => isEnded)).toEqual([true, false])
  })

  it('passes on what went wrong in the job itself', async () => {
    vi.stubGlobal('Worker', FakeWorker)
    const { runInWorker } = await freshWork()
    const broken = { check: 'nothing' as 'need', fields: [] }
    await expect(runInWorker({ is: 'check', input: broken }, nothing, never())).rejects.toThrow('no check nothing')
    vi.stubGlobal('Worker', undefined)
    const here = (await freshWork()).runInWorker({ is: 'check', input: broken }, nothing, never())
    await expect(here).rejects.toThrow('no check nothing')
  })

  it('starts only scripts of its own under Trusted Types', async () => {
    let make: ((asked: string) => string) | undefined
    const createPolicy = vi.fn((_name: string, rules: { createScriptURL: (asked: string) => string }) => {
      make = rules.createScriptURL
      return { createScriptURL: (asked: string) => ({ trusted: rules.createScriptURL(asked) }) }
    })
    vi.stubGlobal('window', { trustedTypes: { createPolicy } })
    vi.stubGlobal('Worker', FakeWorker)
    const { runInWorker } = await freshWork()
    await runInWorker({ is: 'check', input }, nothing, never())
    await runInWorker({ is: 'check', input }, nothing, never())
    expect(createPolicy).toHaveBeenCalledTimes(1)
    expect(made).toHaveLength(1)
    expect(made[0]?.address).toEqual({ trusted: expect.stringContaining('check.ts') })
    expect(() => make?.('https://elsewhere.example/worker.js')).toThrow('No worker of this app')
  })
})
