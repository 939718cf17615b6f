/** One truth per line: what one check finds out, the next one reads anew; only what was typed is kept as typed. */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { field, follow, openPlace, output, settled, si } from './support/screen.ts'
import { CLEAN, openSite, PHONE, type Site, type Visit } from './support/site.ts'

let site: Site
let visit: Visit
let page: Page

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
beforeEach(async () => {
  visit = await site.visit({ viewport: PHONE, hasTouch: true, isMobile: true, serviceWorkers: 'block' })
  page = visit.page
})
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

const open = (hash: string) => openPlace(page, visit.at(hash))
const link = (name: string | RegExp) => page.getByRole('link', { name })
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true })
const note = (key: string) => page.locator(`#note-${key}`)

/** The screen of a check, by its title. */
const onCheck = (title: string) => page.getByRole('heading', { level: 1, name: title, exact: true }).waitFor()

/** To another check by what every check offers at its end. */
const onward = async (title: string) => {
  await page
    .getByRole('region', { name: 'Other checks' })
    .getByRole('link', { name: new RegExp(`^${title}`) })
    .tap()
  await onCheck(title)
  await settled(page)
}

/** Picks a kind of line as people do. */
const pickLine = async (words: string, name: string) => {
  await field(page, 'lineKind').tap()
  await page.getByRole('searchbox').fill(words)
  await page.getByRole('dialog').getByRole('button', { name, exact: true }).tap()
}

const valueIs = (key: string, text: string) =>
  page.waitForFunction(
    ([name, wanted]) => document.querySelector<HTMLInputElement>(`form [name="${name}"]`)?.value === wanted,
    [key, text] as const,
  )

describe('a need', () => {
  it('that is corrected is corrected in the window too', async () => {
    await open('#/check/need')
    await field(page, 'measuredDb').fill('80')
    await field(page, 'limitDb').fill('50')
    // 80 − 50 + 6
    await page.waitForFunction(() => document.getElementById('neededDb')?.getAttribute('data-si') === '36')
    await onward('Window')
    expect(await field(page, 'neededDb').inputValue()).toBe('36 dB')
    expect(await note('neededDb').textContent()).toBe('from Need')
    await note('neededDb').getByRole('link', { name: 'Need' }).tap()
    await onCheck('Need')
    expect(await field(page, 'measuredDb').inputValue()).toBe('80')
    await field(page, 'limitDb').fill('70')
    // 80 − 70 + 6
    await page.waitForFunction(() => document.getElementById('neededDb')?.getAttribute('data-si') === '16')
    await onward('Window')
    expect(await field(page, 'neededDb').inputValue()).toBe('16 dB')
  })

  it('that is known is there when the window is opened from the list, and in the address it shares', async () => {
    await open('#/check/need')
    await field(page, 'measuredDb').fill('80')
    await field(page, 'limitDb').fill('50')
    await link('Check').tap()
    await page
      .getByRole('main')
      .getByRole('link', { name: /^Window/ })
      .tap()
    await onCheck('Window')
    await settled(page)
    expect(await field(page, 'neededDb').inputValue()).toBe('36 dB')
    await field(page, 'frequencyHz').fill('9M')
    await field(page, 'sourceOhm').fill('50')
    await field(page, 'loadOhm').fill('50')
    await page.waitForFunction(() => location.hash.includes('loadOhm=50') && location.hash.includes('neededDb=36'))
    const leastF = await si(page, 'leastCapacitanceF')
    const elsewhere = await visit.context.newPage()
    await elsewhere.goto(page.url())
    await output(elsewhere, 'leastCapacitanceF').waitFor()
    expect(await si(elsewhere, 'leastCapacitanceF')).toBe(leastF)
  })

  it('can be overruled, with the other figure beside it, and taken back', async () => {
    await open('#/check/need')
    await field(page, 'measuredDb').fill('80')
    await field(page, 'limitDb').fill('50')
    await onward('Window')
    await field(page, 'neededDb').fill('20')
    expect(await note('neededDb').textContent()).toBe('typed')
    await button('Take 36 dB from Need').tap()
    await valueIs('neededDb', '36 dB')
    await field(page, 'neededDb').fill('')
    await note('neededDb').getByText('Not known yet.').waitFor()
    await button('Take 36 dB from Need').tap()
    await valueIs('neededDb', '36 dB')
    expect(await note('neededDb').textContent()).toBe('from Need')
  })
})

describe('a kind of line', () => {
  it('that is changed changes its supply: what a kind gives is never kept as typed', async () => {
    await open('#/check/window')
    await pickLine('28 V', '28 V DC power')
    await link('Check').tap()
    await page
      .getByRole('main')
      .getByRole('link', { name: /^Power/ })
      .tap()
    await onCheck('Power')
    expect([await field(page, 'workingRmsV').inputValue(), await field(page, 'supplyHz').inputValue()]).toEqual([
      '29 V',
      '0 Hz',
    ])
    expect(await note('supplyHz').textContent()).toBe('from the line kind')
    await field(page, 'capacitanceF').fill('20n')
    await output(page, 'currentRmsA').waitFor()
    expect(await si(page, 'currentRmsA')).toBe(0)
    await follow(page, '#/check/window')
    await onCheck('Window')
    await pickLine('115 V', '115 V AC power, 400 Hz')
    await follow(page, '#/check/power')
    await onCheck('Power')
    // the steady limits of the 115 V supply: 118 V, 407 Hz; I = 2π·407 Hz·20 nF·118 V
    expect([await field(page, 'workingRmsV').inputValue(), await field(page, 'supplyHz').inputValue()]).toEqual([
      '118 V',
      '407 Hz',
    ])
    await output(page, 'currentRmsA').waitFor()
    expect((await si(page, 'currentRmsA')) / (2 * Math.PI * 407 * 20e-9 * 118)).toBeCloseTo(1, 9)
  })
})

describe('the line under way', () => {
  it('is the same after a reload, with what was typed in other checks; the same address elsewhere is a fresh one', async () => {
    await open('#/check/power?workingRmsV=115&supplyHz=400&capacitanceF=20n')
    await link('Check').tap()
    await page.getByRole('main').getByRole('link', { name: /^Need/ }).tap()
    await onCheck('Need')
    await field(page, 'measuredDb').fill('73.1')
    await page.waitForFunction(() => location.hash.includes('measuredDb=73.1'))
    await page.reload()
    await onCheck('Need')
    await follow(page, '#/check/power')
    await onCheck('Power')
    expect(await field(page, 'capacitanceF').inputValue()).toBe('20n')
    await page.goBack()
    await onCheck('Need')
    expect(await field(page, 'measuredDb').inputValue()).toBe('73.1')
    const elsewhere = await visit.context.newPage()
    await elsewhere.goto(page.url())
    await elsewhere.getByRole('heading', { level: 1, name: 'Need' }).waitFor()
    await follow(elsewhere, '#/check/power')
    await elsewhere.getByRole('heading', { level: 1, name: 'Power' }).waitFor()
    expect(await field(elsewhere, 'capacitanceF').inputValue()).toBe('')
  })

  it('makes room for an address and comes back with one tap', async () => {
    await open('#/check/need')
    await field(page, 'measuredDb').fill('73.1')
    await follow(page, '#/check/need?limitDb=50')
    await page.getByText('This is a fresh line.').waitFor()
    expect(await field(page, 'measuredDb').inputValue()).toBe('')
    await page.getByText('answer the safety questions').waitFor()
    await button('Go back to it').tap()
    await valueIs('measuredDb', '73.1')
  })

  it('keeps a key typed just before the window closes, before its address followed', async () => {
    await open('#/check/need')
    await field(page, 'measuredDb').pressSequentially('73.1')
    await page.close()
    page = await visit.context.newPage()
    await open('#/check/need')
    expect(await field(page, 'measuredDb').inputValue()).toBe('73.1')
  })
})

describe('a check of the log', () => {
  it('is part of the complaint: every step there is saved, on the line the next check reads', async () => {
    await open('#/check/need?measuredDb=80&limitDb=50')
    await settled(page)
    await button('Keep in the log').tap()
    await link(/^Kept/).waitFor()
    expect(page.url()).toMatch(/#\/log\/[\w-]+\/[\w-]+\/need$/)
    await field(page, 'limitDb').fill('70')
    await onward('Window')
    expect(page.url()).toMatch(/#\/log\/[\w-]+\/[\w-]+\/window$/)
    expect(await field(page, 'neededDb').inputValue()).toBe('16 dB')
    await field(page, 'frequencyHz').pressSequentially('9M')
    const address = page.url()
    await page.close()
    page = await visit.context.newPage()
    await page.goto(address)
    await onCheck('Window')
    expect(await field(page, 'frequencyHz').inputValue()).toBe('9M')
    await link(/^Kept/).tap()
    await page.getByRole('textbox', { name: 'Title' }).waitFor()
    const checks = page.getByRole('region', { name: 'Checks', exact: true })
    await checks.getByRole('link', { name: /^Need/ }).waitFor()
    await checks.getByRole('link', { name: /^Window/ }).waitFor()
    const facts = page.getByRole('region', { name: 'Facts', exact: true })
    expect(await facts.textContent()).toMatch(/80 typed.*70 typed/)
    expect(await facts.textContent()).toContain('16 dB from Need')
  })

  it('takes a quick check with all the facts of its line into the complaint under way', async () => {
    await open('#/ask')
    await link('Start').tap()
    await page.getByRole('button', { name: /smoke/i }).first().tap()
    await button('Keep in the log').tap()
    await link(/^Kept/).waitFor()
    await follow(page, '#/check/need?measuredDb=80&limitDb=50')
    await onCheck('Need')
    await onward('Window')
    await button(/^Add to /).tap()
    await link(/^Kept/).tap()
    await page.getByRole('textbox', { name: 'Title' }).waitFor()
    const facts = page.getByRole('region', { name: 'Facts line 2' })
    await facts.getByText('36 dB', { exact: false }).waitFor()
    expect(await facts.textContent()).toMatch(/80 typed.*50 typed/)
  })
})
