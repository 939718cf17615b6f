// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'

/** What keeps the rest of the app waiting is kept by the module: one of its own for each test. */
const freshRest = async () => {
  vi.resetModules()
  return import('../../src/ui/rest.ts')
}

describe('the first screen', () => {
  beforeEach(() => {
    vi.useFakeTimers()
  })
  afterEach(() => {
    vi.useRealTimers()
    vi.unstubAllGlobals()
  })

  it('stands once nothing of it is still to come, and its parts had time to ask for the next ones', async () => {
    const { holdRest, isAtRest } = await freshRest()
    const screen = holdRest()
    const answer = holdRest()
    screen()
    await vi.advanceTimersByTimeAsync(200)
    expect(isAtRest.value).toBe(false)
    answer()
    const next = holdRest()
    await vi.advanceTimersByTimeAsync(200)
    expect(isAtRest.value).toBe(false)
    next()
    await vi.advanceTimersByTimeAsync(200)
    expect(isAtRest.value).toBe(true)
  })

  it('counts what has come once, however often that is told', async () => {
    const { holdRest, isAtRest } = await freshRest()
    const screen = holdRest()
    holdRest()
    screen()
    screen()
    await vi.advanceTimersByTimeAsync(200)
    expect(isAtRest.value).toBe(false)
  })

  it('does not stand before its first drawing has told what is still to come', async () => {
    const { isAtRest } = await freshRest()
    await import('../../src/ui/shell/start.ts')
    await vi.advanceTimersByTimeAsync(1000)
    expect(isAtRest.value).toBe(false)
  })

  it('waits for what takes the place of a part that has come, however late that is painted', async () => {
    const frames: (() => void)[] = []
    vi.stubGlobal('requestAnimationFrame', (frame: () => void) => frames.push(frame))
    vi.stubGlobal('cancelAnimationFrame', () => undefined)
    const { holdRest, isAtRest } = await freshRest()
    holdRest()()
    await vi.advanceTimersByTimeAsync(1000)
    expect(isAtRest.value).toBe(false)
    // painted: now its effects run and hold
    for (const frame of frames.splice(0)) frame()
    const next = holdRest()
    await vi.advanceTimersByTimeAsync(1000)
    expect(isAtRest.value).toBe(false)
    next()
    for (const frame of frames.splice(0)) frame()
    await vi.advanceTimersByTimeAsync(200)
    expect(isAtRest.value).toBe(true)
  })

  it('takes back the moment it had asked for when more is to come', async () => {
    const asked: (() => void)[] = []
    vi.stubGlobal('requestIdleCallback', (work: () => void) => asked.push(work))
    vi.stubGlobal('cancelIdleCallback', (id: number) => {
      asked[id - 1] = () => undefined
    })
    const { holdRest, isAtRest } = await freshRest()
    holdRest()()
    await vi.advanceTimersByTimeAsync(200)
    expect(asked).toHaveLength(1)
    // a part comes and goes before the browser has its moment: the next one is not told of yet
    holdRest()()
    for (const work of asked) work()
    expect(isAtRest.value).toBe(false)
    await vi.advanceTimersByTimeAsync(200)
    for (const work of asked) work()
    expect(isAtRest.value).toBe(true)
  })

  it('keeps nothing else waiting for ever', async () => {
    const { atRest, holdRest, isAtRest } = await freshRest()
    let isTold = false
    void atRest().then(() => {
      isTold = true
    })
    holdRest()
    await vi.advanceTimersByTimeAsync(4900)
    expect(isAtRest.value).toBe(false)
    await vi.advanceTimersByTimeAsync(200)
    expect(isAtRest.value).toBe(true)
    // what follows the screen is drawn first
    expect(isTold).toBe(false)
    await vi.advanceTimersByTimeAsync(1000)
    expect(isTold).toBe(true)
  })

  it('leaves what may wait to a moment of the browser, and takes it back', async () => {
    const asked: (() => void)[] = []
    const cancelled: number[] = []
    vi.stubGlobal('requestIdleCallback', (work: () => void) => asked.push(work))
    vi.stubGlobal('cancelIdleCallback', (id: number) => cancelled.push(id))
    const { whenIdle } = await freshRest()
    const work = vi.fn()
    const withdraw = whenIdle(work)
    expect(work).not.toHaveBeenCalled()
    asked[0]?.()
    expect(work).toHaveBeenCalledOnce()
    withdraw()
    expect(cancelled).toEqual([1])
  })
})
