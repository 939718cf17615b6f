import 'fake-indexeddb/auto'
import { describe, expect, it } from 'vitest'
import { scheduleOf } from '../../src/calc/connector/schedule.ts'
import { sheetBody } from '../../src/calc/connector/sheet/body.ts'
import { tableFile } from '../../src/calc/connector/sheet/table.ts'
import { sheetWords } from '../../src/calc/connector/sheet/words.ts'
import { atOnce } from '../../src/calc/line/evaluate.ts'
import type { Trial } from '../../src/calc/types.ts'
import { internalTexts, LEFT_OUT, supplierCopy, supplierFile } from '../../src/state/supplier-copy.ts'
import type { Complaint } from '../../src/store/complaint.ts'
import { demoComplaint } from '../../src/store/demo.ts'
import { readFile } from '../../src/store/exchange/file.ts'
import { newComplaint } from '../../src/store/new-complaint.ts'
import { connectorOfSize } from '../support/connector-of-size.ts'

/** A complaint in which every internal text is a word that nothing else is. */
function told() {
  const { connector, lines } = connectorOfSize(37)
  const [first, ...others] = lines
  const [one, ...more] = connector.contacts
  if (first === undefined || one === undefined) throw new Error('There is a first contact with a line.')
  const facts = {
    ...first.facts,
    measuredDb: { text: '64.321 dBµV', origin: { by: 'answer' as const, node: 'qzx-node' } },
    limitDb: { text: '44.123 dBµV', origin: { by: 'user' as const } },
  }
  const { neededDb: _need, ...without } = facts
  const demo = demoComplaint()
  const complaint: Complaint = {
    ...newComplaint({
      title: 'QZX title',
      lines: [{ ...first, facts: without, name: 'Supply of QZX-craft' }, ...others],
      answers: demo.answers,
      events: (demo.events ?? []).map((event, at) => (at === 0 ? { ...event, reading: 'QZX reading' } : event)),
    }),
    aircraft: 'QZX-craft',
    note: 'QZX note, first line\nQZX note, second line\n\n ',
    tables: { events: [{ time: 'QZX time', seen: 'QZX seen' }] },
  }
  const marked = {
    ...connector,
    contacts: [{ ...one, texts: { ...one.texts, function: 'feeds qzx-CRAFT', wire: 'W1 QZX time' } }, ...more],
    texts: { ...connector.texts, equipment: 'QZX box', remark: 'QZX place' },
  }
  const body = atOnce(sheetBody({ connector: marked, schedule: atOnce(scheduleOf(marked, complaint.lines)) }))
  return { body, complaint, connector: marked }
}

describe('what is internal', () => {
  it('is every line of what was typed of the complaint, its equipment and remark, not the label of the connector', () => {
    const { complaint, connector } = told()
    expect([...internalTexts(complaint, connector)].sort()).toEqual(
      [
        'qzx title',
        'qzx-craft',
        'qzx note, first line',
        'qzx note, second line',
        'qzx time',
        'qzx seen',
        'qzx box',
        'qzx place',
        'qzx reading',
      ].sort(),
    )
    expect(internalTexts({ ...complaint, title: 'j1' }, connector)).not.toContain('j1')
  })
})

describe('what a maker gets', () => {
  it('names nothing internal, in no form of it, and says of which contact a text was left out', () => {
    const { body, complaint } = told()
    const copy = supplierCopy(body, complaint)
    const { connector, rows } = copy.body
    const forms = [
      JSON.stringify(copy.body.rows),
      JSON.stringify(copy.body.connector),
      tableFile({ connector, lines: copy.lines, rows }),
      sheetWords(copy.body),
      supplierFile(copy),
    ]
    const whole = JSON.stringify([body, complaint])
    expect(whole.match(/qzx/gi)?.length).toBeGreaterThan(15)
    for (const form of forms) {
      expect(form).not.toMatch(/qzx/i)
      for (const reading of ['64.321', '44.123']) expect(form).not.toContain(reading)
    }
    for (const id of [complaint.id, ...complaint.lines.map((line) => line.id)])
      expect(supplierFile(copy)).not.toContain(id)
    expect(copy.leftOut).toEqual(['1'])
    expect(rows[0]?.function).toBe(LEFT_OUT)
  })

  it('is a file that is read as a design with the same contacts, the need in place of what was measured', () => {
    const { body, complaint } = told()
    const read = readFile(supplierFile(supplierCopy(body, complaint)))
    if (!read.ok) throw new Error(read.message)
    const [design] = read.complaints
    expect(design?.complaint).toMatchObject({ purpose: 'design', title: 'Connector J1', note: '', answers: {} })
    const [connector] = design?.connectors ?? []
    expect(connector?.contacts.map(({ id, type, leg }) => [id, type, leg])).toEqual(
      body.connector.contacts.map(({ id, type, leg }) => [id, type, leg]),
    )
    const lineOfFirst = design?.complaint.lines.find(({ id }) => id === connector?.contacts[0]?.lineId)
    // 64.321 − 44.123 and the 6 dB of margin that stand where nobody entered one
    expect(lineOfFirst?.facts.neededDb?.text).toBe('26.198 dB')
    expect(lineOfFirst?.facts.measuredDb).toBeUndefined()
    const ids = new Set(design?.complaint.lines.map(({ id }) => id))
    for (const { lineId } of connector?.contacts ?? []) if (lineId !== undefined) expect(ids).toContain(lineId)
  })

  it('says nothing of trials', () => {
    const { body, complaint } = told()
    const trial = { id: 'qzx' } as Trial
    const copy = supplierCopy({ ...body, trials: [{ contacts: ['1'], trial }] }, complaint)
    expect(copy.body.trials).toEqual([])
    expect(copy.lines.every(({ trials }) => trials.length === 0)).toBe(true)
  })
})
