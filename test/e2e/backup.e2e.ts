/** A file comes to the app by being dropped on it, shared to it without a network, or chosen with many photos in it. */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest'
import { writeFile } from '../../src/store/exchange/file.ts'
import { newLine } from '../../src/store/line.ts'
import { newComplaint } from '../../src/store/new-complaint.ts'
import { CLEAN, openSite, PHONE, type Site } from './support/site.ts'

let site: Site

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

const MADE = { ...newComplaint({ title: 'Needle swings', lines: [newLine('bus A')] }), id: 'c-dropped' }
const FILE = writeFile([{ complaint: MADE, connectors: [] }])

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name })
const row = (page: Page) => page.getByRole('link', { name: /^Needle swings/ })

it('takes a file that is dropped anywhere on it, and leaves the text that was being typed', {
  timeout: 60_000,
}, async () => {
  const { page, at } = await site.visit({ serviceWorkers: 'block', viewport: PHONE })
  await page.goto(at('#/check/need'))
  const field = page.locator('form input[type=text]').first()
  await field.fill('12')
  // the part that listens for files comes after the first screen
  await page.waitForFunction(() => document.documentElement.hasAttribute('data-keys'))
  const isLeft = await page.evaluate((text) => {
    const data = new DataTransfer()
    data.items.add(new File([text], 'needle.json', { type: 'application/json' }))
    const drop = (type: string) => {
      const event = new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true })
      document.querySelector('h1')?.dispatchEvent(event)
      return event.defaultPrevented
    }
    return drop('dragover') && drop('drop')
  }, FILE)
  expect(isLeft).toBe(true)
  await page.getByText('new: one line, no connector').waitFor()
  expect(await row(page).count()).toBe(0)
  await button(page, 'Bring it in').click()
  await row(page).waitFor()
  await page.goBack()
  await expect.poll(() => field.inputValue()).toBe('12')
})

it('keeps a file that is shared to it without a network, also over a reload, until it was brought in', {
  timeout: 90_000,
}, async () => {
  const { page, at, goDark } = await site.visit({ viewport: PHONE })
  await page.goto(at('#/log'))
  await page.getByText('Ready: from now on').waitFor()
  await goDark()
  // as the system posts it; it is the browser that goes where the answer leads
  const answer = await page.evaluate(async (text) => {
    const form = new FormData()
    form.append('file', new File([text], 'needle.json', { type: 'application/json' }))
    return (await fetch('bring-in', { method: 'POST', body: form, redirect: 'manual' })).type
  }, FILE)
  expect(answer).toBe('opaqueredirect')
  await page.goto(at('?shared=1#/log'))
  await page.getByText('needle.json, shared to the app').waitFor()
  expect(new URL(page.url()).search).toBe('')
  await page.reload()
  await button(page, 'Look at what was shared').click()
  await button(page, /^Look at it/).click()
  await page.getByText('new: one line, no connector').waitFor()
  await button(page, 'Bring it in').click()
  await row(page).waitFor()
  await page.getByText('needle.json, shared to the app').waitFor({ state: 'detached' })
  expect(
    await page.evaluate(
      async () =>
        (await (await caches.open((await caches.keys()).find((name) => name.startsWith('shared')) ?? '')).keys())
          .length,
    ),
  ).toBe(0)
})

it('reads 48 MB of photos piece by piece, with progress and a way out', {
  timeout: 180_000,
}, async () => {
  const { page, at } = await site.visit({ serviceWorkers: 'block', viewport: PHONE })
  await page.goto(at('#/log'))
  await page.getByText('Bring in a file').click()
  await page.locator('input[type=file]').waitFor({ state: 'attached' })
  const offer = () =>
    page.evaluate((text) => {
      const bytes = btoa('\u0001'.repeat(300_000))
      const line = (at: number) =>
        `  {"is":"photo","owner":"c-dropped","id":"p-${at}","schemaVersion":1,"evidence":"e","takenAt":"2026-11-26T08:00:00.000Z","type":"image/webp","widthPx":1600,"heightPx":1200,"bytes":"${bytes}"}`
      const lines = Array.from({ length: 160 }, (_, at) => line(at)).join(',\n')
      const data = new DataTransfer()
      data.items.add(new File([text.replace(/\n\}\n$/, ',\n'), ' "attached": [\n', lines, '\n ]\n}\n'], 'large.json'))
      const input = document.querySelector('input[type=file]') as HTMLInputElement
      // every turn of a timer is one in which a tap would have been answered
      const taken = { turns: 0 }
      const turn = () => {
        taken.turns++
        setTimeout(turn)
      }
      Object.assign(window, { taken })
      setTimeout(() => {
        input.files = data.files
        input.dispatchEvent(new Event('change', { bubbles: true }))
        turn()
      })
    }, FILE)
  await offer()
  await page.getByText(/^Reading the file, \d+ %/).waitFor()
  await button(page, 'Cancel').click()
  await page.getByText(/^Reading the file/).waitFor({ state: 'detached' })
  expect(await page.getByText('What would change').count()).toBe(0)
  await offer()
  await page.getByText('new: one line, no connectors, 160 photos').waitFor({ timeout: 60_000 })
  const turns = await page.evaluate(
    () => (window as Window & { taken?: { readonly turns: number } }).taken?.turns ?? Number.NaN,
  )
  // 64 pieces of the file, and a turn between two of them at least
  expect(turns).toBeGreaterThan(60)
  await button(page, 'Bring it in').click()
  await row(page).waitFor({ timeout: 60_000 })
  const download = page.waitForEvent('download', { timeout: 60_000 })
  await page.getByText('With 160 photos').waitFor()
  await button(page, 'Save the whole Log as a file').click()
  expect((await download).suggestedFilename()).toMatch(/^log-.*\.stillpin\.json$/)
})
