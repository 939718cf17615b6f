import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import {
  field,
  heading,
  labelOf,
  output,
  type Step,
  shown,
  TO_A_FILTER,
  titleOf,
  unfoldGroups,
} from './support/screen.ts'
import { CLEAN, DESK, openSite, type Site, type Visit } from './support/site.ts'

let site: Site
let visit: Visit
let page: Page

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
beforeEach(async () => {
  visit = await site.visit({ viewport: DESK, serviceWorkers: 'block' })
  page = visit.page
})
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

/** What has the focus: its role, its name, and whether one can see it. */
const focused = () =>
  page.evaluate(() => {
    const one = document.activeElement
    if (!(one instanceof HTMLElement) || one === document.body) return { tag: 'body', words: '', name: '', ring: true }
    // A radio drawn as a button shows its focus on the words beside it.
    const drawn = one instanceof HTMLInputElement && one.type === 'radio' ? (one.nextElementSibling ?? one) : one
    const style = getComputedStyle(drawn)
    const hasOutline = style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2
    const box = one.getBoundingClientRect()
    const isOnScreen = box.width > 0 && box.height > 0 && box.bottom > 0 && box.top < innerHeight
    return {
      tag: one.tagName.toLowerCase(),
      words: (one.textContent ?? '').trim(),
      name: one.getAttribute('name') ?? '',
      ring: isOnScreen && (hasOutline || style.boxShadow !== 'none'),
    }
  })

/** Goes on with Tab until that is reached; every stop on the way has to be visible. */
const tabTo = async (is: (stop: Awaited<ReturnType<typeof focused>>) => boolean, most = 150) => {
  for (let count = 0; count < most; count += 1) {
    await page.keyboard.press('Tab')
    const stop = await focused()
    expect(stop.ring, `focus can be seen on <${stop.tag}> ${stop.name} ${stop.words.slice(0, 40)}`).toBe(true)
    if (is(stop)) return
  }
  throw new Error(`Not reached with ${most} tabs.`)
}

const headingHasFocus = () =>
  page.waitForFunction(() => document.activeElement?.tagName === 'H1' && document.activeElement.isConnected)

const answerByKeys = async ([nodeId, optionId]: Step) => {
  await shown(page, nodeId)
  const label = labelOf(nodeId, optionId)
  if (nodeId === 'kind') {
    await tabTo(({ tag }) => tag === 'input')
    await page.keyboard.type(label)
  }
  await tabTo(({ tag, words }) => tag === 'button' && words.startsWith(label))
  await page.keyboard.press('Enter')
}

describe('with the keyboard only', () => {
  it('the triage can be done, and the heading has the focus after every step', async () => {
    await page.goto(visit.at(''))
    await heading(page).waitFor()
    await tabTo(({ words }) => words === 'Start')
    await page.keyboard.press('Enter')
    for (const step of TO_A_FILTER) {
      await shown(page, step[0])
      await headingHasFocus()
      await answerByKeys(step)
    }
    await shown(page, 'filter-victim-inline')
    await headingHasFocus()
    // the window comes a moment later, above its fields
    await page.locator('.loading').first().waitFor({ state: 'detached' })
    await tabTo(({ words }) => words === 'Keep in the log')
    await page.keyboard.press('Enter')
    await tabTo(({ words }) => words.startsWith('Kept'))
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { level: 1, name: titleOf('filter-victim-inline') }).waitFor()
    await page.getByRole('textbox', { name: 'Title' }).waitFor()
    await headingHasFocus()
  })

  it('the focus stays near what was pressed when a complaint is kept', async () => {
    await page.goto(visit.at('#/check/need?measuredDb=105&limitDb=76.4639'))
    await output(page, 'neededDb').waitFor()
    await tabTo(({ words }) => words === 'Keep in the log')
    await page.keyboard.press('Enter')
    await page.getByRole('link', { name: /^Kept/ }).waitFor()
    expect((await focused()).tag).not.toBe('body')
  })

  it('a check can be done: pick the line, type, choose, read the verdict', async () => {
    await page.goto(visit.at('#/check'))
    await heading(page).waitFor()
    await tabTo(({ tag, words }) => tag === 'a' && words.startsWith('Window'))
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { level: 1, name: 'Window', exact: true }).waitFor()
    await headingHasFocus()
    await tabTo(({ name }) => name === 'lineKind')
    await page.keyboard.press('Enter')
    await page.getByRole('dialog').waitFor()
    await tabTo(({ tag }) => tag === 'input')
    await page.keyboard.type('rs-422')
    await tabTo(({ tag, words }) => tag === 'button' && /422/.test(words))
    await page.keyboard.press('Enter')
    await page.getByRole('dialog').waitFor({ state: 'hidden' })
    expect((await focused()).name).toBe('lineKind')
    const typed: [string, string][] = [
      ['frequencyHz', '150M'],
      ['neededDb', '12'],
      ['sourceOhm', '50'],
      ['loadOhm', '100'],
    ]
    for (const [key, text] of typed) {
      await tabTo(({ name }) => name === key)
      await page.keyboard.type(text)
    }
    await tabTo(({ tag, words }) => tag === 'summary' && words.startsWith('Mode'))
    await page.keyboard.press('Enter')
    await tabTo(({ name }) => name === 'mode')
    await page.keyboard.press('ArrowRight')
    expect(await page.locator('input[name="mode"]:checked').inputValue()).toBe('differential')
    await page.keyboard.press('ArrowLeft')
    await output(page, 'leastCapacitanceF').waitFor()
    expect(await field(page, 'frequencyHz').inputValue()).toBe('150M')
  })

  it('a dialog keeps the focus inside, closes with Escape and gives it back', async () => {
    await page.goto(visit.at('#/notes'))
    await heading(page).waitFor()
    await tabTo(({ words }) => words.startsWith('About'))
    await page.keyboard.press('Enter')
    await page.getByRole('dialog').waitFor()
    await page.keyboard.press('Tab')
    expect(await page.evaluate(() => document.activeElement?.closest('dialog') !== null)).toBe(true)
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'detached' })
    expect((await focused()).words).toMatch(/^About/)
  })

  it('the content can be reached past the navigation with one stop', async () => {
    await page.goto(visit.at('#/log'))
    await heading(page).waitFor()
    await page.keyboard.press('Tab')
    expect((await focused()).words).toMatch(/^Skip/)
    await page.keyboard.press('Enter')
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('MAIN')
    expect(page.url()).toMatch(/#\/log$/)
  })
})

describe('for a screen reader', () => {
  it('the verdict and the answer are said once, politely, when they stand', async () => {
    await page.goto(visit.at('#/check/loading?lineKind=arinc-429-high'))
    await heading(page).waitFor()
    // Everything any live region says from now on.
    await page.evaluate(() => {
      const said: string[] = []
      const note = () => {
        for (const region of document.querySelectorAll(
          '[role="status"], [role="alert"], [aria-live]:not([aria-live="off"])',
        )) {
          const words = (region.textContent ?? '').trim()
          const manner =
            region.getAttribute('role') === 'alert' ? 'assertive' : (region.getAttribute('aria-live') ?? 'polite')
          if (words !== '' && said.at(-1) !== `${manner}: ${words}`) said.push(`${manner}: ${words}`)
        }
        document.documentElement.dataset['said'] = JSON.stringify(said)
      }
      new MutationObserver(note).observe(document.body, { subtree: true, childList: true, characterData: true })
    })
    await field(page, 'capacitanceF').pressSequentially('230n', { delay: 40 })
    await page.waitForFunction(() => /\bno\b/i.test(document.documentElement.dataset['said'] ?? ''))
    const said: unknown = JSON.parse((await page.locator('html').getAttribute('data-said')) ?? '[]')
    const all = Array.isArray(said) ? said.map(String) : []
    expect(all.filter((words) => words.startsWith('assertive'))).toEqual([])
    expect(all.filter((words) => /\bno\b/i.test(words)).length).toBe(1)
    expect(all.find((words) => /\bno\b/i.test(words))).toMatch(/^polite: .*230\s?nF/)
    expect(await page.locator('output#verdict').getAttribute('data-verdict')).toBe('fails')
  })

  it('every field has a name, and a refusal is tied to it', async () => {
    await page.goto(visit.at('#/check/power?workingRmsV=abc'))
    const input = page.getByRole('textbox', { name: 'Working voltage' })
    await input.waitFor()
    expect(await input.getAttribute('aria-invalid')).toBe('true')
    const notes = await input.getAttribute('aria-describedby')
    expect(await page.locator(`#${notes}`).textContent()).toMatch(/\w+ \w+/)
    await unfoldGroups(page)
    const nameless = await page.evaluate(
      () =>
        [...document.querySelectorAll('form input')].filter(
          (one) => one instanceof HTMLInputElement && (one.labels?.length ?? 0) === 0,
        ).length,
    )
    expect(nameless).toBe(0)
  })

  it('the title of the window follows the screen', async () => {
    // set once the screen stands, a moment after its heading
    const titled = (word: string) =>
      page.waitForFunction((wanted) => document.title.startsWith(wanted), word, { polling: 50, timeout: 5000 })
    await page.goto(visit.at('#/notes'))
    await heading(page).waitFor()
    await titled('Book')
    await page.getByRole('link', { name: 'Check', exact: true }).click()
    await page.getByRole('heading', { level: 1, name: 'Check', exact: true }).waitFor()
    await titled('Check')
    expect(await page.getByRole('navigation').getByRole('link', { name: 'Check' }).getAttribute('aria-current')).toBe(
      'page',
    )
  })
})
