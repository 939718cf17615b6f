import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { DIST } from '../../scripts/static-server.mjs'
import { CHECKS } from '../../src/calc/registry.ts'
import { waitForOffline } from './support/browser.ts'
import { PLACES } from './support/places.ts'
import { field, heading, output } from './support/screen.ts'
import { CLEAN, openSite, type Site } from './support/site.ts'

let site: Site

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
/** A test that provokes breaches takes them away itself. */
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

describe('on a walk through every place and check', () => {
  it('nothing goes to another host, breaks the policy or complains, with a network or without', async () => {
    const { page, at, goDark } = await site.visit()
    await page.goto(at(''))
    await heading(page).waitFor()
    await waitForOffline(page)
    const walk = async () => {
      for (const { go, name } of PLACES) {
        // The Log is filled by the first walk.
        if (name !== 'a complaint' || (await page.getByRole('button', { name: /demo/i }).count()) > 0) await go(page)
        await page.keyboard.press('Escape')
        expect(await page.getByText('could not be loaded').count(), name).toBe(0)
        expect(await page.getByText('could not be computed').count(), name).toBe(0)
      }
    }
    await walk()
    await goDark()
    await page.reload()
    await heading(page).waitFor()
    await walk()
    await page.goto(at('#/check/filter?topology=C&frequencyHz=10M'))
    await field(page, 'capacitanceF').fill('2*4.7n')
    await output(page, 'benchInsertionLossDb').waitFor()
  })

  it('every script, style, font and picture of the build opens without a network', async () => {
    const { page, at, goDark } = await site.visit()
    await page.goto(at(''))
    await waitForOffline(page)
    await goDark()
    await page.reload()
    await heading(page).waitFor()
    const files = readdirSync(join(DIST, 'assets'))
    const scripts = files.filter((name) => name.endsWith('.js'))
    expect(scripts.length).toBeGreaterThan(10)
    // As text, since the import must be the browser's own.
    const failed = await page.evaluate<string[]>(`(async (names) => {
      const bad = []
      for (const name of names) {
        const url = new URL('assets/' + name, document.baseURI).href
        const answer = await fetch(url).catch(() => undefined)
        if (answer?.ok !== true) bad.push(name + ': not there')
        if (name.endsWith('.js')) await import(url).catch((error) => bad.push(name + ': ' + error))
      }
      return bad
    })(${JSON.stringify(files)})`)
    expect(failed).toEqual([])
  })
})

describe('the policy', () => {
  it('is in force: a foreign request, an inline script, markup from text and eval are stopped and noticed', async () => {
    const { page, at, faults } = await site.visit({ serviceWorkers: 'block' })
    await page.goto(at('#/notes'))
    await heading(page).waitFor()
    const outcome = await page.evaluate(async () => {
      const results: string[] = []
      await fetch('https://host.invalid/').then(
        () => results.push('fetched'),
        () => results.push('refused'),
      )
      const script = document.createElement('script')
      try {
        script.text = 'document.documentElement.dataset.ran = "yes"'
        document.body.append(script)
      } catch {
        results.push('no script')
      }
      try {
        document.createElement('div').innerHTML = '<b>x</b>'
        results.push('markup')
      } catch {
        results.push('no markup')
      }
      return [...results, document.documentElement.dataset['ran'] ?? 'not run']
    })
    expect(outcome).toEqual(['refused', 'no script', 'no markup', 'not run'])
    // The reports come after the refusals: both must have arrived here before the page is left.
    for (const directive of ['connect-src', 'require-trusted-types-for'])
      await expect.poll(() => faults.policy.some((text) => text.includes(directive)), { message: directive }).toBe(true)
    await site.leave()
  })

  it('lets no text of an address become markup', async () => {
    const { page, at } = await site.visit({ serviceWorkers: 'block' })
    const evil = encodeURIComponent('<img src=x onerror="document.documentElement.dataset.ran=1">')
    for (const check of CHECKS) {
      const query = check.inputs.map(({ key }) => `${key}=${evil}`).join('&')
      await page.goto(at(`#/check/${check.id}?${query}&${evil}=${evil}`))
      await heading(page).waitFor()
      await page.locator('[aria-invalid="true"]').first().waitFor()
    }
    for (const hash of [`#/${evil}`, `#/ask/${evil}`, `#/check/${evil}`, `#/log/${evil}`, `#/notes/${evil}`]) {
      await page.goto(at(hash))
      await heading(page).waitFor()
    }
    expect(await page.locator('img').count()).toBe(0)
    expect(await page.evaluate(() => document.documentElement.dataset['ran'])).toBeUndefined()
  })
})
