/**
 * A key on a phone six times slower than a desk: every field of every check, filled in. Counted is the time the processor
 * works for it, page and workers together, six times: a busy machine does not change it, and throttling would multiply
 * what else it does.
 */
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { readField } from '../../src/calc/line/fields.ts'
import { CHECKS } from '../../src/calc/registry.ts'
import type { Check } from '../../src/calc/types.ts'
import setup from '../e2e/support/built-site.ts'
import { type Keystroke, noteKeys, type Typing, typeInto } from '../e2e/support/key-cost.ts'
import { settled } from '../e2e/support/screen.ts'
import { openSite, type Site } from '../e2e/support/site.ts'
import { STORIES } from '../e2e/support/stories.ts'
import { workedHash } from '../e2e/support/worked-checks.ts'

const SLOWER = 6
const KEY_MS = 100
const FIGURES_MS = 1000
const LONGEST_TURN_MS = 50
const longestMs = LONGEST_TURN_MS / SLOWER
const SURGE_FIELDS = 8
const ROUNDS = 4
const MORE_ROUNDS = 6

let site: Site
let page: Page

beforeAll(async () => {
  setup()
  site = await openSite({ isMeasured: true })
  const visit = await site.visit({ serviceWorkers: 'block', hasTouch: true, isMobile: true })
  page = visit.page
  await noteKeys(page)
  at = visit.at
}, 120_000)
afterAll(() => site.close())
let at: (hash: string) => string

/** The check as somebody fills it in. */
const hashesOf = (id: string): readonly string[] => {
  const stories = STORIES.filter(({ hash }) => hash.startsWith(`#/check/${id}?`)).map(({ hash }) => hash)
  return [...stories, workedHash(id)]
}

const percentile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.ceil(share * values.length) - 1] ?? Number.NaN

const KEYSTROKES = [
  { key: '1', at: 'front' },
  { key: '0', at: 'end' },
  { key: '5', at: 'end' },
  { key: ';', at: 'end' },
] as const

/** One key for every field a text is typed into, folded ones included: one after which the text can be read. */
async function openFilled(check: Check, hash: string): Promise<readonly Keystroke[]> {
  await page.goto('about:blank')
  await page.goto(at(hash))
  await settled(page)
  await page.evaluate(() => {
    for (const fold of document.querySelectorAll<HTMLDetailsElement>('form details')) fold.open = true
  })
  // a group draws its fields when it is opened
  await page.waitForFunction(() =>
    [...document.querySelectorAll('form .group')].every((group) => group.querySelector('.field') !== null),
  )
  const texts = await page
    .locator('form input[type="text"][name]')
    .evaluateAll((all) => all.map((one) => [one.getAttribute('name') ?? '', (one as HTMLInputElement).value] as const))
  return texts.flatMap(([name, text]) => {
    const input = check.inputs.find(({ key }) => key === name)
    const fits = KEYSTROKES.find(({ key, at }) => {
      const next = at === 'front' ? `${key}${text}` : `${text}${key}`
      return input !== undefined && readField(input, next, {}).state === 'value'
    })
    return fits === undefined ? [] : [{ field: name, ...fits }]
  })
}

/** The longest turn of the page for each key. */
const turnsOf = ({ keys }: Typing): readonly number[] => keys.map(({ longestMs }) => SLOWER * longestMs)

const said = (what: string, typing: Typing, costs: readonly number[]): string =>
  `bench, ${what} on a phone: ${typing.keys.length} keys, half within ${percentile(costs, 0.5).toFixed(0)} ms, ` +
  `p95 ${percentile(costs, 0.95).toFixed(0)} ms, longest turn ${Math.max(...turnsOf(typing)).toFixed(0)} ms ` +
  `(this machine ${typing.slower.toFixed(2)} times as slow as a desk left alone)`

for (const check of CHECKS.filter(({ id }) => id !== 'surge'))
  for (const hash of hashesOf(check.id)) {
    test(`a key in ${hash.slice(0, 60)} is answered on the screen within ${KEY_MS} ms, in turns of ${LONGEST_TURN_MS} ms at most`, {
      timeout: 300_000,
    }, async () => {
      const typing = await typeInto(page, await openFilled(check, hash), {
        rounds: ROUNDS,
        more: MORE_ROUNDS,
        most: { answeredMs: KEY_MS / SLOWER, longestMs },
      })
      const answered = typing.keys.map(({ answeredMs }) => SLOWER * answeredMs)
      console.log(said(check.id, typing, answered))
      expect(percentile(answered, 0.95)).toBeLessThanOrEqual(KEY_MS)
      expect(percentile(turnsOf(typing), 0.95)).toBeLessThanOrEqual(LONGEST_TURN_MS)
      if (check.id === 'window') expect(Math.max(...turnsOf(typing))).toBeLessThanOrEqual(LONGEST_TURN_MS)
    })
  }

for (const hash of hashesOf('surge'))
  test(`a key in ${hash.slice(0, 60)} is on the screen within ${KEY_MS} ms, its figures within ${FIGURES_MS} ms`, {
    timeout: 300_000,
  }, async () => {
    const [check] = CHECKS.filter(({ id }) => id === 'surge')
    if (check === undefined) throw new Error('there is no surge')
    const typing = await typeInto(page, (await openFilled(check, hash)).slice(0, SURGE_FIELDS), {
      rounds: 2 * ROUNDS,
      more: MORE_ROUNDS,
      most: { answeredMs: FIGURES_MS / SLOWER, longestMs },
    })
    const dimmed = typing.keys.map(({ dimmedMs }) => SLOWER * dimmedMs)
    const answered = typing.keys.map(({ answeredMs }) => SLOWER * answeredMs)
    console.log(said('surge, the field', typing, dimmed))
    console.log(said('surge, the figures', typing, answered))
    expect(percentile(dimmed, 0.95)).toBeLessThanOrEqual(KEY_MS)
    expect(percentile(answered, 0.95)).toBeLessThanOrEqual(FIGURES_MS)
    expect(Math.max(...turnsOf(typing))).toBeLessThanOrEqual(LONGEST_TURN_MS)
  })
