/** The sheet of a connector as a printer gets it, page by page, with few, usual and many contacts; its copies and its files. */
import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { planPaste } from '../../src/calc/connector/paste-plan.ts'
import { readPasted } from '../../src/calc/connector/pasted.ts'
import { scheduleOf } from '../../src/calc/connector/schedule.ts'
import type { Connector } from '../../src/calc/connector/types.ts'
import { strikeAnswer } from '../../src/calc/connector/whole/strike/answer.ts'
import { strikeFindings } from '../../src/calc/connector/whole/strike/findings.ts'
import { strikeQuestion } from '../../src/calc/connector/whole/strike/question.ts'
import { atOnce } from '../../src/calc/line/evaluate.ts'
import type { Line } from '../../src/calc/types.ts'
import { SAFETY_TEXTS, SHEET_CAUTIONS } from '../../src/reference/safety.ts'
import { internalTexts } from '../../src/state/supplier-copy.ts'
import { demoComplaint } from '../../src/store/demo.ts'
import { readFile } from '../../src/store/exchange/file.ts'
import { newLine } from '../../src/store/line.ts'
import { connectorOfSize } from '../support/connector-of-size.ts'
import { readCode } from '../support/read-code.ts'
import { type PdfPage, readPdf, squeeze } from './support/pdf.ts'
import { cutAtRight, FORMATS, headsOf, notBlackOnWhite, printed, sheetOf, small, together } from './support/printed.ts'
import { putConnector } from './support/put-connector.ts'
import { CLEAN, DESK, openSite, PHONE, type Site, type Visit } from './support/site.ts'

let site: Site
let visit: Visit
let page: Page

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
beforeEach(async () => {
  visit = await site.visit({ serviceWorkers: 'block', acceptDownloads: true, viewport: DESK })
  page = visit.page
})
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

const story = demoComplaint()

/** The screen of the sheet, once every contact is worked out, with the power classes of its suppressors. */
async function openSheet(connector: Connector, lines: readonly Line[]): Promise<void> {
  await beginSheet(connector, lines)
  await page.getByRole('button', { name: 'Print the sheet' }).waitFor({ timeout: 60_000 })
  await page.locator('section[aria-label="The sheet"][aria-busy=false]').waitFor({ timeout: 60_000 })
}

async function beginSheet(connector: Connector, lines: readonly Line[]): Promise<void> {
  await page.goto(visit.at('#/log'))
  await page.getByRole('button', { name: /demo/i }).waitFor()
  const hash = await putConnector(page, { complaint: { ...story, isDemo: false }, connector, lines })
  await page.goto('about:blank')
  await page.goto(visit.at(`${hash}/trade`))
}

type Pieces = {
  /** the contacts of the table, each with the text of its rows */
  readonly contacts: readonly { readonly id: string; readonly text: string }[]
  /** rows, and windows with all their words: what must not be parted, in parts */
  readonly whole: readonly (readonly string[])[]
}

/** What the sheet holds, read from the page in one go: laying it out takes its time. */
const piecesOn = (): Promise<Pieces> =>
  sheetOf(page, '.paper', ([paper]) => {
    const all = (selector: string) => [...(paper?.querySelectorAll(selector) ?? [])]
    const text = (one: Element | null) => one?.textContent ?? ''
    const isShown = (one: Element) => one.closest('details, .window .legend') === null
    return {
      contacts: all('.contacts tbody').map((body) => ({ id: text(body.querySelector('th')), text: text(body) })),
      whole: all('.row, li, .sheet-foot p, .finding, .window')
        .filter(isShown)
        .map((one) => (one.matches('.window') ? [...one.querySelectorAll('h3, p')].filter(isShown) : [one]))
        .map((parts) => parts.map(text)),
    }
  })

const HEADINGS = squeeze('Contact Function Kind Needs Topology Value Suppressor Placement Verdict')

describe.each([15, 37, 128])('%i contacts', (count) => {
  it('stand whole under their headings on every page, with the name of the connector, nothing cut', async () => {
    const { connector, lines } = connectorOfSize(count)
    await openSheet(connector, lines)
    const { contacts, whole } = await piecesOn()
    expect(contacts.map(({ id }) => id)).toEqual(connector.contacts.map(({ id }) => id))
    expect(whole.length).toBeGreaterThan(20)
    for (const format of FORMATS) {
      const pages = await readPdf(await page.pdf({ format }))
      const holds = ({ squeezed }: PdfPage, parts: readonly string[]) => parts.every((part) => squeezed.includes(part))
      const placeOf = (parts: readonly string[]) => {
        const wanted = parts.map(squeeze)
        return pages.findIndex((one) => holds(one, wanted))
      }
      const places = contacts.map(({ text }) => placeOf([text]))
      expect(
        contacts.filter((_, i) => places[i] === -1).map(({ id }) => id),
        `cut on ${format}`,
      ).toEqual([])
      for (const place of new Set(places)) expect(pages[place]?.squeezed, `page ${place + 1}`).toContain(HEADINGS)
      const parted = whole.filter((parts) => placeOf(parts) === -1).map(([first]) => first?.slice(0, 60))
      expect(parted, format).toEqual([])
      for (const head of headsOf(pages)) expect(head).toContain('Contact schedule of J1')
      expect(small(pages), format).toEqual([])
      expect(cutAtRight(pages), format).toEqual([])
      const text = together(pages)
      for (const id of SHEET_CAUTIONS) expect(text).toContain(squeeze(SAFETY_TEXTS[id].text))
      for (const said of [story.title, ...story.note.split('\n'), story.aircraft ?? '', 'Prepared by', 'Accepted by'])
        expect(text).toContain(squeeze(said))
      expect(text).toMatch(/Printed\d{4}-\d\d-\d\dbyStillpin\d/)
      expect(text).toContain(squeeze(SAFETY_TEXTS.screening.text))
    }
  }, 120_000)
})

it('can be stopped on its way, and worked out after all', async () => {
  const { connector, lines } = connectorOfSize(128)
  await beginSheet(connector, lines)
  await page.getByRole('button', { name: 'Stop' }).click()
  await page.getByText('Stopped: there is no sheet').waitFor()
  expect(await page.getByRole('button', { name: 'Print the sheet' }).count()).toBe(0)
  await page.getByRole('button', { name: 'Work it out' }).click()
  await page.getByRole('button', { name: 'Print the sheet' }).waitFor({ timeout: 60_000 })
}, 120_000)

it('says what the strike of all contacts together came to, once it is worked out', async () => {
  const { connector, lines } = connectorOfSize(3)
  const struck = { ...connector, texts: { ...connector.texts, strikeWaveform: 'wf4', strikeLevel: '3' } }
  const decided = atOnce(scheduleOf(struck, lines)).rows.map((row) => row.decided)
  const asked = strikeQuestion(struck, decided)
  if (asked.is === 'missing') throw new Error(asked.sentence)
  const findings = strikeFindings(asked.question, atOnce(strikeAnswer(asked.question)))
  expect(findings.length).toBeGreaterThan(0)
  await openSheet(struck, lines)
  await page.getByText('Striking all contacts together').waitFor({ state: 'detached', timeout: 60_000 })
  const text = together(await printed(page, 'A4'))
  for (const { sentence } of findings) expect(text).toContain(squeeze(sentence))
  expect(text).not.toContain(squeeze('All contacts struck together:'))
})

it.each(['dark', 'night', 'glare'])('is black on white from the %s theme', async (theme) => {
  const { connector, lines } = connectorOfSize(15)
  await openSheet(connector, lines)
  await page.emulateMedia({ colorScheme: theme === 'glare' ? 'light' : 'dark', media: 'print' })
  await page.evaluate((value) => {
    document.documentElement.dataset['theme'] = value
  }, theme)
  expect(await notBlackOnWhite(page)).toEqual([])
})

describe('the supplier’s copy', () => {
  it('is printed when it is asked for, holds nothing internal, and leaves the sheet for the next print', async () => {
    const { connector, lines } = connectorOfSize(15)
    await openSheet(connector, lines)
    await page.evaluate(() => {
      window.print = () => document.body.setAttribute('data-asked', 'print')
    })
    await page.getByRole('button', { name: 'Print the supplier’s copy' }).click()
    await page.locator('body[data-asked]').waitFor()
    const pages = await readPdf(await page.pdf({ format: 'A4' }))
    const text = together(pages).toLowerCase()
    for (const head of headsOf(pages)) expect(head).toContain('supplier’s copy')
    for (const one of internalTexts(story, connector)) expect(text, one).not.toContain(squeeze(one))
    for (const { texts } of connector.contacts) expect(text).toContain(squeeze(texts.function ?? '').toLowerCase())
    expect(together(await printed(page, 'A4'))).toContain(squeeze(story.title))
  })
})

describe('the code beside a window', () => {
  const codes = () =>
    sheetOf(page, '.paper .window .code svg', (found) =>
      found.map((svg) => ({
        path: svg.querySelector('path')?.getAttribute('d') ?? '',
        modules: Number(svg.getAttribute('viewBox')?.split(' ')[2]),
      })),
    )

  it('opens the check of its line with the facts it rests on', async () => {
    const { connector, lines } = connectorOfSize(15)
    await openSheet(connector, lines)
    const found = await codes()
    const addresses = found.map(({ path, modules }) => readCode(path, modules))
    expect(addresses.length).toBeGreaterThan(4)
    for (const address of addresses) expect(address).toMatch(/#\/check\/window\?lineKind=/)
    const sentences = await sheetOf(page, '.paper .window', (windows) =>
      windows.map((one) => one.querySelector('p')?.textContent ?? ''),
    )
    const at = sentences.findIndex((sentence) => sentence.includes('yes'))
    await page.goto('about:blank')
    await page.goto(addresses[at] ?? '')
    await page.locator('output#verdict[data-verdict="ok"]').waitFor()
    expect(await page.locator('.sentence').first().textContent()).toBe(sentences[at])
  })

  it('is shown on the screen of a desk too, for a phone to read', async () => {
    const { connector, lines } = connectorOfSize(3)
    await openSheet(connector, lines)
    await page.getByLabel('Which drawing').selectOption({ label: 'Code, contact 3' })
    const shown = page.locator('main .code svg')
    const path = (await shown.locator('path').getAttribute('d')) ?? ''
    const modules = Number((await shown.getAttribute('viewBox'))?.split(' ')[2])
    expect(readCode(path, modules)).toMatch(/#\/check\/window\?lineKind=discrete-ground&/)
  })

  it('is left out with a word where the address is longer than 800 characters', async () => {
    const { connector, lines } = connectorOfSize(1)
    const many = Array.from({ length: 90 }, (_, index) => `${index + 1}.25 MHz`).join('; ')
    const [line] = lines
    if (line === undefined) throw new Error('The first contact carries a line.')
    await openSheet(connector, [{ ...line, facts: { ...line.facts, noiseHz: { text: many, origin: { by: 'user' } } } }])
    expect(await codes()).toEqual([])
    expect(together(await printed(page, 'A4'))).toMatch(/Nocode:theaddresshas\d+characters/)
  })
})

describe('files', () => {
  const saved = async (name: RegExp | string) => {
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name }).click()])
    return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) }
  }

  it('gives the table that is read back as the same contacts', async () => {
    const { connector, lines } = connectorOfSize(37)
    await openSheet(connector, lines)
    const { name, bytes } = await saved('Save table (CSV)')
    expect(name).toBe('J1-contacts.csv')
    const pasted = readPasted(bytes.toString('utf8'))
    if (!pasted.ok) throw new Error(pasted.message)
    const plan = planPaste({ pasted, said: new Map(), connector, lines, pairsByName: false, newLine })
    expect(plan.ok && plan.rows.filter(({ state }) => state !== 'same').map(({ id }) => id)).toEqual(['14', '28'])
    const supplier = await saved('Save supplier’s table (CSV)')
    const text = supplier.bytes.toString('utf8').toLowerCase()
    for (const one of internalTexts(story, connector)) expect(text, one).not.toContain(one)
  })

  it('gives the complaint and the supplier’s copy as files that are brought in again', async () => {
    const { connector, lines } = connectorOfSize(15)
    await openSheet(connector, lines)
    const own = await saved('Save complaint (JSON)')
    const whole = readFile(own.bytes.toString('utf8'))
    expect(whole.ok && whole.complaints[0]?.connectors[0]?.contacts).toEqual(connector.contacts)
    const supplier = await saved('Save supplier’s file (JSON)')
    expect(supplier.name).toBe('J1-supplier.stillpin.json')
    const text = supplier.bytes.toString('utf8')
    expect(readFile(text).ok).toBe(true)
    for (const one of internalTexts(story, connector)) expect(text.toLowerCase(), one).not.toContain(one)
  })

  it('comes back from its file as it was, after it was deleted, and only once it was seen what comes', async () => {
    const { connector, lines } = connectorOfSize(15)
    await openSheet(connector, lines)
    const first = await saved('Save complaint (JSON)')
    await page.goto(visit.at('#/log'))
    await page.getByRole('button', { name: `Delete ${story.title}` }).click()
    await page.getByText('Bring in a file', { exact: false }).first().click()
    const file = { name: first.name, mimeType: 'application/json', buffer: first.bytes }
    await page.locator('input[type=file]').setInputFiles(file)
    await page.getByRole('heading', { name: 'What would change' }).waitFor()
    expect(await page.getByRole('link', { name: story.title }).count()).toBe(0)
    await page.getByRole('button', { name: 'Bring it in' }).click()
    await page.getByRole('link', { name: story.title }).click()
    await page.getByRole('link', { name: /J1/ }).first().click()
    await page.getByRole('link', { name: 'Sheet' }).click()
    const second = await saved('Save complaint (JSON)')
    expect(second.bytes.toString('utf8')).toBe(first.bytes.toString('utf8'))
  })

  it.each([
    ['light', PHONE],
    ['dark', DESK],
  ] as const)('gives drawings that stand alone, in the colours of paper: %s', async (colorScheme, viewport) => {
    await page.emulateMedia({ colorScheme })
    await page.setViewportSize(viewport)
    const { connector, lines } = connectorOfSize(15)
    await openSheet(connector, lines)
    const face = (await saved('Save as SVG')).bytes.toString('utf8')
    for (const { id } of connector.contacts) expect(face).toContain(`>${id}</text>`)
    await page.getByLabel('Which drawing').selectOption({ label: 'Window, contact 1' })
    const { name, bytes } = await saved('Save as SVG')
    expect(name).toMatch(/^J1-Window-contact-1\.svg$/)
    const svg = bytes.toString('utf8')
    expect(svg).toContain('xmlns="http://www.w3.org/2000/svg"')
    expect(svg).not.toMatch(/class=|style=|var\(|currentColor|href=|url\((?!["']?#)/)
    expect(svg).toContain('too small for the need')
    const colours = [...svg.matchAll(/(?:fill|stroke)="rgb\((\d+), (\d+), (\d+)\)"/g)]
    expect(colours.length).toBeGreaterThan(10)
    for (const [, red, green, blue] of colours) expect([red, green]).toEqual([green, blue])
    const png = (await saved('Save as PNG')).bytes
    expect(png.subarray(1, 4).toString('latin1')).toBe('PNG')
    const [width, height] = /viewBox="0 0 (\d+) (\d+)"/.exec(svg)?.slice(1).map(Number) ?? []
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([3 * (width ?? 0), 3 * (height ?? 0)])
  })
})
