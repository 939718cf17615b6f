import { describe, expect, it } from 'vitest'
import {
  lineAndColumn,
  MOST_DEPTH,
  MOST_ENTRIES,
  type Path,
  placeOf,
  troubleIn,
} from '../../../src/store/exchange/json-text.ts'
import fc from '../../support/property.ts'

const wordsOf = (text: string): string => {
  const trouble = troubleIn(text)
  return trouble === undefined ? 'in order' : `${lineAndColumn(text, trouble.at)}: ${trouble.message}`
}

function parses(text: string): boolean {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}

describe('JSON as text', () => {
  it('is in order exactly where it can be parsed', () => {
    const damaged = fc
      .tuple(
        fc.json(),
        fc.nat(),
        fc.constantFrom('', '"', '{', ']', ',', ':', '\\', '\n', '0', '-', 'e', 'null', '\u0000', ' '),
        fc.nat(2),
      )
      .map(([json, at, put, cut]) => {
        const place = at % (json.length + 1)
        return json.slice(0, place) + put + json.slice(place + cut)
      })
    fc.assert(
      fc.property(fc.oneof(damaged, fc.string()), (text) => {
        fc.pre(!text.includes('__proto__'))
        expect(troubleIn(text) === undefined).toBe(parses(text))
      }),
      { numRuns: 2000 },
    )
  })

  it.each([
    [
      '{"a": 1,\n "b": x}',
      'Line 2, column 7: a value is expected here (a text in double quotes, a number, true, false, null, a list or a record), and “x” stands there',
    ],
    ['{"a": 1\n "b": 2}', 'Line 2, column 2: a comma or the closing bracket is expected here, and “"” stands there'],
    ['[1, 2', 'Line 1, column 6: the file ends before it is complete: something was cut off'],
    [
      '{"a": "no end\n"}',
      'Line 1, column 14: a text goes over the end of its line: its closing quote is missing, or write the line end as \\n',
    ],
    ['{"a": "cut', 'Line 1, column 7: this text is never closed: the file was cut off, or a quote is missing'],
    [
      '["\\x"]',
      'Line 1, column 3: a backslash in a text is written twice, or is followed by one of " \\ / b f n r t u0000',
    ],
    ['{a: 1}', 'Line 1, column 2: a name in double quotes or “}” is expected here, and “a” stands there'],
    ['{"a" 1}', 'Line 1, column 6: “:” is expected here, and “1” stands there'],
    ['{"a": 1,}', 'Line 1, column 9: a name in double quotes is expected here, and “}” stands there'],
    ['[] []', 'Line 1, column 4: nothing more is expected here: what was begun is complete, and “[” stands there'],
    ['[01]', 'Line 1, column 3: a comma or the closing bracket is expected here, and “1” stands there'],
    ['{"a": {"__proto__": 1}}', 'Line 1, column 8: nothing of a complaint is named “__proto__”'],
  ])('says where %j goes wrong and what is expected', (text, words) => {
    expect(wordsOf(text)).toBe(words)
  })

  it('refuses what is deeper or longer than anything of ours, at the place where it becomes so', () => {
    expect(wordsOf('['.repeat(3_000_000))).toBe(
      `Line 1, column ${MOST_DEPTH + 1}: the file nests deeper than ${MOST_DEPTH} levels`,
    )
    expect(wordsOf('{"a":'.repeat(500_000))).toContain('nests deeper')
    const long = `[${'0,'.repeat(1_000_000)}0]`
    expect(wordsOf(long)).toBe(
      `Line 1, column ${2 + 2 * MOST_ENTRIES}: one list or record holds more than ${MOST_ENTRIES} entries`,
    )
    const row = `[${'0,'.repeat(9_999)}0],`
    expect(wordsOf(`[${row.repeat(400)}0]`)).toContain('more than 3000000 values')
  })

  it('finds the place of every value', () => {
    const text = '{\n "a": [1, {"b\\u0041": "x"}],\n "c": null\n}'
    const at = (path: Path) => text.slice(placeOf(text, path)).split(/[,\]}]/)[0]
    expect([at(['a', 0]), at(['a', 1, 'bA']), at(['c'])]).toEqual(['1', '"x"', 'null\n'])
    expect(lineAndColumn(text, placeOf(text, ['a', 1, 'missing']))).toBe('Line 2, column 11')
    expect(placeOf(text, [])).toBe(0)
  })
})
