// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { expect, it } from 'vitest'
import { isStillAt, noteAddress } from '../../src/state/entry.ts'
import { App } from '../../src/ui/app.tsx'
import { holdRest, isAtRest } from '../../src/ui/rest.ts'
import { WORKED, workedHash } from '../e2e/support/worked-checks.ts'
// what is fetched takes longer here than a screen is waited for
import '../../src/ui/screens/check.tsx'
import '../../src/ui/screens/onward.tsx'
import { settle, show, until } from './support.ts'

/** An address is set at once, and told of a little later. */
const setOff = (hash: string) => {
  location.hash = hash
}
const early = (event: Event) => event.stopImmediatePropagation()
const arrive = () => {
  removeEventListener('hashchange', early, true)
  dispatchEvent(new Event('hashchange'))
}

it('a check that is left while it opens does not open the next one on its own Line', async () => {
  const release = holdRest()
  isAtRest.value = false
  setOff(workedHash('need'))
  addEventListener('hashchange', early, true)
  const left = new Promise<boolean>((done) => {
    const watcher = new MutationObserver(() => {
      if (document.querySelector('h1') === null) return
      watcher.disconnect()
      setOff(workedHash('filter'))
      done(document.querySelector('form') === null)
    })
    watcher.observe(document.body, { childList: true, subtree: true })
  })
  show(<App />)
  // its head stands, its Line is not opened yet
  expect(await left).toBe(true)
  for (let turn = 0; turn < 20; turn++) await settle()
  expect(isStillAt(workedHash('need'))).toBe(false)
  expect(noteAddress('#/check/need', 'a line')).toBe(false)
  expect(history.state?.line).toBeUndefined()
  expect(location.hash).toBe(workedHash('filter'))
  arrive()
  release()
  expect(isStillAt(workedHash('filter'))).toBe(true)
  const [loss] = WORKED['filter']?.expected ?? []
  const figure = await until(`output#${loss?.key}[data-si]`)
  expect(Number(figure.getAttribute('data-si'))).toBeCloseTo(loss?.si ?? Number.NaN, 3)
  expect(history.state?.line).toBeDefined()
})
