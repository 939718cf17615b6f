/** The tests' own guard: a page that gets no more frames is told of, and asked for in every way there is. */
import { afterAll, afterEach, beforeAll, expect, it, vi } from 'vitest'
import { startStands } from './support/screen.ts'
import { CLEAN, openSite, type Site } from './support/site.ts'

let site: Site

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
afterEach(async () => {
  vi.restoreAllMocks()
  expect(await site.leave()).toEqual(CLEAN)
})

it('tells of a page without frames, and what brought them back', async () => {
  const told = vi.spyOn(console, 'warn').mockImplementation(() => {})
  const { page, at } = await site.visit({ serviceWorkers: 'block' })
  await page.goto(at('#/ask'))
  await startStands(page)
  await page.evaluate(() => {
    const { requestAnimationFrame } = window
    window.requestAnimationFrame = () => 0
    addEventListener('resize', () => Object.assign(window, { requestAnimationFrame }), { once: true })
  })
  await vi.waitFor(() => expect(told).toHaveBeenCalled(), { timeout: 20_000, interval: 200 })
  expect(told.mock.lastCall).toEqual(['#/ask: the browser drew no frame for 3 s; another size brought them back'])
})
