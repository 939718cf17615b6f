import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { CHECKS } from '../../src/calc/registry.ts'
import { SAFETY_TEXTS } from '../../src/reference/safety.ts'
import { waitForOffline } from './support/browser.ts'
import { appText, field, openPlace, output, settled, si, textOf, unfold, unfoldGroups } from './support/screen.ts'
import { CLEAN, openSite, type Site, type Visit } from './support/site.ts'
import { WORKED, workedHash } from './support/worked-checks.ts'

let site: Site
let visit: Visit
let page: Page

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
beforeEach(async ({ task }) => {
  visit = await site.visit({ serviceWorkers: task.name.includes('without a network') ? 'allow' : 'block' })
  page = visit.page
})
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

const open = (hash: string) => openPlace(page, visit.at(hash))

/** A field marked as refused, its sentence, and the text it keeps. */
const refusal = async (key: string) => {
  const input = field(page, key)
  await page.locator(`form [name="${key}"][aria-invalid="true"]`).waitFor()
  const notes = (await input.getAttribute('aria-describedby')) ?? ''
  const message = await page.locator(`#${notes.split(' ')[0]}`).textContent()
  return { message: (message ?? '').trim(), kept: await input.inputValue() }
}

/** What no text of ours ever says. */
const NO_NUMBER = /\bNaN\b|\bInfinity\b|\bundefined\b|\bnull\b|\[object /

describe('the address of a check', () => {
  it('has a worked example for every check there is', () => {
    expect(Object.keys(WORKED).sort()).toEqual(CHECKS.map(({ id }) => id).sort())
  })

  it.each(Object.entries(WORKED))('of %s fills the fields and computes at once', async (id, { query, expected }) => {
    await open(workedHash(id))
    for (const { key, si: wanted, within } of expected) {
      const figure = await si(page, key)
      expect(Math.abs(figure - wanted), `${key} is ${figure}, not ${wanted}`).toBeLessThanOrEqual(within)
    }
    for (const pair of query.split('&')) {
      const [key = '', text = ''] = pair.split('=').map(decodeURIComponent)
      expect(await textOf(page, key), key).toBe(text)
    }
    expect(await appText(page)).not.toMatch(NO_NUMBER)
  })

  it('carries every figure at full precision', async () => {
    await open(workedHash('pair'))
    const omega = 2 * Math.PI * 1e6
    const [legOhm, c1, c2] = [50, 1.2e-9, 0.8e-9]
    const ratio =
      (omega * legOhm * Math.abs(c1 - c2)) /
      Math.sqrt((1 + (omega * legOhm * c1) ** 2) * (1 + (omega * legOhm * c2) ** 2))
    expect((await si(page, 'conversionDb')) / (20 * Math.log10(ratio))).toBeCloseTo(1, 12)
    expect((await si(page, 'worstHz')) * (2 * Math.PI * legOhm * Math.sqrt(c1 * c2))).toBeCloseTo(1, 12)
    const texts = await page
      .locator('output[data-si]')
      .evaluateAll((all) => all.map((one) => one.getAttribute('data-si')))
    expect(texts.length).toBeGreaterThanOrEqual(3)
    for (const text of texts) expect(text === '' || String(Number(text)) === text, `data-si="${text}"`).toBe(true)
  })

  it('says so with an empty data-si and words where a figure does not exist', async () => {
    await open('#/check/pair?capacitanceF=1n&capacitance2F=1n&legOhm=50&frequencyHz=1M')
    expect(await output(page, 'worstHz').getAttribute('data-si')).toBe('')
    expect(await output(page, 'worstHz').textContent()).toMatch(/[a-z]{3}/)
  })

  it('leaves a figure out that has no meaning for the kind of line', async () => {
    await open(workedHash('loading'))
    await output(page, 'edgeSec').waitFor()
    expect(await output(page, 'eyeFrac').count()).toBe(0)
  })

  it('gives the verdict as a word of the contract', async () => {
    await open('#/check/loading?lineKind=arinc-429-high&capacitanceF=200n')
    expect(await page.locator('output#verdict').getAttribute('data-verdict')).toBe('fails')
    await open(workedHash('window'))
    expect(['ok', 'marginal', 'fails', 'unknown']).toContain(
      await page.locator('output#verdict').getAttribute('data-verdict'),
    )
  })

  it('takes the default for a missing key, and nothing for an empty one', async () => {
    await open('#/check/need?measuredDb=105&limitDb=76.4639')
    expect(await si(page, 'neededDb')).toBeCloseTo(34.5361, 9)
    expect(await field(page, 'marginDb').inputValue()).toBe('6')
    await open('#/check/need?measuredDb=105&limitDb=76.4639&marginDb=')
    await settled(page)
    expect(await field(page, 'marginDb').inputValue()).toBe('')
    expect(await appText(page)).toMatch(/assumed 6/)
    const bench = 'capacitanceF=10n&frequencyHz=10M&esrOhm=0&eslH=0&bondOhm=0&bondH=0'
    await open(`#/check/filter?${bench}`)
    // 20·log10|1 + jωC·25 Ω|
    expect(await si(page, 'benchInsertionLossDb')).toBeCloseTo(
      10 * Math.log10(1 + (2 * Math.PI * 1e7 * 1e-8 * 25) ** 2),
      9,
    )
    await open(`#/check/filter?${bench}&topology=`)
    await page
      .getByText(/the topology/)
      .first()
      .waitFor()
    expect(await output(page, 'benchInsertionLossDb').count()).toBe(0)
  })

  it('keeps a plus a plus, and reads what is percent-encoded', async () => {
    const rest = 'topology=C&sourceOhm=50&loadOhm=50&frequencyHz=10M&esrOhm=0&eslH=0&bondOhm=0&bondH=0'
    await open(`#/check/filter?capacitanceF=2*4.7n+330p&${rest}`)
    // 20·log10|1 + jωC·25 Ω| with C = 9.73 nF
    expect(await si(page, 'insertionLossDb')).toBeCloseTo(23.7032, 3)
    expect(await field(page, 'capacitanceF').inputValue()).toBe('2*4.7n+330p')
    await open(`#/check/filter?capacitanceF=9%2C73%20n%46&${rest}`)
    expect(await si(page, 'insertionLossDb')).toBeCloseTo(23.7032, 3)
    await open('#/check/window?toleranceFrac=+100/-0 %25')
    await unfold(page, 'toleranceFrac')
    expect(await field(page, 'toleranceFrac').inputValue()).toBe('+100/-0 %')
    expect(await field(page, 'toleranceFrac').getAttribute('aria-invalid')).toBe('false')
  })

  it('takes lists, and the worst of them governs', async () => {
    await open(
      '#/check/filter?topology=C&capacitanceF=9.73n&sourceOhm=1;10;50;150&loadOhm=50&frequencyHz=10M;30M&esrOhm=0&eslH=0&bondOhm=0&bondH=0',
    )
    // the lowest source at the lowest frequency: 20·log10|1 + jωC·(1 Ω ∥ 50 Ω)|
    const worst = 10 * Math.log10(1 + ((2 * Math.PI * 1e7 * 9.73e-9 * 50) / 51) ** 2)
    expect(await si(page, 'insertionLossDb')).toBeCloseTo(worst, 9)
    await open(
      '#/check/window?lineKind=power-28-vdc&topology=C&frequencyHz=2M;12M&neededDb=31;47&sourceOhm=7;43&loadOhm=91&toleranceFrac=0 %25&temperatureFrac=0&biasFrac=0&ageingDecades=0&esrOhm=0&eslH=0&bondOhm=0&bondH=0',
    )
    // closed form C = √(10^(A/10) − 1)/(2π·f·R) with R = 7 Ω ∥ 91 Ω, the larger of the two
    const needF = (db: number, hz: number) => Math.sqrt(10 ** (db / 10) - 1) / (2 * Math.PI * hz * ((7 * 91) / 98))
    const leastF = Math.max(needF(31, 2e6), needF(47, 12e6))
    expect((await si(page, 'leastCapacitanceF')) / leastF).toBeCloseTo(1, 6)
  })

  it('keeps keys it does not know, and says that it did not use them', async () => {
    await open('#/check/need?measuredDb=105&colour=brick%20red&limitDb=76.4639')
    await page.getByText('colour=brick red').waitFor()
    expect(await si(page, 'neededDb')).toBeCloseTo(34.5361, 9)
    await field(page, 'measuredDb').fill('106')
    await page.waitForFunction(() => location.hash.includes('measuredDb=106'))
    expect(page.url()).toContain('colour=brick%20red')
  })

  it('never overwrites what is in the log', async () => {
    await open('#/log')
    await page.getByRole('button', { name: /demo/i }).click()
    const facts = page.getByRole('region', { name: /^Facts/ })
    await facts.getByText('20 dB', { exact: false }).first().waitFor()
    const before = await facts.textContent()
    const address = page.url()
    await open('#/check/window?lineKind=can&neededDb=63&frequencyHz=9M')
    await field(page, 'neededDb').fill('71')
    await page.waitForFunction(() => location.hash.includes('neededDb=71'))
    await page.goto(address)
    await facts.waitFor()
    expect(await facts.textContent()).toBe(before)
  })
})

describe('a field', () => {
  it('works out what is typed, without a network too', async () => {
    await open('#/check/filter?topology=C&sourceOhm=50&loadOhm=50&frequencyHz=10M&esrOhm=0&eslH=0&bondOhm=0&bondH=0')
    await waitForOffline(page)
    await visit.goDark()
    await field(page, 'capacitanceF').fill('2*4.7n+330p')
    await output(page, 'insertionLossDb').waitFor()
    expect(await si(page, 'insertionLossDb')).toBeCloseTo(23.7032, 3)
    await field(page, 'capacitanceF').fill('1/(2*pi*50*318.30989)')
    // C·R·ω chosen so that ωCR = 10⁷/318.30989: the bench figure is 20·log10|1 + j·(25/50)·10⁷/318.30989|
    await page.waitForFunction(() => Number(document.getElementById('insertionLossDb')?.getAttribute('data-si')) > 80)
    const wanted = 10 * Math.log10(1 + (0.5 * (1e7 / 318.30989)) ** 2)
    expect(await si(page, 'insertionLossDb')).toBeCloseTo(wanted, 6)
  })

  it.each([
    { what: '1,000', text: '1,000', key: 'measuredDb', check: 'need' },
    { what: 'hertz for farads', text: '10 Hz', key: 'capacitanceF', check: 'pair' },
    { what: 'a word', text: 'abc', key: 'capacitanceF', check: 'pair' },
    { what: 'a word behind a value', text: '4.7 nF extra', key: 'capacitanceF', check: 'power' },
    { what: 'a division by zero', text: '1/0', key: 'capacitanceF', check: 'filter' },
    { what: 'a negative capacitance', text: '-3n', key: 'capacitanceF', check: 'filter' },
    { what: '300 letters', text: 'x'.repeat(300), key: 'loadOhm', check: 'filter' },
    { what: '300 digits', text: '9'.repeat(300), key: 'loadOhm', check: 'filter' },
    { what: 'a tolerance above one without a percent sign', text: '30', key: 'toleranceFrac', check: 'window' },
  ])('refuses $what, says why and keeps the text', async ({ text, key, check }) => {
    await open(workedHash(check))
    await page.getByRole('region', { name: 'Answer', exact: true }).first().waitFor()
    await unfold(page, key)
    await field(page, key).fill(text)
    const typed = await refusal(key)
    expect(typed.kept).toBe(text)
    expect(typed.message).toMatch(/\w+ \w+.*[.;?]/s)
    expect(typed.message).not.toMatch(NO_NUMBER)
    await page.waitForFunction(
      ([name, wanted]) =>
        new URLSearchParams(location.hash.split('?')[1]?.replaceAll('+', '%2B')).get(name ?? '') === wanted,
      [key, text],
    )
    await page.reload()
    expect(await refusal(key)).toEqual(typed)
  })

  it('refuses a choice that does not exist, and marks it', async () => {
    await open('#/check/filter?topology=XYZ')
    await page
      .locator('[aria-invalid="true"]', { has: page.locator('[name="topology"]') })
      .first()
      .waitFor()
  })

  it('refuses a switch that is neither on nor off, and marks it', async () => {
    await open('#/check/power?navyRule=perhaps')
    await page.locator('form [name="navyRule"][aria-invalid="true"]').waitFor()
  })

  it('refuses a line that is not in the list, and marks it', async () => {
    await open('#/check/loading?lineKind=no-such-line')
    await page
      .getByText(/no-such-line/)
      .first()
      .waitFor()
    await page.locator('form [name="lineKind"][aria-invalid="true"]').waitFor({ timeout: 3_000 })
  })

  it('is not corrected by the phone', async () => {
    await open('#/check/filter')
    await field(page, 'capacitanceF').waitFor()
    await unfoldGroups(page)
    const marks = await page
      .locator('form input[type="text"]')
      .evaluateAll((all) =>
        all.map((one) => [
          one.getAttribute('autocorrect'),
          one.getAttribute('spellcheck'),
          one.getAttribute('autocapitalize'),
        ]),
      )
    for (const each of marks) expect(each).toEqual(['off', 'false', 'none'])
  })

  it.each([
    ['filter', 'frequencyHz', '1e13'],
    ['filter', 'inductanceH', '101'],
    ['window', 'neededDb', '201'],
    ['power', 'lineCount', '1001'],
    ['need', 'measuredDb', '401'],
    ['pair', 'legOhm', '0'],
  ])('of %s takes a finite %s out of range as an issue', async (check, key, text) => {
    await open(workedHash(check))
    await field(page, key).fill(text)
    const { message, kept } = await refusal(key)
    expect(kept).toBe(text)
    expect(message).toMatch(/\d.* to .*\d/)
    await settled(page)
    expect(await appText(page)).not.toMatch(NO_NUMBER)
  })

  it('says nothing that is no number, whatever is entered', async () => {
    for (const check of CHECKS) {
      const numbers = check.inputs.flatMap(({ key, type }) => (type.is === 'number' ? [{ key, ...type }] : []))
      const choices = check.inputs.flatMap(({ key, type }) =>
        type.is === 'choice' ? [`${key}=${type.options[key === 'lineKind' ? 1 : 0]?.value ?? ''}`] : [],
      )
      for (const end of ['min', 'max'] as const) {
        const typed = numbers.map((each) => `${each.key}=${each[end]}`)
        await open(`#/check/${check.id}?${[...choices, ...typed].join('&')}`)
        await settled(page)
        expect(await appText(page), `${check.id} at every ${end}`).not.toMatch(NO_NUMBER)
        const figures = await page
          .locator('output[data-si]')
          .evaluateAll((all) => all.map((one) => one.getAttribute('data-si')))
        for (const figure of figures) expect(figure === '' || Number.isFinite(Number(figure)), `${figure}`).toBe(true)
      }
    }
  })

  it('keeps what was typed over a reload', async () => {
    await open('#/check/power')
    await field(page, 'workingRmsV').fill('117.3 V')
    await field(page, 'supplyHz').fill('0,4 kHz')
    await field(page, 'capacitanceF').fill('half of')
    await field(page, 'capacitanceF').blur()
    await page.waitForFunction(() => location.hash.includes('half'))
    await page.reload()
    await page.locator('form [name="capacitanceF"][aria-invalid="true"]').waitFor()
    expect(await field(page, 'workingRmsV').inputValue()).toBe('117.3 V')
    expect(await field(page, 'supplyHz').inputValue()).toBe('0,4 kHz')
    expect(await field(page, 'capacitanceF').inputValue()).toBe('half of')
    await field(page, 'capacitanceF').fill('18 nF')
    // I = 2π·400 Hz·18 nF·117.3 V
    await output(page, 'currentRmsA').waitFor()
    expect(await si(page, 'currentRmsA')).toBeCloseTo(2 * Math.PI * 400 * 18e-9 * 117.3, 12)
  })
})

describe('share', () => {
  it('copies the address with every input that is not blank, and says what the figures are', async () => {
    await visit.context.grantPermissions(['clipboard-read', 'clipboard-write'])
    await open(workedHash('window'))
    await unfold(page, 'existingF')
    await field(page, 'existingF').fill('330 pF')
    await settled(page)
    await page.getByRole('button', { name: 'Share' }).click()
    await page.getByText(/^Copied/).waitFor()
    const copied = await page.evaluate(() => navigator.clipboard.readText())
    expect(copied).toContain(SAFETY_TEXTS.screening.text)
    const address = copied.match(/http:\S+/)?.[0] ?? ''
    const shared = new Map(
      (address.split('?')[1] ?? '').split('&').map((pair) => {
        const [key = '', text = ''] = pair.split('=').map(decodeURIComponent)
        return [key, text] as const
      }),
    )
    await unfoldGroups(page)
    const filled = await page.locator('form [name]').evaluateAll((all) =>
      all.flatMap((one) => {
        const input = one as HTMLInputElement
        if (input.type === 'radio' && !input.checked) return []
        const text = input.type === 'checkbox' ? String(input.checked) : input.value
        return text.trim() === '' ? [] : [[input.name, text] as const]
      }),
    )
    expect(filled.length).toBeGreaterThanOrEqual(14)
    for (const [key, text] of filled) expect(shared.get(key), key).toBe(text)
    const other = await visit.context.newPage()
    await other.goto(address)
    await output(other, 'leastCapacitanceF').waitFor()
    expect(await si(other, 'leastCapacitanceF')).toBe(await si(page, 'leastCapacitanceF'))
  })
})
