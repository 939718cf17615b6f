import { describe, expect, it } from 'vitest'
import { meaningOfWord } from '../../../../src/calc/connector/kind-words.ts'
import { planPaste } from '../../../../src/calc/connector/paste-plan.ts'
import { readPasted } from '../../../../src/calc/connector/pasted.ts'
import { COLUMNS } from '../../../../src/calc/connector/pasted-columns.ts'
import { FACT_COLUMNS, FACT_OF_COLUMN } from '../../../../src/calc/connector/pasted-facts.ts'
import { scheduleOf } from '../../../../src/calc/connector/schedule.ts'
import { sheetRow } from '../../../../src/calc/connector/sheet/rows.ts'
import { tableFile } from '../../../../src/calc/connector/sheet/table.ts'
import { readTable } from '../../../../src/calc/connector/table-text.ts'
import type { Connector, Contact } from '../../../../src/calc/connector/types.ts'
import { atOnce } from '../../../../src/calc/line/evaluate.ts'
import type { FactKey, Line } from '../../../../src/calc/types.ts'
import { LINE_KINDS } from '../../../../src/reference/line-kinds.ts'
import { connectorOfSize } from '../../../support/connector-of-size.ts'
import fc from '../../../support/property.ts'
import { connectorOf, lineOf } from '../some-connector.ts'

const fileOf = (connector: Connector, lines: readonly Line[]): string => {
  const { rows } = atOnce(scheduleOf(connector, lines))
  return tableFile({ connector, lines, rows: rows.map((row) => sheetRow(row)) })
}

function planned(text: string, connector: Connector, lines: readonly Line[]) {
  const pasted = readPasted(text)
  if (!pasted.ok) throw new Error(pasted.message)
  let count = 0
  const newLine = (name: string): Line => ({ ...lineOf(`new-${++count}`, {}, 'unknown'), name })
  const plan = planPaste({ pasted, said: new Map(), connector, lines, pairsByName: false, newLine })
  if (!plan.ok) throw new Error(plan.refusals.join('\n'))
  return plan
}

/** A contact and what a table can hold of its line, without the ids that are made anew. */
function seen({ contacts }: Pick<Connector, 'contacts'>, lines: readonly Line[]) {
  return contacts.map(({ id, type, leg, lineId, texts }) => {
    const facts = lines.find((line) => line.id === lineId)?.facts
    const keys: readonly FactKey[] = ['lineKind', ...FACT_COLUMNS.map((column) => FACT_OF_COLUMN[column])]
    return {
      id,
      type,
      leg,
      texts,
      mates: contacts.filter((other) => lineId !== undefined && other.lineId === lineId).map((other) => other.id),
      facts: Object.fromEntries(keys.map((key) => [key, facts?.[key]?.text ?? ''])),
    }
  })
}

const text = fc.oneof(
  fc.string({ minLength: 1, maxLength: 12 }).filter((one) => one !== '__proto__'),
  fc.constantFrom(
    '=SUM(A1)',
    '+28 V',
    '-15 V',
    '@x',
    "'quoted",
    '"',
    'a;b',
    'a,b',
    'a\tb',
    'two\nlines',
    ' blank ',
    '＝1',
    'µ Ω',
  ),
)
const textsOf = (zone: boolean): fc.Arbitrary<Contact['texts']> =>
  fc.record(
    {
      function: text.filter((one) => meaningOfWord(one) === undefined),
      wire: text,
      pin: text,
      remark: text,
      ...(zone
        ? { zone: fc.constantFrom('pressurised', 'unpressurised'), phase: fc.constantFrom('A', 'B', 'C', 'neutral') }
        : {}),
    },
    { requiredKeys: [] },
  )
const PAIRED = new Set(LINE_KINDS.filter(({ isPair }) => isPair).map(({ id }) => id))
const factsOf = fc.record(
  {
    noiseHz: fc.constantFrom('10M', '118 MHz; 137 MHz', '4,7 kHz'),
    neededDb: fc.constantFrom('20', '36 dB', '=2*10'),
    noiseSourceOhm: fc.constantFrom('50', '1;10;50;150'),
    noiseLoadOhm: fc.constantFrom('75', '1k5'),
    existingF: fc.constantFrom('0', '4n7', '120 pF'),
    busMaxV: fc.constantFrom('32.2', '180 V'),
  },
  { requiredKeys: [] },
)
/** What stands on one place of the insert, or on two. */
const carried = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record({
      is: fc.constant('line' as const),
      kind: fc.constantFrom(...LINE_KINDS.map(({ id }) => id)),
      facts: factsOf,
      a: textsOf(true),
      b: textsOf(false),
      first: fc.constantFrom('a' as const, 'b' as const),
      isWhole: fc.boolean(),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      is: fc.constantFrom('ground' as const, 'spare' as const, 'feed-through' as const),
      a: textsOf(true),
    }),
  },
)

type Drawn = typeof carried extends fc.Arbitrary<infer T> ? T : never

function connectorFrom(drawn: readonly Drawn[]): { connector: Connector; lines: readonly Line[] } {
  const contacts: Contact[] = []
  const lines: Line[] = []
  const next = () => String(contacts.length + 1)
  for (const one of drawn) {
    if (one.is !== 'line') {
      contacts.push({ id: next(), type: one.is, texts: one.a })
      continue
    }
    const id = `line-${lines.length}`
    lines.push(lineOf(id, { lineKind: one.kind, ...one.facts }))
    const isPair = PAIRED.has(one.kind)
    contacts.push({ id: next(), type: 'line', lineId: id, ...(isPair && { leg: one.first }), texts: one.a })
    const other = one.first === 'a' ? 'b' : 'a'
    if (isPair && one.isWhole) contacts.push({ id: next(), type: 'line', lineId: id, leg: other, texts: one.b })
  }
  return { connector: connectorOf(contacts), lines }
}

describe('the contact table as a file', () => {
  it('is read back as the same contacts, whatever was typed', () => {
    fc.assert(
      fc.property(fc.array(carried, { minLength: 1, maxLength: 6 }), (drawn) => {
        const { connector, lines } = connectorFrom(drawn)
        const file = tableFile({ connector, lines, rows: [] })
        const fresh = planned(file, connectorOf([]), [])
        expect(seen({ contacts: fresh.contacts }, fresh.lines)).toEqual(seen(connector, lines))
        const again = planned(file, connector, lines)
        expect(again.rows.map(({ state }) => state)).toEqual(connector.contacts.map(() => 'same'))
        expect(again.lines).toEqual([])
      }),
      { numRuns: 300 },
    )
  })

  it('brings every kind of line back by its name, or by its id where the name could mean another', () => {
    for (const { id } of LINE_KINDS) {
      const connector = connectorOf([{ id: '1', type: 'line', lineId: 'a', texts: {} }])
      const lines = [lineOf('a', { lineKind: id })]
      const { lines: read } = planned(tableFile({ connector, lines, rows: [] }), connectorOf([]), [])
      expect(read[0]?.facts.lineKind?.text, id).toBe(id)
    }
  })

  it('holds what was decided in columns that are not taken for typed ones', () => {
    const { connector, lines } = connectorOfSize(15)
    const file = fileOf(connector, lines)
    const pasted = readPasted(file)
    expect(pasted.ok && pasted.columns).toEqual([...COLUMNS, ...Array.from({ length: 8 }, () => undefined)])
    const table = readTable(file)
    const cells = table.ok ? table.rows.map((row) => row.cells) : []
    expect(cells[0]?.slice(-8)).toEqual([
      'Topology',
      'Part as marked',
      'To be built as',
      'Over tolerance and service',
      'Suppressor',
      'Placement',
      'Verdict',
      'Because',
    ])
    expect(cells[6]?.slice(-8)).toEqual([
      'C',
      '1.5\u00a0nF',
      'E6 value, 50\u00a0V class, class 2',
      '853\u00a0pF to 2.07\u00a0nF over all',
      '',
      'in this connector: capacitor to the plate',
      'yes',
      expect.stringContaining('1.5\u00a0nF: yes'),
    ])
    // a contact without a line is given one by a table that names its function
    const changed = planned(file, connector, lines).rows.filter(({ state }) => state !== 'same')
    expect(changed.map(({ id }) => id)).toEqual(['14'])
  })

  it('ends every row with CR and LF, all rows of one width', () => {
    const { connector, lines } = connectorOfSize(15)
    const file = fileOf(connector, lines)
    expect(file.endsWith('\r\n')).toBe(true)
    expect(file.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
    const table = readTable(file)
    expect(new Set(table.ok ? table.rows.map(({ cells }) => cells.length) : [])).toEqual(new Set([COLUMNS.length + 8]))
  })
})
