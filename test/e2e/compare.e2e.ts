import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { axeBreaches, sideways, smallTargets } from './support/look.ts'
import { settled } from './support/screen.ts'
import { CLEAN, openSite, PHONE, type Site } from './support/site.ts'

let site: Site

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

const BASE = '#/check/loading?lineKind=can&bitRateHz=500k&capacitanceF=1n'

describe('variants of a check', () => {
  it('stand in the address, side by side on a desk, and come back from it', async () => {
    const { page, at } = await site.visit({
      viewport: { width: 1440, height: 900 },
      serviceWorkers: 'block',
      bypassCSP: true,
    })
    await page.goto(at(`${BASE}&b.capacitanceF=22n`))
    await settled(page)
    const variant = (name: string) => page.getByRole('region', { name: `Variant ${name}` })
    await variant('B').getByText(/^22/).first().waitFor()
    expect(await page.locator('[name="b.capacitanceF"]').inputValue()).toBe('22n')
    expect(await page.locator('form [name="capacitanceF"]').inputValue()).toBe('1n')
    const [a, b] = [await variant('A').boundingBox(), await variant('B').boundingBox()]
    expect(a?.y).toBe(b?.y)
    expect(b?.x ?? 0).toBeGreaterThan(a?.x ?? 0)

    await page.getByRole('button', { name: 'Add variant C' }).click()
    await variant('C').getByRole('combobox').selectOption('bitRateHz')
    await page.locator('[name="c.bitRateHz"]').fill('1M')
    await page.waitForFunction(() => location.hash.includes('c.bitRateHz=1M'))
    expect(page.url()).toContain('b.capacitanceF=22n')
    await page.reload()
    await page.locator('[name="c.bitRateHz"]').waitFor()
    expect(await page.locator('[name="b.capacitanceF"]').inputValue()).toBe('22n')
    expect(await axeBreaches(page)).toEqual([])
  })

  it('a refused text stays in its field with its reason, and in the address', async () => {
    const { page, at } = await site.visit({ viewport: PHONE, serviceWorkers: 'block' })
    await page.goto(at(`${BASE}&b.capacitanceF=22%20V`))
    const field = page.locator('[name="b.capacitanceF"][aria-invalid="true"]')
    await field.waitFor()
    expect(await field.inputValue()).toBe('22 V')
    const note = await field.getAttribute('aria-describedby')
    expect(await page.locator(`[id="${note}"]`).textContent()).toMatch(/F/)
  })

  it('stand one under the other on a phone', async () => {
    const { page, at } = await site.visit({ viewport: PHONE, serviceWorkers: 'block', bypassCSP: true })
    await page.goto(at(`${BASE}&b.capacitanceF=22n&c.bitRateHz=1M`))
    await settled(page)
    await page.locator('[name="c.bitRateHz"]').waitFor()
    expect((await sideways(page)).byPx).toBe(0)
    expect((await smallTargets(page, 48)).small).toEqual([])
    expect(await axeBreaches(page)).toEqual([])
  })

  it('are kept in the Log with the check', async () => {
    const { page, at } = await site.visit({ viewport: PHONE, serviceWorkers: 'block' })
    await page.goto(at(`${BASE}&b.capacitanceF=22n`))
    await settled(page)
    await page.getByRole('button', { name: 'Keep in the log' }).click()
    await page.waitForFunction(() => location.hash.startsWith('#/log/'))
    await page.locator('[name="b.capacitanceF"]').fill('33n')
    await page.reload()
    await page.locator('[name="b.capacitanceF"]').waitFor()
    await page.waitForFunction(
      () => document.querySelector<HTMLInputElement>('[name="b.capacitanceF"]')?.value === '33n',
    )
  })
})

describe('copying', () => {
  it('gives a figure as it is printed, and a table with tabs between its cells', async () => {
    const { page, context, at } = await site.visit({ viewport: PHONE, serviceWorkers: 'block' })
    await context.grantPermissions(['clipboard-read', 'clipboard-write'])
    await page.goto(at(`${BASE}&b.capacitanceF=22n`))
    await settled(page)
    await page.getByText('Why, figures and working').click()
    await page.locator('.figure-row > summary').first().click()
    const button = page.locator('.figure-row[open]').getByRole('button', { name: /^Copy / })
    const words = ((await button.textContent()) ?? '').replace('Copy ', '').trim()
    await button.click()
    await page.getByText('Copied.').waitFor()
    const clipboard = () => page.evaluate(() => navigator.clipboard.readText())
    expect(words).toMatch(/^\d/)
    expect(await clipboard()).toBe(words)
    const table = page.getByRole('region', { name: 'Compared' })
    await table.waitFor()
    await page.locator('.compare').getByRole('button', { name: 'Copy the table' }).click()
    await page.locator('.compare').getByText('Copied.').waitFor()
    const rows = (await clipboard())
      .trim()
      .split(/\r?\n/)
      .map((row) => row.split('\t'))
    expect(rows[0]).toEqual(['What', 'A', 'B'])
    expect(rows.length).toBeGreaterThan(3)
    expect(rows.every((cells) => cells.length === 3)).toBe(true)
  })
})
