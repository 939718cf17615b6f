/** WCAG 2.2 A and AA, the part of it that can be measured; test/wcag.md lists every criterion with what shows it. */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { FURTHER_PLACES } from './support/further-places.ts'
import { cutText, weakText } from './support/legible.ts'
import { axeBreaches, LEAST_TARGET_PX, openFolds, sideways, smallTargets } from './support/look.ts'
import { PLACES } from './support/places.ts'
import { follow, heading, settled } from './support/screen.ts'
import { CLEAN, openSite, PHONE, type Site, type Visit } from './support/site.ts'
import { crowdedTargets, hiddenWords, spaceText, unseenStops, unspaceText, weakShapes } from './support/wcag.ts'
import { workedHash } from './support/worked-checks.ts'

/** 1280 px at 400 %, and a desk. */
const REFLOWED = { width: 320, height: 640 } as const
const DESK = { width: 1280, height: 800 } as const

const ALL = [...PLACES, ...FURTHER_PLACES]

/** A contact on a face is smaller where many stand: the list beside it has a row for each (2.5.8, equivalent). */
const HAS_A_ROW = /× \d+ <g[ >]/
/** Text in colours of its own, by size: large letters need less, but here none of them does. */
const READABLE = { leastRatio: 4.5, smallBelowPx: 0, leastWeight: 0 } as const

let site: Site

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())

async function choose(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: /^About/ }).click()
  await page.getByRole('radio', { name, exact: true }).check()
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click()
  await page.getByRole('dialog').waitFor({ state: 'detached' })
}

/** Only for axe, which is put into the page. */
const FOR_AXE = { bypassCSP: true, serviceWorkers: 'block' } as const

async function begin(theme: string): Promise<Visit> {
  const visit = await site.visit(FOR_AXE)
  await visit.page.goto(visit.at(''))
  await heading(visit.page).waitFor()
  await choose(visit.page, theme)
  return visit
}

const leaveDialog = async (page: Page) => {
  if ((await page.getByRole('dialog').count()) > 0) await page.keyboard.press('Escape')
}

/** Finds of one place, named by their criterion. */
function findings() {
  const seen: Record<string, unknown> = {}
  const note = (what: string, found: readonly string[]) => {
    if (found.length > 0) seen[what] = found
  }
  return { seen, note }
}

describe('in every place', () => {
  let page: Page

  beforeAll(async () => {
    page = (await begin('Day')).page
  })
  afterAll(async () => {
    expect(await site.leave()).toEqual(CLEAN)
  })

  it.each(ALL)('$name is reached and seen by keyboard, and stands wider spacing of its text', async ({ go }) => {
    const { seen, note } = findings()
    await page.setViewportSize(PHONE)
    await go(page)
    for (const size of [REFLOWED, DESK]) {
      await page.setViewportSize(size)
      const { faults, count } = await unseenStops(page)
      note(`${size.width} px: stops of the keyboard (2.4.7, 2.4.11)`, faults)
      if (count < 2) note(`${size.width} px: stops`, [String(count)])
    }
    await page.setViewportSize(REFLOWED)
    await openFolds(page)
    const { byPx, outside } = await sideways(page)
    note(`sideways by ${byPx} px (1.4.10)`, outside)
    note(
      'crowded (2.5.8)',
      (await crowdedTargets(page)).crowded.filter((one) => !HAS_A_ROW.test(one)),
    )
    await spaceText(page)
    const spaced = await sideways(page)
    note(`spaced: sideways by ${spaced.byPx} px (1.4.12)`, spaced.outside)
    note('spaced: cut (1.4.12)', [...(await cutText(page)), ...(await hiddenWords(page))])
    await unspaceText(page)
    await leaveDialog(page)
    expect(seen).toEqual({})
  })
})

describe.each(['Day', 'Dark', 'Night red', 'Glare'])('in %s', (theme) => {
  let page: Page

  beforeAll(async () => {
    page = (await begin(theme)).page
    await page.setViewportSize(PHONE)
  })
  afterAll(async () => {
    expect(await site.leave()).toEqual(CLEAN)
  })

  it.each(ALL)('text and shapes stand out: $name', async ({ go }) => {
    const { seen, note } = findings()
    await go(page)
    await openFolds(page)
    note('text (1.4.3)', await weakText(page, READABLE))
    note('shapes (1.4.11)', await weakShapes(page))
    await leaveDialog(page)
    expect(seen).toEqual({})
  })
})

describe('in the places the other looks do not come to', () => {
  let page: Page

  beforeAll(async () => {
    page = (await begin('Day')).page
    await page.setViewportSize(PHONE)
  })
  afterAll(async () => {
    expect(await site.leave()).toEqual(CLEAN)
  })

  it.each(FURTHER_PLACES)('$name has names, roles and order, and can be touched', async ({ go }) => {
    const { seen, note } = findings()
    await go(page)
    for (const state of ['folded', 'unfolded']) {
      if (state === 'unfolded') await openFolds(page)
      note(`${state}: axe`, await axeBreaches(page))
      note(
        `${state}: below ${LEAST_TARGET_PX} px`,
        (await smallTargets(page, LEAST_TARGET_PX)).small.filter((one) => !HAS_A_ROW.test(one)),
      )
    }
    const sizeLetters = (size: string) =>
      page.evaluate((wanted) => {
        document.documentElement.style.fontSize = wanted
      }, size)
    await sizeLetters('200%')
    const { byPx, outside } = await sideways(page)
    note(`letters twice as large: sideways by ${byPx} px (1.4.4)`, outside)
    note('letters twice as large: cut (1.4.4)', await cutText(page))
    await sizeLetters('')
    await leaveDialog(page)
    expect(seen).toEqual({})
  })
})

describe('by taps alone', () => {
  afterEach(async () => {
    expect(await site.leave()).toEqual(CLEAN)
  })

  const place = (name: string) => FURTHER_PLACES.find((one) => one.name === name)

  it('a trace is moved as by a drag (2.5.7)', async () => {
    const { page } = await begin('Day')
    await place('a trace that was opened')?.go(page)
    const picture = () => page.locator('.trace-canvas canvas').evaluate((one) => (one as HTMLCanvasElement).toDataURL())
    const tap = async (name: string) => {
      await page.getByRole('button', { name, exact: true }).click()
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))))
      return picture()
    }
    const whole = await picture()
    const closer = await tap('Closer')
    expect(closer).not.toBe(whole)
    const lower = await tap('Lower')
    expect(lower).not.toBe(closer)
    expect(await tap('Higher')).toBe(closer)
    expect(await tap('Higher')).not.toBe(closer)
  })

  it('a face is moved as by a drag (2.5.7)', async () => {
    const { page } = await begin('Day')
    await place('a connector')?.go(page)
    const box = async () => ((await page.locator('.face-drawing').getAttribute('viewBox')) ?? '').split(' ').map(Number)
    const tap = (name: string) => page.getByRole('button', { name, exact: true }).click()
    while (await page.getByRole('button', { name: 'Zoom in' }).isEnabled()) await tap('Zoom in')
    const [left = 0, top = 0] = await box()
    await tap('Move right')
    const [right = 0] = await box()
    expect(right).toBeGreaterThan(left)
    await tap('Move left')
    await tap('Move left')
    expect((await box())[0]).toBeLessThan(right)
    await tap('Move down')
    expect((await box())[1]).toBeGreaterThan(top)
    await tap('All of the face')
    expect(await page.getByRole('button', { name: 'Move left' }).count()).toBe(0)
  })

  it('what lies below the foot of a check takes them while nothing of the foot is shown', async () => {
    const { page } = await begin('Day')
    for (const size of [PHONE, DESK]) {
      await page.setViewportSize(size)
      await follow(page, workedHash('power'))
      await settled(page)
      await page.evaluate(() => scrollTo(0, 0))
      await page
        .locator('.mini:not(.shown)')
        .or(page.locator('.mini:not(:visible)'))
        .first()
        .waitFor({ state: 'attached' })
      const hit = await page.evaluate(() => {
        const { left, top, width, height } = document.querySelector('.foot')?.getBoundingClientRect() ?? new DOMRect()
        return document.elementFromPoint(left + width / 2, top + height / 2)?.closest('.foot')?.className ?? ''
      })
      expect(hit).toBe('')
    }
  })

  it('a button that says what it does next is not told as pressed besides (4.1.2)', async () => {
    const { page } = await begin('Day')
    await place('a sound')?.go(page)
    await page.getByRole('button', { name: 'Listen to it' }).click()
    const stop = page.getByRole('button', { name: 'Stop the sound' })
    await stop.waitFor()
    expect(await stop.getAttribute('aria-pressed')).toBe(null)
    await stop.click()
    await page.getByRole('button', { name: 'Listen to it' }).waitFor()
  })

  it('a word of the glossary in a sentence is as high as its line (2.5.8)', async () => {
    const { page } = await begin('Day')
    await place('a sound')?.go(page)
    await page.locator('a.term:visible').first().waitFor()
    const heights = await page
      .locator('a.term:visible')
      .evaluateAll((all) => all.flatMap((one) => [...one.getClientRects()].map(({ height }) => Math.round(height))))
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(24)
  })

  it.each([
    ['by itself', 'form > .field'],
    ['in a group', 'form .group .field'],
  ])('a word of the glossary in the help of a field %s is told over the page (2.4.11)', async (_where, fields) => {
    const { page } = await begin('Day')
    await page.setViewportSize(PHONE)
    await follow(page, '#/check/window')
    await settled(page)
    await openFolds(page)
    await page.locator(`${fields} a.term:visible`).first().click()
    const close = page.locator('.term-line').getByRole('button', { name: 'Close' })
    await close.waitFor()
    const seen = await close.evaluate((one) => {
      const line = one.closest('.term-line')?.getBoundingClientRect()
      const places = document.querySelector('nav')?.getBoundingClientRect()
      const { left, top, right, bottom } = one.getBoundingClientRect()
      // within its rounded corners
      const corners = [left + 8, right - 8].flatMap((x) => [top + 8, bottom - 8].map((y) => [x, y] as const))
      return {
        isAbovePlaces: line !== undefined && places !== undefined && line.top >= 0 && line.bottom <= places.top,
        isReached: corners.map(([x, y]) => document.elementFromPoint(x, y) === one),
      }
    })
    expect(seen).toEqual({ isAbovePlaces: true, isReached: [true, true, true, true] })
  })
})

describe('on a screen of 320 × 256 px, which is 1280 × 1024 at 400 %', () => {
  afterEach(async () => {
    expect(await site.leave()).toEqual(CLEAN)
  })

  it.each(['the start', 'check window', 'the log with a deletion that can be undone'])(
    '%s can be gone through by keyboard, and no bar leaves a slot only (1.4.10, 2.4.11)',
    async (name) => {
      const { page } = await begin('Day')
      await ALL.find((one) => one.name === name)?.go(page)
      await page.setViewportSize({ width: 320, height: 256 })
      expect((await sideways(page)).byPx).toBe(0)
      expect((await unseenStops(page)).faults).toEqual([])
      const place = await page
        .getByRole('navigation', { name: 'Places' })
        .evaluate((one) => getComputedStyle(one).position)
      expect(place).toBe('static')
    },
  )
})

describe('no time runs out', () => {
  it('for reading that the app works offline, nor for taking a deletion back (2.2.1)', async () => {
    const { page, at } = await site.visit({ viewport: PHONE })
    await page.clock.install()
    await page.goto(at('#/log'))
    await heading(page).waitFor()
    const ready = page.getByText('Ready: from now on this works without a network.')
    await ready.waitFor()
    // one low line on the edge of the places: it lies on none of them, takes no touch, and nothing scrolls for it
    const box = await ready.boundingBox()
    const places = await page.getByRole('navigation', { name: 'Places' }).boundingBox()
    expect(box?.height).toBeLessThanOrEqual(24)
    expect((box?.y ?? Number.NaN) + (box?.height ?? Number.NaN)).toBeLessThanOrEqual((places?.y ?? Number.NaN) + 0.5)
    const under = await page.evaluate(([x, y]) => document.elementFromPoint(x, y)?.closest('.notices') === null, [
      (box?.x ?? 0) + (box?.width ?? 0) / 2,
      (box?.y ?? 0) + (box?.height ?? 0) / 2,
    ] as const)
    expect(under).toBe(true)
    expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBe(PHONE.height)
    await page.getByRole('button', { name: /demo/i }).click()
    await page.getByRole('textbox', { name: 'Note' }).waitFor()
    await page.clock.runFor(60_000)
    expect(await ready.isVisible()).toBe(true)
    await follow(page, '#/log')
    await page.getByRole('button', { name: /^Delete / }).click()
    await ready.waitFor({ state: 'detached' })
    await page.clock.runFor(3_600_000)
    await page.getByRole('button', { name: 'Undo', exact: true }).click()
    await page.getByRole('link', { name: /^Example/ }).waitFor()
    expect(await site.leave()).toEqual(CLEAN)
  })
})

describe('the title of the window', () => {
  it('tells every place from every other (2.4.2)', async () => {
    const { page } = await begin('Day')
    const addresses = ['#/ask', '#/ask/gate-lines', '#/check', '#/check/window', '#/check/surge', '#/log', '#/notes']
    const pages = ['#/notes/lines', '#/notes/glossary', '#/notes/line-rs-485', '#/notes/line-can', '#/nowhere']
    const titles: string[] = []
    for (const hash of [...addresses, ...pages]) {
      const before = await page.title()
      await follow(page, hash)
      if (titles.length > 0) await page.waitForFunction((old) => document.title !== old, before)
      titles.push(await page.title())
    }
    expect(new Set(titles).size).toBe(titles.length)
    expect(titles.filter((title) => !title.endsWith(' · Stillpin'))).toEqual([])
    expect(await site.leave()).toEqual(CLEAN)
  })
})

describe('the measures of this file', () => {
  it('see a hidden stop, a stop without a ring, weak shapes, crowded targets and words that are cut', async () => {
    const { page } = await begin('Day')
    await follow(page, '#/notes')
    await page.getByRole('heading', { level: 1, name: 'Book' }).waitFor()
    await page.evaluate(() => {
      const made = document.createElement('div')
      made.innerHTML =
        '<button id="bare" style="outline: none; box-shadow: none">bare</button>' +
        '<p style="overflow: hidden; block-size: 10px; inline-size: 60px">words in a box that is too low for them</p>' +
        '<svg width="40" height="40"><path d="M0 5H30" stroke="#e0e0e0" fill="none" stroke-width="2"></path></svg>' +
        '<input type="text" aria-label="pale" style="border: 1px solid #eee; background: none">' +
        '<div><button style="inline-size: 12px; block-size: 12px; padding: 0"></button>' +
        '<button style="inline-size: 12px; block-size: 12px; padding: 0"></button></div>' +
        '<button style="position: fixed; inset-block-end: 4px; inset-inline-start: 4px; z-index: 0">under</button>'
      document.querySelector('main')?.append(made)
    })
    const { faults } = await unseenStops(page)
    expect(faults.join()).toMatch(/bare: no ring/)
    expect(faults.join()).toMatch(/under: hidden/)
    expect((await weakShapes(page)).join()).toMatch(/path[^,]*,.*edge 1\.\d\d/)
    expect((await crowdedTargets(page)).crowded.join()).toMatch(/12 × 12/)
    expect((await hiddenWords(page)).join()).toMatch(/cut below.*words in a box/)
    await site.leave()
  })
})
