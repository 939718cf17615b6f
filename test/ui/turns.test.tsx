// @vitest-environment happy-dom
import { render } from 'preact'
import { act } from 'preact/test-utils'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { eventually, show } from './support.ts'

/** Whether the app stands is kept by the module: one of its own for each test. */
async function fresh() {
  vi.resetModules()
  const [{ isAtRest }, { useFirstWait, useTurns }, { useRootMark }] = await Promise.all([
    import('../../src/ui/rest.ts'),
    import('../../src/ui/turns.ts'),
    import('../../src/ui/parts/root-mark.ts'),
  ])
  return { isAtRest, useFirstWait, useTurns, useRootMark }
}

afterEach(() => {
  show(null)
})

describe('the turns of a first screen', () => {
  it('come one after the other, each painted before the next, and hold the rest of the app until the last', async () => {
    const { isAtRest, useTurns } = await fresh()
    const seen: number[] = []
    const Screen = () => {
      const turns = useTurns(3)
      if (seen.at(-1) !== turns) seen.push(turns)
      if (turns < 3) expect(isAtRest.peek()).toBe(false)
      return <p>{turns}</p>
    }
    show(<Screen />)
    await eventually('the last turn', () => seen.at(-1) === 3 || undefined)
    expect(seen).toEqual([0, 1, 2, 3])
  })

  it('are all given at once where the app stands', async () => {
    const { isAtRest, useTurns } = await fresh()
    isAtRest.value = true
    const seen: number[] = []
    const Screen = () => {
      seen.push(useTurns(3))
      return null
    }
    show(<Screen />)
    expect(seen).toEqual([3])
  })
})

describe('the wait for a first answer', () => {
  it('keeps what is out of sight and the rest of the app until the answer is there', async () => {
    const { isAtRest, useFirstWait, useTurns } = await fresh()
    const Screen = ({ isComing }: { readonly isComing: boolean }) => (
      <p>{useTurns(useFirstWait(isComing, 5000) ? 1 : 3)}</p>
    )
    const place = show(<Screen isComing={true} />)
    await eventually('what is in sight', () => place.textContent === '1' || undefined)
    await new Promise((done) => setTimeout(done, 300))
    expect([place.textContent, isAtRest.peek()]).toEqual(['1', false])
    act(() => render(<Screen isComing={false} />, place))
    await eventually('what is out of sight', () => place.textContent === '3' || undefined)
    await eventually('the rest of the app', () => isAtRest.peek() || undefined)
  })

  it('is no longer than it may be', async () => {
    const { useFirstWait, useTurns } = await fresh()
    const Screen = () => <p>{useTurns(useFirstWait(true, 50) ? 1 : 3)}</p>
    const place = show(<Screen />)
    await eventually('what is out of sight', () => place.textContent === '3' || undefined)
  })

  it('is none where the app stands', async () => {
    const { isAtRest, useFirstWait } = await fresh()
    isAtRest.value = true
    const Screen = () => <p>{useFirstWait(true, 5000) ? 'waits' : 'goes on'}</p>
    expect(show(<Screen />).textContent).toBe('goes on')
  })
})

describe('a mark of the page', () => {
  it('stands as long as one asks for it, and goes with the last', async () => {
    const { useRootMark } = await fresh()
    const Marked = ({ isSo }: { readonly isSo: boolean }) => {
      useRootMark('tried', isSo)
      return null
    }
    const marked = () => 'tried' in document.documentElement.dataset
    const two = (first: boolean, second: boolean) => (
      <>
        <Marked key="first" isSo={first} />
        <Marked key="second" isSo={second} />
      </>
    )
    const place = show(two(true, true))
    const draw = (first: boolean, second: boolean) => act(() => render(two(first, second), place))
    expect(marked()).toBe(true)
    draw(false, true)
    expect(marked()).toBe(true)
    draw(false, false)
    expect(marked()).toBe(false)
  })
})
