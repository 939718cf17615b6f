import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Progress, Result, Success } from '../../src/calc/types.ts'
import { createRunner, type Elsewhere } from '../../src/state/runner.ts'

const answerOf = (headline: string): Success => ({
  ok: true,
  headline,
  findings: [],
  outputs: {},
  bounds: [],
  rungs: [],
  pictures: [],
  cautions: [],
})

/** Steps of 5 ms each. */
function* lasting(steps: number, headline: string): Generator<Progress, Result> {
  for (let i = 0; i < steps; i++) {
    nowMs += 5
    yield { doneFrac: i / steps }
  }
  return answerOf(headline)
}

let nowMs = 0

beforeEach(() => {
  nowMs = 0
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] })
  vi.spyOn(performance, 'now').mockImplementation(() => nowMs)
})
afterEach(() => {
  vi.useRealTimers()
  vi.restoreAllMocks()
})

/** A place elsewhere whose answers come when the test says so. */
function place() {
  const asked: {
    signal: AbortSignal
    tell: (doneFrac: number) => void
    answer: (result: Result, spentMs?: number) => Promise<void>
  }[] = []
  const elsewhere: Elsewhere = (onProgress, signal, onSpent) =>
    new Promise((resolve) => {
      const answer = async (result: Result, spentMs = 300) => {
        onSpent(spentMs)
        resolve(result)
        await Promise.resolve()
      }
      asked.push({ signal, tell: (doneFrac) => onProgress({ doneFrac }), answer })
    })
  return { asked, elsewhere }
}

describe('the runner', () => {
  it('answers a short computation at once, and asks nobody', () => {
    const { asked, elsewhere } = place()
    const runner = createRunner()
    runner.start(() => lasting(1, 'short'), elsewhere)
    expect(runner.answer.value).toMatchObject({ is: 'done', result: { headline: 'short' } })
    expect(asked).toHaveLength(0)
  })

  it('gives what outlasts a slice away, tells how far it is there, and shows its answer', async () => {
    const { asked, elsewhere } = place()
    const runner = createRunner()
    runner.start(() => lasting(100, 'here'), elsewhere)
    expect(asked).toHaveLength(1)
    expect(runner.answer.value).toMatchObject({ is: 'working', slow: false })
    nowMs += 500
    asked[0]?.tell(0.6)
    expect(runner.answer.value).toMatchObject({ is: 'working', doneFrac: 0.6, slow: true })
    vi.runAllTimers()
    expect(runner.answer.value).toMatchObject({ is: 'working' })
    await asked[0]?.answer(answerOf('there'))
    expect(runner.answer.value).toMatchObject({ is: 'done', result: { headline: 'there' } })
  })

  it('gives the next one away without trying, until one was short again', async () => {
    const { asked, elsewhere } = place()
    const runner = createRunner()
    const begin = vi.fn(() => lasting(100, 'here'))
    runner.start(begin, elsewhere)
    await asked[0]?.answer(answerOf('one'), 300)
    runner.start(begin, elsewhere)
    expect(begin).toHaveBeenCalledTimes(1)
    expect(
      asked.map(({ signal }) => signal.aborted),
      'what has ended is not stopped',
    ).toEqual([false, false])
    expect(runner.answer.value).toMatchObject({ is: 'working', previous: { headline: 'one' } })
    // the way there and back is no work: it says nothing of what it would take here
    nowMs += 300
    await asked[1]?.answer(answerOf('two'), 1)
    expect(runner.answer.value).toMatchObject({ is: 'done', result: { headline: 'two' } })
    runner.start(() => lasting(1, 'three'), elsewhere)
    expect(runner.answer.value).toMatchObject({ is: 'done', result: { headline: 'three' } })
  })

  it('tries what stays away never here, however short the last one was', async () => {
    const { asked, elsewhere } = place()
    const runner = createRunner(true)
    const begin = vi.fn(() => lasting(1, 'here'))
    runner.start(begin, elsewhere)
    await asked[0]?.answer(answerOf('one'), 1)
    expect(runner.answer.value).toMatchObject({ is: 'done', result: { headline: 'one' } })
    runner.start(begin, elsewhere)
    expect(asked).toHaveLength(2)
    expect(begin).not.toHaveBeenCalled()
    await asked[1]?.answer(answerOf('two'), 1)
    expect(runner.answer.value).toMatchObject({ is: 'done', result: { headline: 'two' } })
  })

  it('never paints the answer to other fields, and says that it is not wanted', async () => {
    const { asked, elsewhere } = place()
    const runner = createRunner()
    runner.start(() => lasting(100, 'old'), elsewhere)
    runner.start(() => lasting(100, 'new'), elsewhere)
    expect(asked.map(({ signal }) => signal.aborted)).toEqual([true, false])
    asked[0]?.tell(0.9)
    await asked[0]?.answer(answerOf('old'))
    expect(runner.answer.value).toMatchObject({ is: 'working', doneFrac: 0 })
    await asked[1]?.answer(answerOf('new'))
    expect(runner.answer.value).toMatchObject({ is: 'done', result: { headline: 'new' } })
  })

  it('stops what runs elsewhere', () => {
    const { asked, elsewhere } = place()
    const runner = createRunner()
    runner.start(() => lasting(100, 'x'), elsewhere)
    runner.stop()
    expect(asked[0]?.signal.aborted).toBe(true)
    expect(runner.answer.value).toEqual({ is: 'stopped' })
  })

  it('says what went wrong elsewhere', async () => {
    const runner = createRunner()
    runner.start(
      () => lasting(100, 'x'),
      () => Promise.reject(new Error('out of memory')),
    )
    await Promise.resolve()
    await Promise.resolve()
    expect(runner.answer.value).toEqual({ is: 'broken', message: 'out of memory' })
  })

  it('goes on in slices where there is no elsewhere', () => {
    const runner = createRunner()
    runner.start(
      () => lasting(20, 'here'),
      () => undefined,
    )
    expect(runner.answer.value).toMatchObject({ is: 'working' })
    vi.runAllTimers()
    expect(runner.answer.value).toMatchObject({ is: 'done', result: { headline: 'here' } })
  })
})
