import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { planPaste } from '../../../src/calc/connector/paste-plan.ts'
import { readPasted } from '../../../src/calc/connector/pasted.ts'
import { COLUMN_LABEL, COLUMNS } from '../../../src/calc/connector/pasted-columns.ts'
import type { Connector } from '../../../src/calc/connector/types.ts'
import type { Line } from '../../../src/calc/types.ts'

const LINES: readonly Line[] = ['l1', 'l2'].map((id) => ({
  id,
  name: id,
  gate: 'unknown',
  trials: [],
  facts: { lineKind: { text: 'can', origin: { by: 'user' } } },
}))

const CONNECTOR: Connector = {
  id: 'k',
  name: 'J1',
  shape: 'ring',
  contacts: [
    { id: '1', type: 'line', lineId: 'l1', leg: 'a', texts: { function: 'Bus A' } },
    { id: '2', type: 'line', lineId: 'l1', leg: 'b', texts: { function: 'Bus B' } },
    { id: '3', type: 'line', lineId: 'l2', texts: {} },
    { id: '4', type: 'line', lineId: 'gone', texts: {} },
    { id: 'A', type: 'ground', texts: {} },
  ],
  shared: {},
  texts: {},
  suppressors: [],
  adjacent: [],
}

/** Scrap of every sort: signs that divide, and words that mean something in some column. */
const SIGNS = ['"', '""', ';', ',', '\t', '\n', '\r', "'", '=', ' ', '\uFEFF', 'a', '1']
const WORDS = [
  'pin',
  'kind',
  'CAN',
  'Bus A',
  'Bus B',
  'TX+',
  'TX-',
  '2',
  '3',
  '4,7 nF',
  '12M',
  '1e999',
  'NaN',
  '__proto__',
  'spare',
]

/** Tables that are nearly right: headings of ours, a few rows, cells of any sort. */
const nearly = fc
  .record({
    headings: fc.subarray([...COLUMNS], { minLength: 1 }),
    rows: fc.array(
      fc.array(fc.constantFrom(...WORDS, 'ground', 'p', 'B', '', '50', '½', 'x'.repeat(30)), { maxLength: 18 }),
      {
        maxLength: 8,
      },
    ),
    divider: fc.constantFrom('\t', ';', ','),
  })
  .map(({ headings, rows, divider }) =>
    [headings.map((column) => COLUMN_LABEL[column]), ...rows].map((cells) => cells.join(divider)).join('\n'),
  )

const scrap = fc.string({ unit: fc.constantFrom(...SIGNS, ...WORDS), maxLength: 60 })

describe('tables pasted by anybody', () => {
  it('takes 20,000 damaged tables as a preview of every row or as sentences, each to its end', () => {
    let [previews, sentences] = [0, 0]
    fc.assert(
      fc.property(fc.oneof(scrap, nearly), fc.boolean(), (text, pairsByName) => {
        const pasted = readPasted(text)
        if (!pasted.ok) {
          sentences += 1
          expect(pasted.message.length).toBeGreaterThan(10)
          return
        }
        let count = 0
        const plan = planPaste({
          pasted,
          connector: CONNECTOR,
          lines: LINES,
          said: new Map(),
          pairsByName,
          newLine: (name) => {
            count += 1
            return { id: `n${count}`, name, gate: 'unknown', trials: [], facts: {} }
          },
        })
        if (!plan.ok) {
          sentences += 1
          expect(plan.refusals.every((sentence) => sentence.length > 10)).toBe(true)
          return
        }
        previews += 1
        expect(plan.rows.map(({ id }) => id)).toEqual(pasted.rows.map(({ cells }) => cells.contact))
        const ids = plan.contacts.map(({ id }) => id)
        expect(new Set(ids).size).toBe(ids.length)
        for (const { id } of CONNECTOR.contacts) expect(ids).toContain(id)
        const lineIds = new Set([...LINES, ...plan.lines].map(({ id }) => id))
        const carried = new Map<string, number>()
        for (const { type, lineId = '' } of plan.contacts) {
          if (type !== 'line') expect(lineId).toBe('')
          else if (lineId !== '' && lineId !== 'gone') expect(lineIds).toContain(lineId)
          if (lineId !== '') carried.set(lineId, (carried.get(lineId) ?? 0) + 1)
        }
        for (const { id } of plan.lines) expect(carried.has(id)).toBe(true)
        for (const many of carried.values()) expect(many).toBeLessThanOrEqual(2)
      }),
      { numRuns: 20_000, seed: 6 },
    )
    // neither side of it is empty
    expect(previews).toBeGreaterThan(1000)
    expect(sentences).toBeGreaterThan(5000)
  })
})
