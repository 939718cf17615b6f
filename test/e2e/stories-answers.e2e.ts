/**
 * Stories walked on a phone from the start page: every tap is counted, what is typed is not, and the sentence is read.
 * A tap is a link, a button, a choice, or a field put under the cursor.
 */
import type { Locator, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { field, heading, output, settled } from './support/screen.ts'
import { CLEAN, openSite, PHONE, type Site } from './support/site.ts'

let site: Site
let page: Page
let taps: number

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
beforeEach(async () => {
  const visit = await site.visit({ viewport: PHONE, serviceWorkers: 'block' })
  page = visit.page
  taps = 0
  await page.goto(visit.at('#/'))
  await heading(page).waitFor()
})
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

async function tap(target: Locator): Promise<void> {
  await target.click()
  taps++
}

/** Goes to a check by the places at the foot and the list. */
async function openCheck(title: string): Promise<void> {
  await tap(page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: 'Check' }))
  await tap(page.getByRole('main').getByRole('link', { name: new RegExp(`^${title}`, 'u') }))
  await page.getByRole('heading', { level: 1, name: title }).waitFor()
}

async function pickLine(name: RegExp): Promise<void> {
  await tap(field(page, 'lineKind'))
  await tap(page.getByRole('dialog').getByRole('button', { name }))
}

/** One tap puts the cursor into the field, the rest is typing. */
async function enter(key: string, text: string): Promise<void> {
  await tap(field(page, key))
  await field(page, key).fill(text)
}

/** The sentence of the answer, as it stands for these fields. */
async function sentence(): Promise<string> {
  await settled(page)
  const said = await page.locator('.answer .sentence').first().textContent()
  return (said ?? '').replaceAll('\u00a0', ' ').trim()
}

const verdict = () => output(page, 'verdict').getAttribute('data-verdict')

describe('10 nF on a CAN bus of 500 kbit/s', () => {
  it('is no within six taps: the bus stands 4.8 nF a leg, practice allows 100 pF a node', async () => {
    await openCheck('Loading')
    await pickLine(/^CAN \(/u)
    await enter('capacitanceF', '10n')
    await expect.poll(sentence).toMatch(/^Not known: needs the bit rate/u)
    // the link beside the sentence opens the group and puts the cursor into the field
    await tap(page.locator('.answer .needs').getByRole('button', { name: 'Bit rate' }))
    expect(await field(page, 'bitRateHz').evaluate((one) => one === document.activeElement)).toBe(true)
    await page.keyboard.type('500k')
    await expect
      .poll(sentence)
      .toBe('10 nF: no. The whole bus stands 4.8 nF a leg, less what other nodes add; practice allows 100 pF a node.')
    expect(await verdict()).toBe('fails')
    expect(taps).toBeLessThanOrEqual(6)
  })
})

describe('a suppressor on 100BASE-TX', () => {
  it('has its ceiling within four taps; 20 pF is with care, 40 pF is no', async () => {
    await openCheck('Loading')
    await pickLine(/100BASE-TX/u)
    await expect
      .poll(sentence)
      .toBe('Up to 24.1 pF per leg for the whole port: leave room for transceiver and magnetics.')
    expect(taps).toBeLessThanOrEqual(4)
    await enter('capacitanceF', '20p')
    await expect.poll(sentence).toMatch(/^20 pF: with care\. Shared with transceiver and magnetics/u)
    expect(await verdict()).toBe('marginal')
    await field(page, 'capacitanceF').fill('40p')
    await expect.poll(sentence).toMatch(/^40 pF: no\. The whole port stands 24\.1 pF a leg/u)
    expect(await verdict()).toBe('fails')
  })
})

describe('ARINC 429 with HF at 12 MHz, straight from Check', () => {
  it('has a part within nine taps, and says what care it takes', async () => {
    await openCheck('Window')
    await pickLine(/^ARINC 429, high/u)
    await enter('frequencyHz', '12M')
    await enter('neededDb', '20')
    await enter('sourceOhm', '50')
    await enter('loadOhm', '10k')
    await expect
      .poll(sentence)
      .toMatch(
        /^4\.7 nF: with care\. \d+ times the 50 pF ARINC 429 allows a receiver: needs the bus owner’s approval; the noise needs 2\.34 nF, the signal stands 11\.6 nF\.$/u,
      )
    expect(await verdict()).toBe('marginal')
    expect(taps).toBeLessThanOrEqual(9)
  })

  it('says that no single capacitor does both where more must come off, and what opens it', async () => {
    await openCheck('Window')
    await pickLine(/^ARINC 429, high/u)
    await enter('frequencyHz', '12M')
    await enter('neededDb', '36')
    await enter('sourceOhm', '50')
    await enter('loadOhm', '10k')
    await tap(page.locator('form input[name="topology"][value="C"]'))
    await expect
      .poll(sentence)
      .toMatch(
        /^No single capacitor does both: the noise needs 14\.8 nF, the signal stands 11\.6 nF\. What opens it: /u,
      )
    expect(taps).toBeLessThanOrEqual(9)
  })
})

describe('a 28 V box and waveform 4, level 3', () => {
  it('does not survive without a suppressor, and the classes that would carry it stand within two screens', async () => {
    await openCheck('Surge')
    await enter('level', '3')
    await enter('withstandV', '80')
    await expect.poll(sentence).toBe('The circuit survives: no. The load peaks at 300 V, the circuit withstands 80 V.')
    expect(await verdict()).toBe('fails')
    await enter('busMaxV', '32')
    const table = page.locator('figure', { hasText: 'Classes that would carry it with margin' }).first()
    await table.waitFor()
    await settled(page)
    const topPx = await table.evaluate((one) => one.getBoundingClientRect().top + scrollY)
    expect(topPx).toBeLessThan(2 * PHONE.height - 200)
    expect(await table.textContent()).toMatch(/yes/u)
    expect(taps).toBeLessThanOrEqual(5)
  })
})
