/** What a printer gets: every sheet is printed on A4 and Letter, and its text is read back. */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { RULES_EDITION } from '../../src/calc/edition.ts'
import { evaluateNow } from '../../src/calc/line/evaluate.ts'
import { readFields } from '../../src/calc/line/fields.ts'
import { checkById } from '../../src/calc/registry.ts'
import { sentenceOf } from '../../src/calc/verdict.ts'
import { SAFETY_TEXTS } from '../../src/reference/safety.ts'
import { demoComplaint } from '../../src/store/demo.ts'
import { assumedText } from '../../src/ui/parts/figure.ts'
import { readCode } from '../support/read-code.ts'
import { type PdfPage, squeeze } from './support/pdf.ts'
import { cutRows, FORMATS, notBlackOnWhite, overEdge, printed, sheetOf, small, together } from './support/printed.ts'
import { labelOf, settled, titleOf } from './support/screen.ts'
import { CLEAN, openSite, type Site, type Visit } from './support/site.ts'
import { WORKED, workedHash } from './support/worked-checks.ts'

/** Words of what can only be touched: no line of a sheet is one of them. */
const BUTTON_WORDS: ReadonlySet<string> = new Set(
  ['Share', 'Print', 'Delete', 'Keep in the log', 'Change the figures', 'Open Ask', 'Read a point', 'Undo'].map(
    squeeze,
  ),
)

let site: Site
let visit: Visit
let page: Page

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
beforeEach(async () => {
  visit = await site.visit({ serviceWorkers: 'block' })
  page = visit.page
})
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

const everySheet = (pages: readonly PdfPage[]) => {
  const text = together(pages)
  expect(pages.flatMap(({ words }) => words).filter((word) => BUTTON_WORDS.has(squeeze(word.text)))).toEqual([])
  for (const touched of ['Take these facts to', 'as a table', 'Go on with the triage'])
    expect(text).not.toContain(squeeze(touched))
  expect(text).toContain(squeeze(SAFETY_TEXTS.screening.text))
  expect(text).toContain(squeeze(`edition ${RULES_EDITION} of the rules`))
  expect(text).toMatch(/Printed\d{4}-\d\d-\d\dbyStillpin\d/)
  expect(text).toMatch(/NameDateSignature/)
}

const MORE = {
  'window on ARINC 429':
    '#/check/window?lineKind=arinc-429-high&frequencyHz=12M;30 MHz&neededDb=30&sourceOhm=50&loadOhm=8k&inductanceH=10u&toleranceFrac=-20/%2B10 %25&existingF=120 p',
  'loading on CAN': '#/check/loading?lineKind=can&bitRateHz=500k&capacitanceF=4n7&suppressorF=0.1 nF',
  'a refused filter': '#/check/filter?capacitanceF=12 furlongs&frequencyHz=10 V',
} as const
const SHEETS: Readonly<Record<string, string>> = {
  ...Object.fromEntries(Object.keys(WORKED).map((id) => [`${id}, worked`, workedHash(id)])),
  ...MORE,
}

describe.each(Object.entries(SHEETS))('%s', (_, hash) => {
  it('stands on at most two pages with every input, from 8 pt up, no row cut', async () => {
    await page.goto(visit.at(hash))
    await settled(page)
    const query = new URLSearchParams(hash.slice(hash.indexOf('?') + 1).replaceAll('+', '%2B'))
    const check = checkById(hash.split('/')[2]?.split('?')[0] ?? '')
    if (check === undefined) throw new Error(`No check at ${hash}.`)
    const fields = readFields(check, Object.fromEntries(query))
    const result = evaluateNow(check, fields)
    const sentences = result.ok ? [sentenceOf(result)] : result.issues.map(({ message }) => message)
    for (const format of FORMATS) {
      const pages = await printed(page, format)
      const text = together(pages)
      expect(pages.length, format).toBeLessThanOrEqual(2)
      for (const { input, text: typed, value } of fields) {
        expect(text, input.key).toContain(squeeze(input.label))
        const { type } = input
        const said = type.is === 'choice' ? type.options.find((option) => option.value === value)?.label : typed
        if (type.is !== 'flag') expect(text, input.key).toContain(squeeze(said ?? typed))
      }
      for (const field of fields) {
        if (field.assumed === undefined) continue
        const heading = squeeze(field.assumed.favourable ? 'Assumed in your favour:' : 'Assumed:')
        const said = squeeze(`${field.input.label} ${assumedText(field)} (${field.assumed.why})`)
        expect(text.slice(text.lastIndexOf(heading)), field.key).toContain(said)
      }
      for (const sentence of sentences) expect(text).toContain(squeeze(sentence))
      everySheet(pages)
      expect(small(pages), format).toEqual([])
      expect(overEdge(pages), format).toEqual([])
      expect(await cutRows(page, pages), format).toEqual([])
    }
  })
})

describe('the code beside the head', () => {
  const decoded = () =>
    sheetOf(page, '.paper .code svg', ([svg]) => ({
      path: svg?.querySelector('path')?.getAttribute('d') ?? '',
      modules: Number(svg?.getAttribute('viewBox')?.split(' ')[2]),
    })).then(({ path, modules }) => readCode(path, modules))

  it('leads to the check with all it rests on', async () => {
    await page.goto(visit.at(workedHash('loading')))
    await settled(page)
    const address = await decoded()
    expect(address).toContain('#/check/loading?lineKind=arinc-429-high&capacitanceF=2n')
    await page.goto('about:blank')
    await page.goto(address ?? '')
    await settled(page)
    expect(await decoded()).toBe(address)
  })

  it('is left out with a word where the address is too long', async () => {
    const many = Array.from({ length: 90 }, (_, index) => `${index + 1}.25 MHz`).join('; ')
    await page.goto(visit.at(`#/check/filter?topology=C&capacitanceF=10n&sourceOhm=50&loadOhm=50&frequencyHz=${many}`))
    await settled(page)
    const text = together(await printed(page, 'A4'))
    expect(text).toMatch(/Nocode:theaddresshas\d+characters/)
    expect(text).toContain('90.25MHz')
  })
})

describe('a complaint', () => {
  it('is printed in full: title, aircraft, words, answers, tests, reason, steps, and its checks with their figures', async () => {
    await page.goto(visit.at('#/log'))
    await page.getByRole('button', { name: /demo/i }).click()
    await page.getByRole('textbox', { name: 'Note' }).waitFor()
    await page.getByText('Hand-over for the next shift').waitFor()
    const { title, aircraft = '', note, answers, lines } = demoComplaint()
    for (const format of FORMATS) {
      const pages = await printed(page, format)
      const text = together(pages)
      for (const said of [title, `Aircraft: ${aircraft}`, ...note.split('\n'), lines[0]?.name ?? ''])
        expect(text).toContain(squeeze(said))
      for (const [node, option] of Object.entries(answers)) {
        if (node === 'kind') continue
        expect(text, node).toContain(squeeze(titleOf(node)))
        expect(text, node).toContain(squeeze(labelOf(node, option)))
      }
      for (const fact of Object.values(lines[0]?.facts ?? {}))
        if (fact?.text !== 'synchro') expect(text).toContain(squeeze(fact?.text ?? ''))
      for (const part of ['Do now, in this order', 'Because of these answers', 'Tests, with what was read'])
        expect(text).toContain(squeeze(part))
      expect(text).toMatch(/Check:Need.*20dB/)
      expect(text).toMatch(/Check:Window.*Proposed,onecapacitorasmarked/)
      everySheet(pages)
      expect(small(pages), format).toEqual([])
      expect(await cutRows(page, pages), format).toEqual([])
    }
  })

  it('leaves a line to write the aircraft on where none is typed', async () => {
    await page.goto(visit.at('#/log'))
    await page.getByRole('button', { name: /demo/i }).click()
    await page.getByRole('textbox', { name: 'Aircraft' }).fill('')
    await page.getByText('Hand-over for the next shift').waitFor()
    expect(together(await printed(page, 'A4'))).toContain('Aircraft:typeandregistration')
  })
})

describe('in every theme', () => {
  it.each(['day', 'dark', 'night', 'glare'])('%s prints black on white', async (theme) => {
    await page.emulateMedia({ colorScheme: theme === 'day' ? 'light' : 'dark', media: 'print' })
    await page.goto(visit.at(workedHash('surge')))
    await settled(page)
    await page.evaluate((value) => {
      document.documentElement.dataset['theme'] = value
    }, theme)
    expect(await notBlackOnWhite(page)).toEqual([])
  })
})
