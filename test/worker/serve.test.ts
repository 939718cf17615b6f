import { afterEach, describe, expect, it, vi } from 'vitest'
import type { Progress } from '../../src/calc/types.ts'
import { type Order, type Run, serve, type Word } from '../../src/worker/serve.ts'

/** The other end of a worker: what it was told, and what it said. */
function workerOn(run: Run<number, string>) {
  const words: Word<string>[] = []
  const heard = new Set<() => void>()
  const port = {
    onmessage: null as ((event: MessageEvent<Order<number>>) => void) | null,
    postMessage: (word: Word<string>) => {
      words.push(structuredClone(word))
      for (const look of heard) look()
    },
  }
  serve(run, port)
  const order = (data: Order<number>) => port.onmessage?.(new MessageEvent('message', { data }))
  const until = (isThere: () => boolean) =>
    new Promise<void>((done) => {
      const look = () => isThere() && done()
      heard.add(look)
      look()
    })
  return { words, order, until }
}

function* counting(to: number): Generator<Progress, string> {
  for (let i = 0; i < to; i++) yield { doneFrac: i / to }
  return `counted to ${to}`
}

/** A clock that goes on by so much at every look. */
function clockBy(ms: number): void {
  let nowMs = 0
  vi.spyOn(performance, 'now').mockImplementation(() => {
    nowMs += ms
    return nowMs
  })
}

afterEach(() => vi.restoreAllMocks())

describe('the worker', () => {
  it('does a job and says how it ended', async () => {
    const { words, order, until } = workerOn(counting)
    order({ is: 'job', id: 7, input: 3 })
    await until(() => words.length > 0)
    expect(words).toEqual([{ is: 'done', id: 7, output: 'counted to 3', spentMs: expect.any(Number) }])
  })

  it('tells how far it is once in 50 ms, not at every step', async () => {
    clockBy(5)
    const { words, order, until } = workerOn(counting)
    order({ is: 'job', id: 1, input: 200 })
    await until(() => words.some(({ is }) => is === 'done'))
    const told = words.flatMap((word) => (word.is === 'under-way' ? [word.doneFrac] : []))
    expect(told.length).toBeGreaterThan(3)
    // 200 looks at the clock of 5 ms and a few between the slices: 1.5 s
    expect(told.length).toBeLessThan(30)
    expect(told).toEqual(told.toSorted((a, b) => a - b))
  })

  it('hears a stop between two slices, says so, and says nothing of the job any more', async () => {
    clockBy(10)
    const { words, order, until } = workerOn(counting)
    order({ is: 'job', id: 1, input: 1_000_000_000 })
    order({ is: 'stop', id: 1 })
    order({ is: 'job', id: 2, input: 2 })
    await until(() => words.some(({ is }) => is === 'done'))
    expect(words.filter(({ is }) => is !== 'under-way')).toEqual([
      { is: 'stopped', id: 1 },
      { is: 'done', id: 2, output: 'counted to 2', spentMs: expect.any(Number) },
    ])
  })

  it('works on two jobs in turn, so that a short one does not wait for a long one', async () => {
    clockBy(10)
    const { words, order, until } = workerOn(counting)
    order({ is: 'job', id: 1, input: 400 })
    order({ is: 'job', id: 2, input: 3 })
    await until(() => words.filter(({ is }) => is === 'done').length === 2)
    expect(words.filter(({ is }) => is === 'done').map(({ id }) => id)).toEqual([2, 1])
  })

  it('says what went wrong in a job, and goes on with the next', async () => {
    const { words, order, until } = workerOn(function* (to) {
      if (to < 0) throw new Error('Cannot count down.')
      return yield* counting(to)
    })
    order({ is: 'job', id: 1, input: -1 })
    order({ is: 'job', id: 2, input: 1 })
    await until(() => words.length === 2)
    expect(words).toEqual([
      { is: 'broken', id: 1, message: 'Cannot count down.' },
      { is: 'done', id: 2, output: 'counted to 1', spentMs: expect.any(Number) },
    ])
  })

  it('opens what a job needs first, says when that fails, and begins none that was stopped meanwhile', async () => {
    const { words, order, until } = workerOn(async (to) => {
      if (to < 0) throw new Error('The file is gone.')
      return counting(to)
    })
    order({ is: 'job', id: 1, input: 5 })
    order({ is: 'stop', id: 1 })
    order({ is: 'job', id: 2, input: -1 })
    order({ is: 'job', id: 3, input: 2 })
    await until(() => words.length === 3)
    expect(words).toEqual([
      { is: 'stopped', id: 1 },
      { is: 'broken', id: 2, message: 'The file is gone.' },
      { is: 'done', id: 3, output: 'counted to 2', spentMs: expect.any(Number) },
    ])
  })
})
