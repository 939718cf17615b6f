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

  it('takes what it shows for painted a frame after the next, or after a moment where no frames come', async () => {
    const frames: (() => void)[] = []
    vi.stubGlobal('requestAnimationFrame', (frame: () => void) => frames.push(frame))
    const { paintedOnce } = await freshRest()
    const painted = vi.fn()
    void paintedOnce().then(painted)
    frames[0]?.()
    await vi.advanceTimersByTimeAsync(10)
    expect(painted).not.toHaveBeenCalled()
    frames[1]?.()
    await vi.advanceTimersByTimeAsync(10)
    expect(painted).toHaveBeenCalledOnce()
    const inBackground = vi.fn()
    void paintedOnce().then(inBackground)
    await vi.advanceTimersByTimeAsync(300)
    expect(inBackground).toHaveBeenCalledOnce()
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
