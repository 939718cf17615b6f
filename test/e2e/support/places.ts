/** Every place of the app, as an address, with what to wait for before it is judged. */
import type { Page } from 'playwright-core'
import { CHECKS } from '../../../src/calc/registry.ts'
import { FIELD_NOTES } from '../../../src/guide/notes.ts'
import { answerAll, follow, heading, settled, shown, TO_A_FILTER, TO_WEATHER } from './screen.ts'
import { workedHash } from './worked-checks.ts'

export type Place = {
  readonly name: string
  /** brings the place on the screen, from anywhere in the app */
  readonly go: (page: Page) => Promise<void>
}

const longNote = [...FIELD_NOTES].sort((a, b) => JSON.stringify(b).length - JSON.stringify(a).length)[0]
const tableNote = FIELD_NOTES.find((note) => note.table !== undefined)

/** Goes there and waits until the former screen is gone and the new one stands. */
async function to(page: Page, hash: string): Promise<void> {
  await follow(page, hash)
  await page.waitForFunction(() => document.querySelector('#main h1') !== null)
  await page.getByText('Opening…').waitFor({ state: 'detached' })
  await heading(page).waitFor()
}

/** A triage without answers, at its first question. */
async function startAfresh(page: Page): Promise<void> {
  await to(page, '#/ask')
  const afresh = page.getByRole('button', { name: 'Start afresh' })
  if ((await afresh.count()) > 0) await afresh.click()
  await to(page, '#/ask/gate-danger')
}

const at = (name: string, hash: string): Place => ({ name, go: (page) => to(page, hash) })

const asked = (name: string, steps: typeof TO_WEATHER, endId: string): Place => ({
  name,
  go: async (page) => {
    await startAfresh(page)
    await answerAll(page, steps)
    await shown(page, endId)
    await page.getByText('Working out the window…').waitFor({ state: 'detached' })
  },
})

const filled = (id: string): Place => ({
  name: `check ${id}`,
  go: async (page) => {
    await to(page, workedHash(id))
    await settled(page)
  },
})

/** In this order: the Log is empty before it is filled, and the triage is under way afterwards. */
export const PLACES: readonly Place[] = [
  at('the start', '#/ask'),
  at('a question of the gate', '#/ask/gate-lines'),
  at('the kinds of line', '#/ask/kind'),
  at('the list of checks', '#/check'),
  ...CHECKS.map(({ id }) => filled(id)),
  at('an empty check', '#/check/window'),
  at('a refused check', '#/check/filter?capacitanceF=abc&frequencyHz=10 V&topology=XYZ'),
  at('an empty log', '#/log'),
  {
    name: 'a complaint',
    go: async (page) => {
      await to(page, '#/log')
      await page.getByRole('button', { name: /demo/i }).click()
      await page.getByRole('textbox', { name: 'Note' }).waitFor()
      await page.getByText('Working out the window…').waitFor({ state: 'detached' })
    },
  },
  at('the log', '#/log'),
  at('the notes', '#/notes'),
  at('a long note', `#/notes/${longNote?.id}`),
  at('a note with a table', `#/notes/${tableNote?.id}`),
  asked('an outcome with a filter', TO_A_FILTER, 'filter-victim-inline'),
  asked('an outcome without', TO_WEATHER, 'weather-static'),
  asked('a stop', [['gate-danger', 'smoke']], 'stop-smoke'),
  at('an address that leads nowhere', '#/check/no-such-check'),
  {
    name: 'About',
    go: async (page) => {
      await to(page, '#/ask')
      await page.getByRole('button', { name: /^About/ }).click()
      await page.getByRole('dialog').waitFor()
    },
  },
]
