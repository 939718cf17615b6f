/** The page while somebody types: the field stays under the eye, the answer stays to be read, a refusal waits. */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { QUANTITIES } from '../../src/calc/quantity/quantity.ts'
import { CHECKS } from '../../src/calc/registry.ts'
import type { Check, ColumnType, Input } from '../../src/calc/types.ts'
import { field, settled } from './support/screen.ts'
import { CLEAN, openSite, type Site } from './support/site.ts'
import { workedHash } from './support/worked-checks.ts'

/** How far a field may move while it is typed in. */
const MOST_PX = 8

let site: Site
let page: Page

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
afterEach(async () => expect(await site.leave()).toEqual(CLEAN))

async function open(hash: string): Promise<void> {
  const visit = await site.visit({ serviceWorkers: 'block' })
  page = visit.page
  await page.goto(visit.at(hash))
  await settled(page)
}

/** Where the field stands once everything a key has set off in this and the next frame is drawn. */
const topPx = (key: string): Promise<number> =>
  page.evaluate(
    (name) =>
      new Promise<number>((done) => {
        requestAnimationFrame(() =>
          requestAnimationFrame(() =>
            done(document.querySelector(`form [name="${name}"]`)?.getBoundingClientRect().top ?? Number.NaN),
          ),
        )
      }),
    key,
  )

/** A text its field takes. */
function validText({ type }: Input): string {
  if (type.is === 'tolerance') return '+20/-10 %'
  if (type.is === 'level') return '71.5'
  if (type.is === 'column') return type.example
  return type.is === 'number' ? QUANTITIES[type.quantity].example : ''
}

/** A column without words or a number takes any text: nothing in it is ever refused. */
const takesAny = ({ words, quantity }: ColumnType): boolean => words.length === 0 && quantity === undefined

/** Fields that are typed in and stand open. */
const typedIn = (check: Check): readonly Input[] =>
  check.inputs.filter(
    ({ type, group }) =>
      group === undefined && type.is !== 'choice' && type.is !== 'flag' && !(type.is === 'column' && takesAny(type)),
  )

async function typeIn(input: Input, seen: number[]): Promise<void> {
  const { key } = input
  await field(page, key).click()
  seen.push(await topPx(key))
  const press = async (what: string) => {
    await page.keyboard.press(what)
    seen.push(await topPx(key))
  }
  const strike = async (letter: string) => {
    await page.keyboard.type(letter)
    seen.push(await topPx(key))
  }
  await press('Control+a')
  await press('Delete')
  for (const letter of validText(input)) await strike(letter)
  await press('Control+a')
  for (const letter of 'abc') await strike(letter)
  // after the pause it is refused, and the page still stands
  await page.locator(`form [name="${key}"][aria-invalid="true"]`).waitFor()
  seen.push(await topPx(key))
  await press('Control+a')
  for (const pasted of [validText(input), 'half of it']) {
    await page.keyboard.insertText(pasted)
    seen.push(await topPx(key))
    await press('Control+a')
  }
  await page.keyboard.insertText(validText(input))
  seen.push(await topPx(key))
}

describe('the field that is typed in', () => {
  it.each(CHECKS.map((check) => [check.id, check] as const))(
    'never moves by more than 8 px in %s, typed or pasted, taken or refused',
    async (id, check) => {
      await open(workedHash(id))
      const moved: Record<string, number> = {}
      for (const input of typedIn(check)) {
        const seen: number[] = []
        await typeIn(input, seen)
        const spanPx = Math.max(...seen) - Math.min(...seen)
        if (!(spanPx <= MOST_PX)) moved[input.key] = spanPx
      }
      expect(moved).toEqual({})
    },
    120_000,
  )

  it('does not move at the end of the page either, nor on an empty check', async () => {
    await open('#/check/window')
    const seen: number[] = []
    const last = typedIn(CHECKS.find(({ id }) => id === 'window') as Check).at(-1) as Input
    await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight))
    await typeIn(last, seen)
    expect(Math.max(...seen) - Math.min(...seen)).toBeLessThanOrEqual(MOST_PX)
  })

  it('is left where the user scrolls it to, also when something changes in that very moment', async () => {
    await open('#/check/loading?lineKind=can&bitRateHz=500k&capacitanceF=10n')
    await field(page, 'existingF').focus()
    const scrolledPx = await page.evaluate(async () => {
      scrollTo(0, 300)
      const before = scrollY
      // what comes here comes before the event that tells of the scrolling
      document.querySelector('.answer-pane')?.classList.toggle('changed')
      for (let frame = 0; frame < 3; frame++) await new Promise((done) => requestAnimationFrame(done))
      return scrollY - before
    })
    expect(scrolledPx).toBe(0)
  })
})

describe('a refusal', () => {
  beforeEach(() => open('#/check/loading?lineKind=can&bitRateHz=500k&capacitanceF=10n'))

  it('waits for a pause of typing; until then the last answer stays, dimmed, marked old and without promised ids', async () => {
    const before = await page.locator('.answer-pane').boundingBox()
    const sentence = await page.locator('.answer .sentence').textContent()
    await field(page, 'capacitanceF').fill('4..')
    const at = await page.evaluate(() => ({
      marked: document.querySelector('.old-mark')?.textContent,
      sentence: document.querySelector('.answer .sentence')?.textContent,
      ids: [...document.querySelectorAll('output[id]')].map(({ id }) => id).filter((id) => id !== ''),
      invalid: document.querySelector('[name="capacitanceF"]')?.getAttribute('aria-invalid'),
    }))
    expect(at).toEqual({ marked: expect.stringContaining('Old'), sentence, ids: [], invalid: 'false' })
    await page.locator('form [name="capacitanceF"][aria-invalid="true"]').waitFor()
    expect(await page.locator('.answer .sentence').textContent()).toBe(sentence)
    expect((await page.locator('.answer-pane').boundingBox())?.height).toBe(before?.height)
    await page.locator('.answer.over').getByText('Capacitance', { exact: false }).first().waitFor()
  })

  it('comes at once when the field is left', async () => {
    await field(page, 'capacitanceF').fill('4..')
    await field(page, 'capacitanceF').blur()
    expect(await field(page, 'capacitanceF').getAttribute('aria-invalid')).toBe('true')
  })

  it('leaves verdict and number at the foot of the page while the answer is out of sight', async () => {
    await field(page, 'existingF').focus()
    await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight))
    const bar = page.locator('.mini.shown')
    await bar.waitFor()
    const words = (await bar.textContent()) ?? ''
    expect(words).toMatch(/no.*\d/)
    await field(page, 'existingF').fill('4..')
    expect(await bar.textContent()).toMatch(/no.*\d/)
    expect(await bar.textContent()).not.toContain('…')
    const box = await bar.boundingBox()
    expect(box?.y).toBeGreaterThan(600)
  })
})
