// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { afterEach, describe, expect, it } from 'vitest'
import { scheduleOf } from '../../src/calc/connector/schedule.ts'
import { type SheetBody, sheetBody } from '../../src/calc/connector/sheet/body.ts'
import type { ContactText } from '../../src/calc/connector/types.ts'
import { atOnce } from '../../src/calc/line/evaluate.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { SAFETY_TEXTS, SHEET_CAUTIONS } from '../../src/reference/safety.ts'
import { internalTexts, LEFT_OUT, supplierCopy } from '../../src/state/supplier-copy.ts'
import { windowHash } from '../../src/state/window-hash.ts'
import type { Complaint } from '../../src/store/complaint.ts'
import { demoComplaint } from '../../src/store/demo.ts'
import { layConnectorSheet } from '../../src/ui/paper/connector-sheet.tsx'
import { connectorOfSize } from '../support/connector-of-size.ts'

const QUESTION = { sentence: 'Which ratio of values fits one plane?', contacts: [] }

function bodyOf(count: number, texts: { readonly [K in ContactText]?: string } = {}): SheetBody {
  const { connector, lines } = connectorOfSize(count)
  const [first, ...others] = connector.contacts
  if (first === undefined) throw new Error('A connector has a contact.')
  const changed = { ...connector, contacts: [{ ...first, texts: { ...first.texts, ...texts } }, ...others] }
  const body = atOnce(sheetBody({ connector: changed, schedule: atOnce(scheduleOf(changed, lines)) }))
  return { ...body, questions: [QUESTION] }
}

const complaint = (): Complaint => ({
  ...demoComplaint(),
  tables: { events: [{ time: 'Tuesday, after rain', seen: 'swings 7 degrees' }] },
})

const paper = () => document.querySelector('.paper')?.textContent ?? ''

function laid(body: SheetBody, story?: Complaint): string {
  const addressOf = (window: Parameters<typeof windowHash>[0]) => windowHash(window, body.connector)
  const undo = layConnectorSheet({ body, addressOf, ...(story && { story: { complaint: story, guide: GUIDE } }) })
  const text = paper()
  undo()
  return text
}

function headingsOf(body: SheetBody): readonly string[] {
  const undo = layConnectorSheet({ body, addressOf: () => '#/check' })
  const found = [...document.querySelectorAll('.paper h2')].map(({ textContent }) => textContent)
  undo()
  return found
}

afterEach(() => document.body.replaceChildren())

describe('the sheet of a connector', () => {
  it('holds the complaint as it was reported, every contact, the cautions, and places for names', () => {
    const body = bodyOf(15)
    const story = complaint()
    const text = laid(body, story)
    for (const said of [story.title, story.aircraft ?? '', ...story.note.split('\n'), 'swings 7 degrees'])
      expect(text).toContain(said)
    for (const row of body.rows)
      for (const said of [row.function, row.kind, row.needs, row.value, row.spread, row.word, row.why])
        expect(text).toContain(said)
    for (const id of SHEET_CAUTIONS) expect(text).toContain(SAFETY_TEXTS[id].text)
    for (const part of [
      'Answers',
      'Tests, with what was read',
      'Parts to build',
      'Windows',
      'Worst case',
      'Not entered',
      'Sources',
    ])
      expect(text).toContain(part)
    for (const name of ['Prepared by', 'Checked by', 'Accepted by (certifying staff)']) expect(text).toContain(name)
    expect(text).toContain(SAFETY_TEXTS.screening.text)
    expect(text).toContain(QUESTION.sentence)
  })

  it('has its name in the head of every page as long as it is laid, whatever was typed', () => {
    const body = bodyOf(15)
    const odd = { ...body, connector: { ...body.connector, name: 'J1 "A"\\\n} x' } }
    const before = document.adoptedStyleSheets.length
    const undo = layConnectorSheet({ body: odd, addressOf: () => '#/check' })
    const rules = [...(document.adoptedStyleSheets.at(-1)?.cssRules ?? [])]
    expect(document.adoptedStyleSheets.length).toBe(before + 1)
    expect(rules.length).toBeLessThanOrEqual(1)
    undo()
    expect(document.adoptedStyleSheets.length).toBe(before)
  })
})

describe('the copy of a supplier', () => {
  it('holds every contact and the open questions, and nothing internal', () => {
    const story = complaint()
    const body = bodyOf(15)
    const own = laid(body, story).toLowerCase()
    const copy = supplierCopy(body, story)
    const text = laid(copy.body).toLowerCase()
    const internal = internalTexts(story, body.connector)
    expect(internal.length).toBeGreaterThan(8)
    for (const one of internal) {
      expect(own, one).toContain(one)
      expect(text, one).not.toContain(one)
    }
    const headings = headingsOf(copy.body)
    expect(headings).toContain('Open questions for the maker')
    for (const part of ['Reported, in the user’s words', 'Answers', 'Tests, with what was read', 'For the next shift'])
      expect(headings).not.toContain(part)
    for (const name of ['Aircraft:', 'Prepared by', 'Checked by', 'Accepted by'])
      expect(text).not.toContain(name.toLowerCase())
    expect(text).toContain(QUESTION.sentence.toLowerCase())
    for (const row of body.rows) expect(text).toContain(row.function.toLowerCase())
    expect(copy.leftOut).toEqual([])
  })

  it('leaves out a text of a contact that holds an internal one, and says where', () => {
    const story = complaint()
    const body = bodyOf(15, {
      function: `Supply of ${story.aircraft?.toUpperCase()}`,
      remark: 'see Audio control unit (invented)',
    })
    const copy = supplierCopy(body, story)
    expect(copy.leftOut).toEqual(['1'])
    expect(copy.body.rows[0]).toMatchObject({ function: LEFT_OUT, remark: LEFT_OUT })
    for (const one of internalTexts(story, body.connector)) expect(laid(copy.body).toLowerCase()).not.toContain(one)
  })
})

describe('the address of a window', () => {
  it('holds the facts of the line and the part that was decided, and names no complaint', () => {
    const { grounds, connector } = bodyOf(15)
    const [window] = grounds.windows
    if (window === undefined) throw new Error('Main supply has a window.')
    const hash = windowHash(window, connector)
    expect(hash).toMatch(/^#\/check\/window\?lineKind=power-28-vdc&/)
    expect(hash).toContain('topology=C')
    expect(decodeURIComponent(hash)).toContain('bondOhm=2 mΩ')
    expect(hash).not.toContain('Main')
  })
})
