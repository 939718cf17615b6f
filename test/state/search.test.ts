import { describe, expect, it } from 'vitest'
import { readFields } from '../../src/calc/line/fields.ts'
import { checkById } from '../../src/calc/registry.ts'
import { GLOSSARY } from '../../src/guide/book/glossary.ts'
import { readBook } from '../../src/guide/book/read-book.ts'
import { isEvidence, nodeById, optionsOf } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { CAUSE_WORDS, CHECK_WORDS, PLAIN_WORDS } from '../../src/guide/plain-words.ts'
import { splitQuery } from '../../src/state/query.ts'
import { readHash } from '../../src/state/router.ts'
import { type Hit, searchFor } from '../../src/state/search.ts'
import { figuresIn } from '../../src/state/search-figures.ts'

const pages = readBook()
const ids = (text: string) => searchFor(text).map(({ id }) => id)

describe('the search of the start page', () => {
  it('finds what people complain of by their own words, with what goes wrong and when in one', () => {
    expect(ids('bus drops out when we transmit')[0]).toBe('wrong/data+when/transmit')
    expect(ids('whine follows the engine')[0]).toBe('wrong/noise+when/engine')
    expect(ids('whine follows the engine')).toContain('cause/alternator')
    expect(ids('gps jammed')[0]).toBe('wrong/gnss')
  })

  it('takes a figure beside a line as what to fill in, as it was typed', () => {
    const [first] = searchFor('is 10 nF on CAN at 500 kbit/s sane?')
    expect(first?.to).toEqual({
      hash: '#/check/loading?lineKind=can&capacitanceF=10%20nF&bitRateHz=500%20kbit%2Fs',
    })
    // the only rate a line has is not typed over
    expect(searchFor('2n2 on ARINC 429 high')[0]?.id).not.toMatch(/^answer/)
    expect(searchFor('2.2nF on ARINC 429 high')[0]?.to).toEqual({
      hash: '#/check/loading?lineKind=arinc-429-high&capacitanceF=2.2%20nF',
    })
  })

  it('finds lines, checks and notes, misspelt and run together too', () => {
    expect(ids('arinc429')).toContain('line/arinc-429-high')
    expect(ids('rs422').some((id) => id.startsWith('line/rs-422'))).toBe(true)
    expect(ids('supressor').length).toBeGreaterThan(0)
    expect(ids('pair balance')).toContain('check/pair')
    expect(ids('dummy load')).toContain('page/dummy-load')
    expect(ids('qqqq zzzz')).toEqual([])
  })

  it('leads nowhere that does not exist', () => {
    const texts = [...Object.values(PLAIN_WORDS).flatMap((words) => words.split(' ')), 'load', 'line', 'can', 'bond']
    const hits = new Map<string, Hit>(texts.flatMap((text) => searchFor(text)).map((hit) => [hit.id, hit]))
    expect(hits.size).toBeGreaterThan(60)
    const lost = [...hits.values()].filter(({ to }) => {
      if ('start' in to)
        return to.start.some(({ evidence, option }) => {
          const item = nodeById(GUIDE, evidence)
          return item === undefined || !isEvidence(item) || !optionsOf(item).some(({ id }) => id === option)
        })
      const there = readHash(to.hash)
      if (there.place === 'ask') return nodeById(GUIDE, there.id ?? '') === undefined
      if (there.place === 'notes')
        return there.id === 'glossary'
          ? !GLOSSARY.some(({ id }) => id === there.query[0]?.text)
          : !pages.some(({ id }) => id === there.id)
      const check = there.place === 'check' ? checkById(there.id ?? '') : undefined
      if (check === undefined || there.place !== 'check') return true
      const { texts: typed, strangers } = splitQuery(there.query, check.inputs)
      return strangers.length > 0 || readFields(check, typed).some(({ state }) => state === 'refused')
    })
    expect(lost.map(({ id }) => id)).toEqual([])
  })

  it('gives plain words to causes of the guide and to checks only', () => {
    expect(Object.keys(CHECK_WORDS).filter((key) => checkById(key) === undefined)).toEqual([])
    expect(Object.keys(CAUSE_WORDS).filter((key) => !GUIDE.suspects.some(({ id }) => id === key))).toEqual([])
  })

  it('gives plain words to answers of the guide only', () => {
    const unknown = Object.keys(PLAIN_WORDS).filter((key) => {
      const [evidence = '', option = ''] = key.split('/')
      const item = nodeById(GUIDE, evidence)
      return item === undefined || !isEvidence(item) || !optionsOf(item).some(({ id }) => id === option)
    })
    expect(unknown).toEqual([])
  })
})

describe('figures in what is searched for', () => {
  it('reads a capacitance and a rate, and leaves the words', () => {
    expect(figuresIn('is 10 nF on CAN sane?')).toEqual({
      words: 'is on CAN sane?',
      texts: { capacitanceF: '10 nF', bitRateHz: undefined },
    })
    expect(figuresIn('4,7n at 1Mbit/s')).toEqual({
      words: 'at',
      texts: { capacitanceF: '4,7 nF', bitRateHz: '1 Mbit/s' },
    })
  })

  it('leaves numbers that are names', () => {
    for (const text of ['RS-422 1553 stub', '28 V power', '100BASE-TX', '115 V 400 Hz'])
      expect(figuresIn(text).texts).toEqual({ capacitanceF: undefined, bitRateHz: undefined })
  })
})
