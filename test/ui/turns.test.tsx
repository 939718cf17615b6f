// @vitest-environment happy-dom
import { render } from 'preact'
import { act } from 'preact/test-utils'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { eventually, show } from './support.ts'

/** Whether the app stands is kept by the module: one of its own for each test. */
async function fresh() {
  vi.resetModules()
  const [{ isAtRest }, { useTurns }, { useRootMark }] = await Promise.all([
    import('../../src/ui/rest.ts'),
    import('../../src/ui/turns.ts'),
    import('../../src/ui/parts/root-mark.ts'),
  ])
  return { isAtRest, useTurns, useRootMark }
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
