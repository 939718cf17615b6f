// @vitest-environment happy-dom
import { afterEach, expect, it, vi } from 'vitest'
import { eventually, show } from './support.ts'

/** Whether the app stands is kept by the module: one of its own for each test. */
async function fresh() {
  vi.resetModules()
  const [{ isAtRest }, { IsUnfolded, usePartsDrawn }, { KnownWidth }] = await Promise.all([
    import('../../src/ui/rest.ts'),
    import('../../src/ui/parts/coming.tsx'),
    import('../../src/ui/parts/width.ts'),
  ])
  const seen: number[] = []
  const Picture = () => {
    const drawn = usePartsDrawn(3)
    if (seen.at(-1) !== drawn) seen.push(drawn)
    return <p>{drawn}</p>
  }
  return { isAtRest, IsUnfolded, KnownWidth, Picture, seen }
}

afterEach(() => {
  show(null)
})

it('the parts of a picture come in turns on a first screen, and at once where the app stands', async () => {
  const first = await fresh()
  show(<first.Picture />)
  await eventually('the last part', () => first.seen.at(-1) === 3 || undefined)
  expect(first.seen).toEqual([0, 1, 2, 3])
  const later = await fresh()
  later.isAtRest.value = true
  show(<later.Picture />)
  expect(later.seen).toEqual([3])
})

it('a sheet is drawn whole, whatever the screen has come to: nobody prints half a picture', async () => {
  const { KnownWidth, Picture, seen } = await fresh()
  show(
    <KnownWidth.Provider value={600}>
      <Picture />
    </KnownWidth.Provider>,
  )
  expect(seen).toEqual([3])
})

it('folded, they come one by one behind the screen; unfolded, all at once', async () => {
  const folded = await fresh()
  folded.isAtRest.value = true
  show(
    <folded.IsUnfolded.Provider value={false}>
      <folded.Picture />
    </folded.IsUnfolded.Provider>,
  )
  expect(folded.seen).toEqual([0])
  await eventually('the last part', () => folded.seen.at(-1) === 3 || undefined)
  expect(folded.seen).toEqual([0, 1, 2, 3])
  const open = await fresh()
  show(
    <open.IsUnfolded.Provider value={true}>
      <open.Picture />
    </open.IsUnfolded.Provider>,
  )
  expect(open.seen).toEqual([3])
})
