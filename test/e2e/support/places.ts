/** Every place of the app, as an address, with what to wait for before it is judged. */
import type { Page } from 'playwright-core'
import { CHECKS } from '../../../src/calc/registry.ts'
import type { Check } from '../../../src/calc/types.ts'
import { FIELD_NOTES } from '../../../src/guide/notes.ts'
import {
  answerAll,
  follow,
  press,
  settled,
  shown,
  startStands,
  TO_A_FILTER,
  TO_WEATHER,
  titleOf,
  unfold,
} from './screen.ts'
import { workedHash } from './worked-checks.ts'

export type Place = {
  readonly name: string
  /** brings the place on the screen, from anywhere in the app */
  readonly go: (page: Page) => Promise<void>
}

const longNote = [...FIELD_NOTES].sort((a, b) => JSON.stringify(b).length - JSON.stringify(a).length)[0]
const tableNote = FIELD_NOTES.find((note) => note.table !== undefined)

/** Goes there and waits until the screen with that heading stands. */
async function to(page: Page, hash: string, title: string): Promise<void> {
  await follow(page, hash)
  await page.getByRole('heading', { level: 1, name: title, exact: true }).waitFor()
}

const START = 'Stillpin finds what disturbs aircraft wiring, then the cure'

/** A triage without answers, at its first question. */
async function startAfresh(page: Page): Promise<void> {
  await to(page, '#/ask', START)
  await startStands(page)
  const afresh = page.getByRole('button', { name: 'Start afresh' })
  if ((await afresh.count()) > 0) await press(afresh)
  await to(page, '#/ask/gate-danger', titleOf('gate-danger'))
}

const at = (name: string, hash: string, title: string): Place => ({
  name,
  go: async (page) => {
    await to(page, hash, title)
    await page.locator('.loading').first().waitFor({ state: 'detached' })
  },
})

const asked = (name: string, steps: typeof TO_WEATHER, endId: string): Place => ({
  name,
  go: async (page) => {
    await startAfresh(page)
    await answerAll(page, steps, 'press')
    await shown(page, endId)
    await page.getByText('Working out the window…').waitFor({ state: 'detached' })
  },
})

const filled = ({ id, title }: Check): Place => ({
  name: `check ${id}`,
  go: async (page) => {
    await to(page, workedHash(id), title)
    await settled(page)
  },
})

const searched: Place = {
  name: 'a search on the start page',
  go: async (page) => {
    await to(page, '#/ask', START)
    await page.getByRole('searchbox').fill('bus drops out when we transmit')
    await page.getByRole('list', { name: 'Found' }).getByRole('button').first().waitFor()
  },
}

/** In this order: the Log is empty before it is filled, and the triage is under way afterwards. */
export const PLACES: readonly Place[] = [
  at('the start', '#/ask', START),
  searched,
  at('a question of the gate', '#/ask/gate-lines', titleOf('gate-lines')),
  at('the kinds of line', '#/ask/kind', titleOf('kind')),
  at('the list of checks', '#/check', 'Check'),
  ...CHECKS.map(filled),
  {
    name: 'a comparison',
    go: async (page) => {
      await to(page, '#/check/loading?lineKind=can&bitRateHz=500k&capacitanceF=1n&b.capacitanceF=22n', 'Loading')
      await page.getByRole('region', { name: 'Variant B' }).waitFor()
      await settled(page)
    },
  },
  at('an empty check', '#/check/window', 'Window'),
  at('a refused check', '#/check/filter?capacitanceF=abc&frequencyHz=10 V&topology=XYZ', 'Filter'),
  at('an empty log', '#/log', 'Log'),
  {
    name: 'a complaint',
    go: async (page) => {
      await to(page, '#/log', 'Log')
      await press(page.getByRole('button', { name: /demo/i }))
      await page.getByRole('textbox', { name: 'Note' }).waitFor()
      await page.getByText('Working out the window…').waitFor({ state: 'detached' })
    },
  },
  {
    name: 'the log',
    go: async (page) => {
      await to(page, '#/log', 'Log')
      await page.getByRole('link', { name: /^Example/ }).waitFor()
    },
  },
  {
    name: 'a check of a kept line',
    go: async (page) => {
      await to(page, '#/log', 'Log')
      await press(page.getByRole('link', { name: /^Example/ }))
      await press(page.getByRole('region', { name: /^Checks/ }).getByRole('link', { name: /^Need/ }))
      await page.getByRole('heading', { level: 1, name: 'Need', exact: true }).waitFor()
      await settled(page)
    },
  },
  {
    name: 'a check with a value taken over',
    go: async (page) => {
      await to(page, '#/check/need?measuredDb=80&limitDb=50', 'Need')
      await to(page, '#/check/filter', 'Filter')
      await unfold(page, 'neededDb')
      await page.locator('#note-neededDb').getByRole('link', { name: 'Need' }).waitFor()
      await settled(page)
    },
  },
  {
    name: 'a check on a fresh line, with a value overruled',
    go: async (page) => {
      await to(page, '#/check/need?measuredDb=80&limitDb=50', 'Need')
      await to(page, '#/check/window', 'Window')
      await page.locator('form [name="neededDb"]').fill('20')
      await page.getByRole('button', { name: 'Take 36 dB from Need' }).waitFor()
      await page.getByText('This is a fresh line.').waitFor()
      await settled(page)
    },
  },
  at('the book', '#/notes', 'Book'),
  at('a shelf of the book', '#/notes/notes', 'Notes'),
  at('a long note', `#/notes/${longNote?.id}`, longNote?.title ?? ''),
  at('a note with a table', `#/notes/${tableNote?.id}`, tableNote?.title ?? ''),
  at('a line card', '#/notes/line-rs-485', 'RS-485'),
  at('the card of a barred line', '#/notes/line-magneto-lead', 'Magneto P-lead or ignition exciter'),
  asked('an outcome with a filter', TO_A_FILTER, 'filter-victim-inline'),
  asked('an outcome without', TO_WEATHER, 'weather-static'),
  asked('a stop', [['gate-danger', 'smoke']], 'stop-smoke'),
  at('an address that leads nowhere', '#/check/no-such-check', 'No such check'),
  {
    name: 'About',
    go: async (page) => {
      await to(page, '#/ask', START)
      await press(page.getByRole('button', { name: /^About/ }))
      await page.getByRole('dialog').waitFor()
    },
  },
]
