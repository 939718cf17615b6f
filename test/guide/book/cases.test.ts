/** The cases of the book against the record they were taken from, and how a complaint finds those like it. */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { CASES, casePageId } from '../../../src/guide/book/cases/all.ts'
import { pages } from '../../../src/guide/book/cases/cases.ts'
import { casesLike, likeness } from '../../../src/guide/book/cases/match.ts'
import { pages as soundPages } from '../../../src/guide/book/sounds/sounds.ts'
import { GUIDE } from '../../../src/guide/guide.ts'
import { SOURCES } from '../../../src/reference/sources.ts'

type Recorded = {
  readonly id: string
  readonly document: string
  readonly told: Readonly<Record<string, string>>
  readonly found: Readonly<Record<string, string>>
  readonly ok: readonly string[]
}
const { cases: recorded } = JSON.parse(
  readFileSync(new URL('../../golden/guide-cases.json', import.meta.url), 'utf8'),
) as { readonly cases: readonly Recorded[] }
const documented = recorded.filter(({ document }) => document !== 'constructed')

test('every documented case of the record has its card, and no constructed one has', () => {
  expect(CASES.map(({ source }) => source).sort()).toEqual(documented.map(({ id }) => id).sort())
  expect(new Set(pages().map(({ id }) => id)).size).toBe(CASES.length)
})

describe.each(CASES)('$source $title', (one) => {
  test('gives the answers and the causes of the record, no others', () => {
    const record = documented.find(({ id }) => id === one.source)
    const known = Object.entries({ ...record?.told, ...record?.found }).filter(
      ([item, option]) => option !== 'dont-know' && !item.startsWith('gate'),
    )
    expect(one.answers).toEqual(Object.fromEntries(known))
    expect(one.suspects).toEqual(record?.ok)
  })

  test('names answers that the guide has', () => {
    // what became of a repair is asked of whatever was found
    const asked = Object.entries(one.answers).filter(([item]) => !item.startsWith('after-'))
    for (const [item, option] of asked)
      expect(
        GUIDE.evidence.find(({ id }) => id === item)?.options.map(({ id }) => id),
        item,
      ).toContain(option)
  })

  test('is found by its own answers', () => {
    if (Object.keys(one.answers).filter((item) => !one.inferred?.includes(item)).length < 2) return
    expect(casesLike(one.answers, 5).map(casePageId)).toContain(casePageId(one))
  })
})

test('one answer alone finds nothing, and an answer that contradicts takes a case away', () => {
  expect(casesLike({ wrong: 'noise' })).toEqual([])
  expect(casesLike({ wrong: 'dont-know', when: 'dont-know' })).toEqual([])
  const like = casesLike({ wrong: 'noise', when: 'engine', rhythm: 'whine' })
  expect(like.map(({ source }) => source)).toContain('D01')
  const contrary = casesLike({ wrong: 'noise', when: 'engine', rhythm: 'whine', extent: 'several' })
  expect(contrary.map(({ source }) => source)).not.toContain('D01')
})

test('an answer that was worked out and is not told by the document makes nothing alike', () => {
  const inferred = CASES.flatMap((one) => (one.inferred ?? []).map((item) => ({ one, item })))
  expect(new Set(inferred.map(({ one }) => one.source))).toEqual(new Set(['D19', 'D25', 'D29', 'D35', 'C03', 'C05']))
  for (const { one, item } of inferred) {
    const option = one.answers[item]
    if (option === undefined) throw new RangeError(`${one.source}: no answer to ${item}`)
    expect(likeness({ [item]: option }, one), `${one.source} ${item}`).toEqual({ shared: 0, isContrary: false })
    expect(likeness({ [item]: 'another' }, one).isContrary, `${one.source} ${item}`).toBe(false)
  }
})

test('what the press tells of a report is not called the report', () => {
  const ofPress = CASES.filter(({ source }) => /^Press\b/.test(SOURCES[source].title))
  expect(ofPress.map(({ source, telling }) => `${source} ${telling}`)).toEqual(['D51 press'])
})

test('questions of safety make no two complaints alike', () => {
  expect(casesLike({ 'gate-danger': 'none', 'gate-lines': 'none', wrong: 'noise' })).toEqual([])
})

test('a document that nobody opened is cited from memory, and every page says what was seen of its document', () => {
  const standing = (id: string) =>
    pages()
      .find((page) => page.id === id)
      ?.sources.map((source) => source.standing)
  expect([standing('case-c25'), standing('case-c27')]).toEqual([['memory'], ['memory']])
  expect([standing('case-d01'), standing('case-c13')]).toEqual([['read'], ['read']])
  const seen = (id: string) =>
    pages()
      .find((page) => page.id === id)
      ?.blocks.flatMap((block) => (block.is === 'rows' ? block.rows : []))
      .find(({ label }) => label === 'Seen of it')?.text
  expect([seen('case-c25'), seen('case-d59')]).toEqual(['Not opened.', 'Summary read.'])
  expect(pages().filter(({ id }) => seen(id) === undefined)).toEqual([])
})

test('cases and sounds warn of what the tests they lead to warn of', () => {
  for (const { id, related = [], cautions = [] } of [...pages(), ...soundPages()]) {
    const items = related.flatMap((link) => ('item' in link ? [link.item] : []))
    const warned = GUIDE.evidence.filter((one) => items.includes(one.id)).flatMap((one) => one.cautions ?? [])
    expect(cautions.toSorted(), id).toEqual([...new Set(warned)].toSorted())
  }
  const of = (id: string) => [...pages(), ...soundPages()].find((page) => page.id === id)?.cautions
  expect(of('sound-ignition')).toContain('running-engine')
  expect(of('case-d31')).toContain('high-voltage-map')
})
