// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { signal } from '@preact/signals'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { loadingCheck } from '../../src/calc/checks/loading/check.ts'
import { needCheck } from '../../src/calc/checks/need/check.ts'
import { evaluateNow } from '../../src/calc/line/evaluate.ts'
import { sentenceOf } from '../../src/calc/verdict.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { SAFETY_TEXTS } from '../../src/reference/safety.ts'
import { type CheckModel, createCheck } from '../../src/state/check.ts'
import type { Variants } from '../../src/state/variants.ts'
import { demoComplaint } from '../../src/store/demo.ts'
import { demoConnector } from '../../src/store/demo-connector.ts'
import { keptLine, newLine } from '../../src/store/line.ts'
import { layCheckSheet } from '../../src/ui/paper/check-sheet.tsx'
import { layComplaintSheet } from '../../src/ui/paper/complaint-sheet.tsx'
import { cautionLines, sharedWords } from '../../src/ui/parts/shared-words.ts'
import { complaintWords, decided } from '../../src/ui/screens/decided.ts'
import { offerSheet, printNow } from '../../src/ui/shell/offered-sheet.ts'
import { watchPrinting } from '../../src/ui/shell/paper.ts'

function modelOf(
  check: Parameters<typeof createCheck>[0],
  texts: Readonly<Record<string, string>>,
  variants: Variants = {},
): CheckModel {
  const facts = Object.fromEntries(
    check.inputs.flatMap(({ key, fact }) =>
      texts[key] === undefined ? [] : [[fact, { text: texts[key], origin: { by: 'user' as const } }]],
    ),
  )
  return createCheck(
    check,
    { line: signal({ ...newLine('J3-14'), facts }), write: () => undefined, variants },
    () => undefined,
  )
}

const CAN = { lineKind: 'can', bitRateHz: '500k', capacitanceF: '4n7' }
const paper = () => document.querySelector('.paper')?.textContent ?? ''

afterEach(() => {
  document.body.replaceChildren()
})

describe('the sheet of a check', () => {
  it('says the same sentence, cautions and notice as what is shared', () => {
    const model = modelOf(loadingCheck, CAN)
    const result = evaluateNow(loadingCheck, model.fields.value)
    if (!result.ok) throw new Error('CAN with 4.7 nF has an answer.')
    expect(cautionLines(result.cautions).length).toBeGreaterThan(0)
    const words = sharedWords(loadingCheck, result)
    expect(words.split('\n')[0]).toBe(sentenceOf(result))
    const undo = layCheckSheet(model)
    const sheet = paper()
    for (const line of words.split('\n')) expect(sheet).toContain(line.replace(/^Caution: /, ''))
    expect(sheet).toContain(SAFETY_TEXTS.screening.text)
    undo()
    expect(document.querySelector('.paper')).toBeNull()
    expect(document.documentElement.className).not.toContain('has-paper')
    model.dispose()
  })

  it('holds what was typed and what it was read as, marks what was assumed, and names what nobody entered', () => {
    const model = modelOf(loadingCheck, CAN)
    layCheckSheet(model)
    const rows = [...document.querySelectorAll('.paper .inputs .row')].map((row) => row.textContent ?? '')
    expect(rows.find((row) => row.startsWith('Capacitance per leg'))).toContain('4n7 = 4.7\u00a0nF')
    expect(rows.find((row) => row.startsWith('Bit rate'))).toContain('500\u00a0kbit/s')
    const assumed = [...document.querySelectorAll('.paper p.row')].map((row) => row.textContent ?? '')
    expect(assumed.find((row) => row.startsWith('Assumed in your favour:'))).toMatch(
      /Suppressor 0.F \(no suppressor\)/u,
    )
    expect(paper()).toMatch(/Not entered: .*Driver edge/)
    model.dispose()
  })

  it('tells why there is no answer, with every input all the same', () => {
    const model = modelOf(needCheck, { measuredDb: '12 furlongs', limitDb: '50 dB' })
    layCheckSheet(model)
    expect(paper()).toMatch(/No answer\. .*12 furlongs/)
    expect(paper()).toMatch(/refused: /)
    expect(paper()).toContain('50 dB')
    model.dispose()
  })
})

describe('what a check was compared with', () => {
  it('stands on its sheet: the inputs that differ, and the sentence each comes to', () => {
    const model = modelOf(loadingCheck, CAN, { b: { capacitanceF: '47p' }, c: { bitRateHz: '' } })
    layCheckSheet(model)
    const rows = [...document.querySelectorAll('.paper .row')].map((row) => row.textContent ?? '')
    expect(rows.find((row) => row.startsWith('B, '))).toMatch(/^B, Capacitance per leg 47.pF: \S/u)
    expect(rows.find((row) => row.startsWith('C, '))).toMatch(/^C, Bit rate not entered: \S/)
    model.dispose()
  })
})

describe('the sheet of a complaint', () => {
  it('holds the tables that were filled in, and takes nothing for proof that differed', () => {
    const demo = demoComplaint()
    const tables = { events: [{ time: 'Tuesday, after rain', seen: 'swings 7 degrees' }] }
    const events = (demo.events ?? []).map((event) =>
      event.evidence === 'cable-trial' ? { ...event, repeats: 'differed' as const } : event,
    )
    layComplaintSheet({ complaint: { ...demo, events, tables }, guide: GUIDE, address: undefined })
    expect(paper()).toContain('Events in flight')
    expect(paper()).toContain('Tuesday, after rain')
    expect(paper()).toContain('swings 7 degrees')
    expect(paper()).toContain('repeated, it differed: counts as not known')
  })

  it('says the same decision, steps and cautions as what is shared of it', () => {
    const demo = demoComplaint()
    const words = complaintWords(demo, GUIDE)
    layComplaintSheet({ complaint: demo, guide: GUIDE, address: undefined })
    const sheet = paper()
    const lines = words.split('\n').filter((line) => line !== '')
    expect(lines.length).toBeGreaterThan(12)
    for (const line of lines) expect(sheet).toContain(line.replace(/^(Caution: |\d\. )/, ''))
    expect(words).toContain(decided(demo, GUIDE)?.sentence)
    expect(document.querySelector('.paper .sentence')?.textContent).toBe(decided(demo, GUIDE)?.sentence)
  })

  it('holds readings, repeats and what differed beside the answers', () => {
    const demo = demoComplaint()
    const [last] = demo.events?.filter(({ evidence }) => evidence === 'bond') ?? []
    const events = (demo.events ?? []).map((event) =>
      event === last ? { ...event, reading: '1.7 milliohm at stud 4', repeats: 'agreed' as const } : event,
    )
    layComplaintSheet({ complaint: { ...demo, events }, guide: GUIDE, address: undefined })
    expect(last).toBeDefined()
    expect(paper()).toMatch(/1\.7 milliohm at stud 4; three times, agreed/)
    expect(paper()).toContain(demo.title)
    expect(document.querySelector('.paper .code')).toBeNull()
    expect(document.querySelector('.paper .as-typed')?.textContent).toBe(demo.note)
  })
})

describe('printing', () => {
  beforeEach(() => {
    watchPrinting()
  })

  it('of a complaint names its connectors and leaves the lines their contacts carry to sheets of their own', () => {
    const demo = demoComplaint()
    const { connector, lines } = demoConnector()
    const all = { ...demo, lines: [...demo.lines, ...lines.map((line, at) => keptLine(line, demo.id, at + 1))] }
    layComplaintSheet({ complaint: all, guide: GUIDE, address: undefined, connectors: [connector] })
    expect(paper()).toContain('J1: 37 contacts, on a sheet of its own')
    expect(paper()).toContain(`Line: ${demo.lines[0]?.name}`)
    expect(paper()).not.toContain('Line: CAN, cabin lanterns')
  })

  it('lays the sheet out for the time of the print, and opens the folds of a screen that has none', async () => {
    const print = vi.fn(() => {
      dispatchEvent(new Event('beforeprint'))
      expect(document.body.textContent).toContain('the sheet')
      dispatchEvent(new Event('afterprint'))
    })
    vi.stubGlobal('print', print)
    const withdraw = offerSheet(
      Promise.resolve(() => {
        const sheet = document.createElement('p')
        sheet.textContent = 'the sheet'
        document.body.append(sheet)
        return () => sheet.remove()
      }),
    )
    await printNow()
    expect(print).toHaveBeenCalledOnce()
    expect(document.body.textContent).not.toContain('the sheet')
    withdraw()
    document.body.innerHTML = '<main><details class="fold"><p>why</p></details></main>'
    dispatchEvent(new Event('beforeprint'))
    expect(document.querySelector('details')?.open).toBe(true)
    dispatchEvent(new Event('afterprint'))
    expect(document.querySelector('details')?.open).toBe(false)
    vi.unstubAllGlobals()
  })
})
