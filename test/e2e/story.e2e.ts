import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { CHROMIUM_FLAGS, findChromium } from '../../scripts/chromium.mjs'
import { DIST, startServer } from '../../scripts/static-server.mjs'
import { isEvidence, nodeById, optionsOf } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { lineKindById } from '../../src/reference/line-kinds.ts'
import { waitForOffline } from './support/browser.ts'
import {
  answerAll,
  answerButton,
  anySpace,
  CLEAR_GATE,
  field,
  labelOf,
  openPlace,
  output,
  settled,
  shown,
  si,
  TO_A_FILTER,
  TO_WEATHER,
  titleOf,
} from './support/screen.ts'
import { CLEAN, openSite, PHONE, type Site, type Visit } from './support/site.ts'

let site: Site
let visit: Visit
let page: Page

/** A phone: small, touched, without a mouse. */
const TOUCHED = { viewport: PHONE, hasTouch: true, isMobile: true } as const

/** What was tapped is shown at once and written behind; this long a hand is away before it can end a browser. */
const WRITTEN_MS = 300

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
beforeEach(async () => {
  visit = await site.visit(TOUCHED)
  page = visit.page
})
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

const open = (hash: string) => openPlace(page, visit.at(hash))

/** Closes every window and opens a new one, as after a kill. */
const comeBack = async (hash: string) => {
  await page.close()
  page = await visit.context.newPage()
  await open(hash)
}

const region = (name: string) => page.getByRole('region', { name, exact: true })
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true })
const link = (name: string | RegExp) => page.getByRole('link', { name })

/** Keeps what is on the screen and opens it in the log. */
const keep = async () => {
  await button('Keep in the log').tap()
  await link(/^Kept/).tap()
  await page.getByRole('textbox', { name: 'Title' }).waitFor()
}

describe('the main job on a phone', () => {
  it('goes from the first visit, offline, to a kept triage with its check, and keeps it all', async () => {
    await open('')
    await page.getByText('works without a network').waitFor()
    await waitForOffline(page)
    await visit.goDark()
    await comeBack('')
    await link('Start').tap()
    await answerAll(page, TO_A_FILTER, 'tap')
    await shown(page, 'filter-victim-inline')
    await region('Result').waitFor()
    await region('Window').waitFor()
    await region('Next measurement').waitFor()
    await keep()
    await region('Triage').getByText(titleOf('filter-victim-inline')).waitFor()
    await region('Triage').getByRole('button').tap()
    await shown(page, 'filter-victim-inline')

    await region('Checks')
      .getByRole('link', { name: /^Window/ })
      .tap()
    await settled(page)
    expect(await field(page, 'lineKind').getAttribute('value')).toBe('synchro')
    const typed = { frequencyHz: '118 MHz; 137 MHz', neededDb: '23.7', sourceOhm: '50;150', loadOhm: '91' }
    for (const [key, text] of Object.entries(typed)) await field(page, key).fill(text)
    await output(page, 'leastCapacitanceF').waitFor()
    const leastF = await si(page, 'leastCapacitanceF')
    expect(leastF).toBeGreaterThan(0)
    await link(/^Kept/).tap()
    await region('Checks')
      .getByRole('link', { name: /^Window/ })
      .waitFor()

    await comeBack('#/log')
    await link(new RegExp(titleOf('filter-victim-inline'))).tap()
    await region('Triage').getByText(labelOf('box', 'no')).waitFor()
    await region('Checks')
      .getByRole('link', { name: /^Window/ })
      .tap()
    await output(page, 'leastCapacitanceF').waitFor()
    for (const [key, text] of Object.entries(typed)) expect(await field(page, key).inputValue(), key).toBe(text)
    expect(await si(page, 'leastCapacitanceF')).toBe(leastF)
  })

  it('reaches "will not cure" by touch, offline, and keeps that too', async () => {
    await open('')
    await waitForOffline(page)
    await visit.goDark()
    await comeBack('')
    await link('Start').tap()
    await answerAll(page, TO_WEATHER, 'tap')
    await shown(page, 'weather-static')
    await page.getByText('A connector filter will not cure this').waitFor()
    expect(await region('Do now').getByRole('listitem').count()).toBeGreaterThan(0)
    await keep()
    await comeBack('#/log')
    await link(new RegExp(titleOf('weather-static'))).waitFor()
  })

  it('makes a complaint of a check with one tap', async () => {
    await open('#/check/power?workingRmsV=115&supplyHz=400&capacitanceF=20n')
    await output(page, 'currentRmsA').waitFor()
    await keep()
    await comeBack('#/log')
    await link(/^Power/).tap()
    await region('Checks')
      .getByRole('link', { name: /^Power/ })
      .tap()
    // I = 2π·400 Hz·20 nF·115 V
    expect(await si(page, 'currentRmsA')).toBeCloseTo(5.78053e-3, 8)
  })
})

describe('a triage', () => {
  it('goes on at the same question after one left in the middle', async () => {
    await open('#/ask')
    await link('Start').tap()
    await answerAll(page, TO_A_FILTER.slice(0, 4), 'tap')
    await shown(page, 'bond')
    await comeBack('#/log')
    await link('Ask').tap()
    await link('Go on where you were').tap()
    await shown(page, 'bond')
    await answerAll(page, TO_A_FILTER.slice(4), 'tap')
    await shown(page, 'filter-victim-inline')
  })

  it('opens a question by its address after a reload, with the answer given before', async () => {
    await open('#/ask')
    await link('Start').tap()
    await answerAll(page, TO_A_FILTER.slice(0, 4), 'tap')
    await shown(page, 'bond')
    await comeBack('#/ask/wrong')
    await shown(page, 'wrong')
    expect(await answerButton(page, 'wrong', 'plan').getAttribute('aria-pressed')).toBe('true')
  })

  it('keeps the later answers that still apply when an early one is changed', async () => {
    await open('#/ask')
    await link('Start').tap()
    await answerAll(page, TO_A_FILTER, 'tap')
    await shown(page, 'filter-victim-inline')
    const change = async (nodeId: string, from: string, to: string) => {
      const fold = page.locator('details', { hasText: 'tap one to change it' })
      if ((await fold.getAttribute('open')) === null) await fold.locator('summary').tap()
      await fold
        .getByRole('link', { name: new RegExp(`^${anySpace(titleOf(nodeId))}.*${anySpace(labelOf(nodeId, from))}`) })
        .tap()
      await answerAll(page, [[nodeId, to]], 'tap')
    }
    await change('frequency', 'vhf', 'hf')
    await shown(page, 'filter-victim-inline')
    await change('plan-direction', 'stand', 'emission')
    await shown(page, 'filter-source-inline')
    await page.goBack()
    await answerAll(page, [['plan-direction', 'stand']], 'tap')
    await shown(page, 'filter-victim-inline')
    await change('bond', 'good', 'dont-know')
    await shown(page, 'measure-open')
  })

  it('starts afresh without losing what was kept', async () => {
    await open('#/ask')
    await link('Start').tap()
    await answerAll(page, TO_WEATHER, 'tap')
    await button('Keep in the log').tap()
    await link(/^Kept/).waitFor()
    await button('Start afresh').tap()
    await link('Start').waitFor()
    await link('Log').tap()
    await link(new RegExp(titleOf('weather-static'))).tap()
    await region('Triage').getByRole('button').tap()
    await shown(page, 'weather-static')
  })
})

/** Words that send somebody to fit something. */
const PART_ADVICE =
  /\b(fit|try|use|add|choose|insert|put in) (a|an|the|one|this) [\w -]{0,24}(filter|capacitor|adapter|part|suppressor|inductor|ferrite)/i

describe('the safety gate', () => {
  const barred = CLEAR_GATE.map(([nodeId]) => {
    const node = nodeById(GUIDE, nodeId)
    const options = node && isEvidence(node) ? optionsOf(node).filter(({ stop }) => stop !== undefined) : []
    return { nodeId, options }
  })

  it.each(barred)(
    'stops at every "yes" and at "don\'t know" of $nodeId, with a reason and no part',
    async ({ nodeId, options }) => {
      await open('#/ask/gate-danger')
      if (nodeId === 'gate-lines') await answerAll(page, [['gate-danger', 'none']], 'tap')
      expect(options.length).toBeGreaterThanOrEqual(3)
      expect(options.map(({ id }) => id)).toContain('dont-know')
      for (const { id, stop: stopId } of options) {
        await page.goto(visit.at(`#/ask/${nodeId}`))
        await answerAll(page, [[nodeId, id]], 'tap')
        const stop = nodeById(GUIDE, String(stopId))
        if (stop === undefined || isEvidence(stop)) throw new Error(`${id} does not lead to a stop.`)
        await shown(page, stop.id)
        expect(await region('Result').textContent()).toContain(stop.reason)
        expect(await region('Next measurement').count()).toBe(1)
        for (const name of ['Advice', 'Checks', 'Window']) expect(await region(name).count(), `${id}: ${name}`).toBe(0)
        expect(await page.locator('[data-output], output[data-si]').count(), id).toBe(0)
        expect(await region('Do now').textContent(), id).not.toMatch(PART_ADVICE)
      }
    },
  )

  it('shows figures but no part to an address that comes before the questions', async () => {
    await open('#/ask/filter-victim-inline')
    await page.getByText('fitting or trying a part is not advised until').waitFor()
    await open('#/check/window?lineKind=can&frequencyHz=30M&neededDb=20&sourceOhm=50&loadOhm=60')
    await output(page, 'leastCapacitanceF').waitFor()
    await page.getByText('answer the safety questions').waitFor()
  })

  it('stops a barred kind that is named late', async () => {
    await open('#/ask/gate-danger')
    await answerAll(
      page,
      [
        ...TO_A_FILTER.slice(
          0,
          TO_A_FILTER.findIndex(([id]) => id === 'kind'),
        ),
        ['kind', 'pyrotechnic'],
      ],
      'tap',
    )
    await shown(page, 'stop-kind')
    for (const name of ['Checks', 'Window']) expect(await region(name).count(), name).toBe(0)
    const kind = lineKindById('pyrotechnic')
    expect(await page.getByRole('main').textContent()).toContain(kind?.barredWhy)
    expect(await region('Do now').textContent()).not.toMatch(PART_ADVICE)
  })
})

describe('the log', () => {
  const demoTitle = /^Example/

  it('offers an invented example when it is empty, and lets it go again', async () => {
    await open('#/log')
    await page.getByText('Nothing kept yet').waitFor()
    await button(/demo/i).tap()
    await page.getByRole('textbox', { name: 'Title' }).waitFor()
    expect(await page.getByRole('textbox', { name: 'Title' }).inputValue()).toMatch(demoTitle)
    expect(await page.getByRole('textbox', { name: 'Note' }).inputValue()).toMatch(/invented/i)
    await region('Triage').getByText('Result', { exact: true }).waitFor()
    await page
      .getByRole('region', { name: /^Checks/ })
      .getByRole('link', { name: /^Need/ })
      .waitFor()
    await button('Delete').tap()
    await page.getByText('Nothing kept yet').waitFor()
    await comeBack('#/log')
    await page.getByText('Nothing kept yet').waitFor()
  })

  it('deletes with a way back', async () => {
    await open('#/log')
    await button(/demo/i).tap()
    await page.getByRole('textbox', { name: 'Note' }).fill('Contact 8 reads 4.3 mΩ')
    await open('#/log')
    await button(/^Delete /).tap()
    await page.getByText('Nothing kept yet').waitFor()
    await button('Undo').tap()
    await link(demoTitle).waitFor()
    await page.waitForTimeout(WRITTEN_MS)
    await comeBack('#/log')
    await link(demoTitle).tap()
    expect(await page.getByRole('textbox', { name: 'Note' }).inputValue()).toBe('Contact 8 reads 4.3 mΩ')
    await button('Delete').tap()
    await comeBack('#/log')
    await page.getByText('Nothing kept yet').waitFor()
  })

  it('keeps a new name and a note over a reload', async () => {
    await open('#/log')
    await button(/demo/i).tap()
    await page.getByRole('textbox', { name: 'Title' }).fill('Pointer swings, ship 3 — ‘right’ side')
    await page.getByRole('textbox', { name: 'Note' }).fill('Line one\nµΩ 73.1 %, line two')
    await page.reload()
    expect(await page.getByRole('textbox', { name: 'Title' }).inputValue()).toBe(
      'Pointer swings, ship 3 — ‘right’ side',
    )
    expect(await page.getByRole('textbox', { name: 'Note' }).inputValue()).toBe('Line one\nµΩ 73.1 %, line two')
    await comeBack('#/log')
    await link(/^Pointer swings, ship 3/).waitFor()
  })
})

describe('a kill', () => {
  it('of the whole browser takes nothing that was answered or kept', async () => {
    const executablePath = findChromium()
    if (executablePath === undefined) throw new Error('No Chromium found.')
    const profile = mkdtempSync(join(tmpdir(), 'stillpin-killed-'))
    const server = await startServer({ root: DIST })
    const begin = () =>
      chromium.launchPersistentContext(profile, { executablePath, args: [...CHROMIUM_FLAGS], ...TOUCHED })
    try {
      const first = await begin()
      page = await first.newPage()
      await page.goto(server.address)
      await waitForOffline(page)
      await link('Start').tap()
      await answerAll(page, TO_WEATHER, 'tap')
      await keep()
      await page.getByRole('textbox', { name: 'Note' }).fill('Rain at 7,300 ft')
      await page.waitForTimeout(WRITTEN_MS)
      const devtools = await first.browser()?.newBrowserCDPSession()
      const gone = new Promise((done) => first.once('close', done))
      await devtools?.send('Browser.crash').catch(() => undefined)
      await gone
      await server.close()
      const second = await begin()
      page = await second.newPage()
      await page.goto(`${server.address}#/log`)
      await link(new RegExp(titleOf('weather-static'))).tap()
      expect(await page.getByRole('textbox', { name: 'Note' }).inputValue()).toBe('Rain at 7,300 ft')
      await region('Triage').getByRole('button').tap()
      await shown(page, 'weather-static')
      await second.close()
    } finally {
      rmSync(profile, { recursive: true, force: true })
    }
  })
})
