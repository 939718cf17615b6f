import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readPasted } from '../../../src/calc/connector/pasted.ts'
import { COLUMN_LABEL, COLUMNS, columnsByHeading } from '../../../src/calc/connector/pasted-columns.ts'
import { FACT_COLUMNS, inputOfColumn } from '../../../src/calc/connector/pasted-facts.ts'
import { readTable, writeTable } from '../../../src/calc/connector/table-text.ts'

const cellsOf = (text: string) => {
  const table = readTable(text)
  return table.ok ? table.rows.map(({ cells }) => cells) : table.message
}

describe('tables as text', () => {
  it('finds tab, semicolon and comma, and leaves decimal commas alone', () => {
    expect(cellsOf('a\tb,c\n1\t4,7 nF\n')).toEqual([
      ['a', 'b,c'],
      ['1', '4,7 nF'],
    ])
    expect(cellsOf('pin;need\r\n1;4,7\r\n2;3,3')).toEqual([
      ['pin', 'need'],
      ['1', '4,7'],
      ['2', '3,3'],
    ])
    expect(cellsOf('pin,name\n1,"28 V, main"\n')).toEqual([
      ['pin', 'name'],
      ['1', '28 V, main'],
    ])
  })

  it('reads quotes, doubled quotes and line ends inside a cell, and counts lines', () => {
    const table = readTable('a;"x\ny ""z"""\nb;c')
    expect(table.ok && table.rows).toEqual([
      { line: 1, cells: ['a', 'x\ny "z"'] },
      { line: 3, cells: ['b', 'c'] },
    ])
    expect(cellsOf('a;"never')).toContain('never closed')
    expect(cellsOf('a;"b"c')).toContain('“c” follows a closing quote')
    expect(cellsOf('')).toContain('no table')
    expect(cellsOf(`${'x'.repeat(1_000_001)}`)).toContain('million')
    expect(cellsOf('a\n'.repeat(3000))).toContain('2000 rows')
  })

  it('gives every table back as it was written, formulas disarmed', () => {
    const cell = fc.oneof(
      fc.string(),
      fc.constantFrom('=1+1', '-5', "'=x", '@a', '"', ';', '\r\n', ' a ', "'", '\t=', 'µ Ω'),
    )
    const tables = fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 5 })
    fc.assert(
      fc.property(tables, fc.constantFrom(',' as const, ';' as const), (rows, delimiter) => {
        const text = writeTable(rows, delimiter)
        for (const one of rows.flat()) expect(writeTable([[one]]).replace(/^"/, '')).not.toMatch(/^[=+\-@\t\r](?!\n$)/)
        const read = readTable(text, delimiter)
        const filled = rows.filter((cells) => cells.some((one) => one !== ''))
        if (filled.length === 0) expect(read.ok).toBe(false)
        else expect(read.ok && read.rows.map(({ cells }) => cells)).toEqual(filled)
      }),
      { numRuns: 2000, seed: 5 },
    )
  })

  it('needs time in proportion to the text, quotes and all', () => {
    // a million signs that would be looked through again and again by a reader that starts over at every quote
    expect(readTable(`a;${'"'.repeat(999_990)}`).ok).toBeDefined()
    expect(readTable('"a'.repeat(400_000)).ok).toBe(false)
  })
})

describe('a cell that a spreadsheet would work out', () => {
  it.each(['=1+1', '+1', '-5 V', '@a', ' =1', '\u00A0=1', '\t=1', '\r=1', '\n=1', '＝1', '＋1', '－1', '＠a', "'=1"])(
    'is disarmed by an apostrophe, which comes off again: %j',
    (cell) => {
      const text = writeTable([['contact', cell]])
      expect(text.slice('contact,'.length).replace(/^"/, '').startsWith(`'${cell}`)).toBe(true)
      expect(cellsOf(text)).toEqual([['contact', cell]])
    },
  )

  it('leaves what is none alone, and quotes whatever could be taken for the delimiter', () => {
    expect(writeTable([['a-b', "it's", '5 V', '1;10', '4,7']])).toBe('a-b,it\'s,5 V,"1;10","4,7"\r\n')
  })
})

describe('a pasted schedule', () => {
  it('takes columns by their headings, in any order', () => {
    const pasted = readPasted(
      'Signal name;Pin No.;Signal type;Need (dB)\nBus A;1;429;40\nBus B;2;429;40\n28 V in;3;28V DC;\n',
    )
    expect(pasted).toMatchObject({ ok: true, columns: ['name', 'contact', 'kind', 'neededDb'] })
    expect(pasted.ok && pasted.rows[2]).toEqual({ line: 4, cells: { contact: '3', name: '28 V in', kind: '28V DC' } })
    expect(pasted.ok && pasted.kindWords).toEqual([
      { word: '429', rows: 2 },
      { word: '28V DC', rows: 1 },
    ])
  })

  it('knows each column by its own label, by that of the field behind it, and by what people write', () => {
    const named = (headings: readonly string[]) => columnsByHeading(['contact', ...headings]).slice(1)
    for (const column of COLUMNS)
      if (column !== 'contact') expect(named([COLUMN_LABEL[column]]), COLUMN_LABEL[column]).toEqual([column])
    for (const column of FACT_COLUMNS) {
      const { label } = inputOfColumn(column)
      expect(named([label]), label).toEqual([column])
    }
    expect(named(['Freq. [MHz]', 'Noise load (Ω)', 'Source Z / ohm', 'Wire No.', 'Ph'])).toEqual([
      'frequencyHz',
      'loadOhm',
      'sourceOhm',
      'wire',
      'phase',
    ])
    // a second column of pins is what is fitted there
    expect(columnsByHeading(['Pin', 'Contact'])).toEqual(['pin', 'contact'])
    expect(columnsByHeading(['Pin', 'Function'])).toEqual(['contact', 'name'])
  })

  it('takes a table without headings by place', () => {
    const pasted = readPasted('1\tintercom audio\taudio\n2\tspare\n')
    expect(pasted).toMatchObject({ ok: true, headings: undefined, columns: ['contact', 'name', 'kind'] })
    expect(pasted.ok && pasted.rows.length).toBe(2)
  })

  it('names the line that does not fit, and takes nothing', () => {
    const message = (text: string) => {
      const pasted = readPasted(text)
      return pasted.ok ? '' : pasted.message
    }
    expect(message('pin;name\n1;a\n1;b')).toContain('line 2 and on line 3')
    expect(message('pin;name\n;a')).toContain('Line 2 names no contact')
    expect(message('name;kind\na;429')).toContain('“contact”')
    expect(message('pin;name')).toContain('no row below')
    // the columns were read all the same, and are to be seen
    const divided = { columns: ['contact', 'name'], headings: ['pin', 'name'] }
    expect(readPasted('pin;name\n1;a\n1;b')).toMatchObject({ ok: false, ...divided })
    expect(readPasted('name;kind\na;429')).toMatchObject({ columns: ['name', 'kind'], headings: ['name', 'kind'] })
  })

  it('lets the columns be chosen', () => {
    const pasted = readPasted('a;1;x\nb;2;y', { columns: ['name', 'contact', 'remark'] })
    expect(pasted.ok && pasted.rows[1]?.cells).toEqual({ name: 'b', contact: '2', remark: 'y' })
  })
})
