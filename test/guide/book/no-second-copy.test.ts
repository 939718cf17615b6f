/**
 * No figure in a text of the book is typed: each is worked out by calc or read from reference where the page is made, so
 * that text and calculator cannot disagree. A digit in a text may only be a name.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseAst } from 'vite'
import { describe, expect, it } from 'vitest'

const BOOK = join(import.meta.dirname, '..', '..', '..', 'src', 'guide', 'book')

/** What a case tells is what its report says; it is nobody's figure to work out. */
const TOLD = /^cases\//
/** Code that makes no text: ids and shapes, and what is searched for. */
const NO_TEXT = /^(types|contents|synonyms|shelves|notes\/words|glossary-match|page-texts)\.ts$/

/** Names that hold a digit: standards and their parts, buses, ceramics, codes on parts, pulses, legs, classes. */
const NAME =
  /\b(?:MIL-(?:STD|DTL|HDBK|PRF)-\d+\w*|ARINC \d+|RS-\d+|DO-160\w?|IEC \d+(?:-\d+)*|ISO \d+(?:-\d+)*|TIA-\d+\w*|IEEE \d+\w*|AC \d+-\w+|(?:CS|CE|RS|RE)\d+|10{1,3}BASE-\w+|C0G|NP0|X[57]R|L[125]\b|[CLRZ][012]\b|E(?:6|12|24|48|96)\b|1553|429|1394|(?:I2C|I²C|S2P|C1|C2|L1|L2)|section \d+(?:\.\d+)*|chapter \d+|clause \d+(?:\.\d+)*|waveforms? \d\w?|WF\d\w?|\d?\d[A-Z]\b|legs \d and \d|[Cc]lass \d|10\/1000 µs|8\/20 µs|4n7|1k5|R47)/g

/** Keys whose texts are no words of a page. */
const KEYS = new Set(
  'id source sources clause page item check related words prefix drawing sound table lineKind shelf signature suspect cites fillIn prefill'.split(
    ' ',
  ),
)

type Node = { readonly type: string; readonly [key: string]: unknown }
const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string'

const nameOf = (key: unknown): string => (isNode(key) ? String(key['name'] ?? key['value'] ?? '') : '')

/** Every piece of text in a file that is written out, keys and addresses left out. */
function textsIn(node: unknown, found: string[] = []): string[] {
  if (Array.isArray(node)) for (const each of node) textsIn(each, found)
  if (!isNode(node)) return found
  const { type } = node
  if (/^(Import|ExportAll)/.test(type) || type.startsWith('TS')) {
    // `x as const` and `x satisfies T` hold the value they speak of
    if (isNode(node['expression'])) textsIn(node['expression'], found)
    return found
  }
  if (type === 'Literal' && typeof node['value'] === 'string') found.push(node['value'])
  if (type === 'TemplateElement') found.push(String((node['value'] as { readonly raw: string }).raw))
  if (type === 'Property' && KEYS.has(nameOf(node['key']))) return found
  for (const [key, value] of Object.entries(node)) {
    if (key === 'key' && type === 'Property') continue
    textsIn(value, found)
  }
  return found
}

/** A text with a digit that is part of no name. An id has no blank in it. */
const typedFigures = (code: string): readonly string[] =>
  textsIn(parseAst(code, { lang: 'ts' })).filter(
    (text) => /\d/.test(text.replace(NAME, '')) && !/^[\w./-]+$/.test(text),
  )

const files = readdirSync(BOOK, { recursive: true, encoding: 'utf8' })
  .map((path) => path.replaceAll('\\', '/'))
  .filter((path) => path.endsWith('.ts') && !TOLD.test(path) && !NO_TEXT.test(path))

describe('figures in the texts of the book', () => {
  it('are told from names by this test', () => {
    expect(typedFigures("const a = { text: 'at 12 V' }")).toEqual(['at 12 V'])
    expect(typedFigures(`const a = \`up to \${volts(3)} and 4 more\``)).toEqual([' and 4 more'])
    expect(
      typedFigures("const a = { text: 'ARINC 429 and RS-422', id: 'line-3', source: { clause: '4.2 and 5' } }"),
    ).toEqual([])
  })

  it.each(files)('are worked out in %s', (path) => {
    expect(typedFigures(readFileSync(join(BOOK, path), 'utf8'))).toEqual([])
  })
})
