/**
 * The browser is killed while somebody types: note, title, triage, a check, a check of a kept line, a contact, the
 * label of its connector; or right after a complaint was deleted. What was typed is there at the next start, but for the last
 * key; what was deleted is gone for good. 12 kills, 100 in the long form (`TORTURE=long`), STILLPIN_KILLS=60 for any other
 * number. A sixth as many while somebody types on in a long note, which the app keeps by what each key changes in it.
 */
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { DIST, startServer } from '../../scripts/static-server.mjs'
import type { Contact } from '../../src/calc/connector/types.ts'
import { newConnector } from '../../src/store/connector.ts'
import { newLine } from '../../src/store/line.ts'
import { newComplaint } from '../../src/store/new-complaint.ts'
import { note, turns } from '../torture/support/table.ts'
import { type Killable, killable } from './support/killable.ts'
import { type Put, putConnector } from './support/put-connector.ts'
import { answerAll, field, heading, labelOf, startStands, TO_A_FILTER } from './support/screen.ts'

const KILLS = Number(process.env['STILLPIN_KILLS'] ?? turns(12, 100))
const LONG_KILLS = Math.ceil(KILLS / 6)
const [SEED, LONG_SEED] = [20261126, 20261127]
const START_MS = 20_000
/** Somebody's whole file of notes. */
const LONG_NOTE = Array.from(
  { length: 4000 },
  (_line, at) => `${at}: buzz on COM 1 at 115 V, 400 Hz, none on battery.\n`,
)
/** Answers given before the triage is cut off. */
const ANSWERS = 5
/** A quick thumb. */
const KEY_MS = 60
/** The longest anybody waits before the phone is gone. */
const LONGEST_WAIT_MS = 90

/** Repeatable chance: the same waits in every run. */
function chance(seed: number): () => number {
  let state = seed
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 2 ** 32
  }
}

let root: string
let server: Awaited<ReturnType<typeof startServer>>
let browser: Killable
let page: Page

beforeAll(async () => {
  root = mkdtempSync(join(tmpdir(), 'stillpin-site-'))
  cpSync(DIST, root, { recursive: true })
  server = await startServer({ root })
  browser = killable()
})
afterAll(async () => {
  await browser.close()
  await server.close()
  rmSync(root, { recursive: true, force: true })
})

// The offline copy is not the matter here, and would take its time at every start.
const at = (hash: string) => `${server.address}?no-sw${hash}`

const open = async (hash: string) => {
  await page.goto('about:blank')
  await page.goto(at(hash))
  await heading(page).waitFor()
}

/** Types key by key, and has the browser killed a moment after the last one. */
async function typeAndKill(text: string, waitMs: number): Promise<void> {
  await page.keyboard.type(text, { delay: KEY_MS })
  await page.waitForTimeout(waitMs)
  await browser.kill()
}

/** One kind of text: where it is typed, and what stands there after the next start. */
type Kind = {
  readonly name: string
  readonly type: (round: number, waitMs: number) => Promise<string>
  readonly read: () => Promise<string>
}

let complaintHash = ''
let keptCheckHash = ''
let connectorHash = ''

const typeInto = async (hash: string, find: () => ReturnType<typeof field>, text: string, waitMs: number) => {
  await open(hash)
  await find().waitFor()
  await find().fill('')
  await find().focus()
  await typeAndKill(text, waitMs)
  return text
}

const inComplaint = (name: 'Title' | 'Note'): Kind => {
  const box = () => page.getByRole('textbox', { name, exact: true })
  return {
    name: name.toLowerCase(),
    type: (round, waitMs) => typeInto(complaintHash, box, `${name} ${round}: µV at 7.3 kHz`, waitMs),
    read: async () => {
      await open(complaintHash)
      return box().inputValue()
    },
  }
}

const inCheck = (name: string, hash: () => string): Kind => ({
  name,
  type: (round, waitMs) => typeInto(hash(), () => field(page, 'measuredDb'), `${60 + (round % 30)}.4821359`, waitMs),
  read: async () => {
    await open(hash())
    return field(page, 'measuredDb').inputValue()
  },
})

/** A text of the connector; what it is stands folded under its contacts. */
const inConnector = (name: string, label: 'Remark' | 'Label', hash: () => string): Kind => {
  const box = () => page.getByRole('textbox', { name: label, exact: true })
  const show = async () => {
    await open(hash())
    await page
      .getByText(label === 'Label' ? 'What it is, more contacts, delete' : 'Wire, pin part, zone, remark')
      .click()
    await box().waitFor()
  }
  return {
    name,
    type: async (round, waitMs) => {
      const text = `${label} ${round}: 4.7 nF beside K–L`
      await show()
      await box().fill('')
      await box().focus()
      await typeAndKill(text, waitMs)
      return text
    },
    read: async () => {
      await show()
      return box().inputValue()
    },
  }
}

const GONE = 'gone'

const TYPED: readonly Kind[] = [
  inCheck('check', () => '#/check/need'),
  inComplaint('Note'),
  inCheck('kept check', () => keptCheckHash),
  inConnector('contact', 'Remark', () => `${connectorHash}/contact/2`),
  inComplaint('Title'),
  inConnector('connector', 'Label', () => connectorHash),
  {
    name: 'triage',
    type: async (_round, waitMs) => {
      await open('#/ask')
      await startStands(page)
      const afresh = page.getByRole('button', { name: 'Start afresh' })
      if ((await afresh.count()) > 0) await afresh.click()
      await open('#/ask/gate-danger')
      const steps = TO_A_FILTER.slice(0, ANSWERS)
      await answerAll(page, steps)
      await page.waitForTimeout(waitMs)
      await browser.kill()
      return steps.map(([node, option]) => labelOf(node, option)).join('')
    },
    read: async () => {
      await open('#/ask')
      const words = await page.getByText(/ far\. Last: /).textContent()
      const last = words?.replace(/^.*Last: /, '') ?? ''
      const labels = TO_A_FILTER.map(([node, option]) => labelOf(node, option))
      return labels.slice(0, labels.lastIndexOf(last) + 1).join('')
    },
  },
]

/** A connector of two contacts, one with a line. */
function oneConnector(): Put {
  const line = newLine('bus')
  const contacts: readonly Contact[] = [
    { id: '1', type: 'spare', texts: {} },
    { id: '2', type: 'line', lineId: line.id, texts: { wire: 'W2-22' } },
  ]
  return {
    complaint: newComplaint({ title: 'A box', purpose: 'design' }),
    connector: { ...newConnector('J1'), contacts },
    lines: [line],
  }
}

/** The complaint that is deleted, and the way to its connector. */
let doomed = { title: '', connectorHash: '' }

/** Deletes a complaint of its own each time; a tap as old as the last key but one is not lost. */
const DELETED: Kind = {
  name: 'delete',
  type: async (round, waitMs) => {
    const title = `Doomed ${round}`
    const put = oneConnector()
    doomed = {
      title,
      connectorHash: await putConnector(page, { ...put, complaint: { ...put.complaint, title } }),
    }
    await open('#/log')
    await page.getByRole('button', { name: `Delete ${title}`, exact: true }).click()
    await page.waitForTimeout(KEY_MS + waitMs)
    await browser.kill()
    return GONE
  },
  read: async () => {
    await open('#/log')
    // the others are there in any case
    await page.getByRole('button', { name: 'Delete A box', exact: true }).waitFor()
    if ((await page.getByRole('button', { name: `Delete ${doomed.title}`, exact: true }).count()) === 0) {
      await open(doomed.connectorHash.replace(/\/connector.*/, ''))
      const noteCount = await page.getByRole('textbox', { name: 'Note', exact: true }).count()
      return noteCount === 0 ? GONE : `${doomed.title} is not listed, and opens`
    }
    return `${doomed.title} is listed`
  },
}

/** How much of what was typed may be missing: the last key, or the last answer. */
const lastOf = (kind: Kind): number => {
  if (kind === DELETED) return 0
  if (kind.name !== 'triage') return 1
  const [node, option] = TO_A_FILTER[ANSWERS - 1] ?? ['', '']
  return labelOf(node, option).length
}

it(`loses nothing but the last key in ${KILLS} kills`, { timeout: START_MS + KILLS * START_MS }, async () => {
  const random = chance(SEED)
  page = await browser.start()
  await open('#/check/need')
  await field(page, 'measuredDb').fill('61')
  await page.getByRole('button', { name: 'Keep in the log' }).click()
  await page.waitForFunction(() => /^#\/log\/.+\/.+\/need$/.test(location.hash))
  keptCheckHash = new URL(page.url()).hash
  complaintHash = keptCheckHash.split('/').slice(0, 3).join('/')
  await open(complaintHash)
  await page.getByRole('textbox', { name: 'Note' }).waitFor()

  connectorHash = await putConnector(page, oneConnector())
  await open(connectorHash)
  await page.getByText('What it is, more contacts, delete').waitFor()

  const kinds = [...TYPED, DELETED]
  const lost: string[] = []
  let lastKeys = 0
  for (let round = 0; round < KILLS; round++) {
    const kind = kinds[round % kinds.length]
    if (kind === undefined) throw new Error('There is no such kind of text.')
    const typed = await kind.type(round, random() * LONGEST_WAIT_MS)
    page = await browser.start()
    const kept = await kind.read()
    const isWhole = kept === typed
    if (!isWhole) lastKeys++
    const enough = typed.slice(0, typed.length - lastOf(kind))
    if (!isWhole && !(typed.startsWith(kept) && kept.startsWith(enough)))
      lost.push(`${kind.name}: typed “${typed}”, kept “${kept}”`)
  }
  console.log(
    `kills: ${KILLS} in ${kinds.map(({ name }) => name).join(', ')}; ${lost.length} lost more than the last key, ${lastKeys} lost that`,
  )
  note({ attack: 'kills of the browser while somebody types', times: KILLS, seed: SEED, bad: lost.length })
  expect(lost).toEqual([])
})

/** A note pasted and typed on at once, or, every other time, typed on in as it stands. */
const typeLong = async (round: number, waitMs: number, keyCount: number): Promise<string> => {
  const box = page.getByRole('textbox', { name: 'Note', exact: true })
  await open(complaintHash)
  // What a paste leaves; the driver itself would put it in line by line, for minutes.
  const pasted = (area: HTMLTextAreaElement, text: string) => {
    area.value = text
    area.dispatchEvent(new InputEvent('input', { bubbles: true, inputType: 'insertFromPaste' }))
  }
  if (round % 2 === 0) await box.evaluate(pasted, [`Round ${round}\n`, ...LONG_NOTE].join(''))
  await box.focus()
  await page.keyboard.press('Control+End')
  const before = await box.inputValue()
  const keys = `Then in rain only, µV at 7.3 kHz in round ${round}`.slice(0, keyCount)
  await typeAndKill(keys, waitMs)
  return before + keys
}

it(`keeps a long note in ${LONG_KILLS} kills`, { timeout: START_MS + LONG_KILLS * START_MS }, async () => {
  const random = chance(LONG_SEED)
  await browser.kill()
  page = await browser.start()
  await open('#/log')
  complaintHash = (await putConnector(page, oneConnector())).replace(/\/connector.*/, '')
  const lost: string[] = []
  for (let round = 0; round < LONG_KILLS; round++) {
    const typed = await typeLong(round, random() * LONGEST_WAIT_MS, 1 + Math.floor(random() * 40))
    expect(typed.length).toBeGreaterThan(200_000)
    page = await browser.start()
    await open(complaintHash)
    const kept = await page.getByRole('textbox', { name: 'Note', exact: true }).inputValue()
    if (kept !== typed && kept !== typed.slice(0, -1))
      lost.push(`typed ${typed.length} letters to “${typed.slice(-60)}”, kept ${kept.length} to “${kept.slice(-60)}”`)
  }
  note({ attack: 'kills while a note of 200 kB is typed on', times: LONG_KILLS, seed: LONG_SEED, bad: lost.length })
  expect(lost).toEqual([])
})
