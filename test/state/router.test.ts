import { describe, expect, it } from 'vitest'
import { pairsOf, splitQuery } from '../../src/state/query.ts'
import { decodeText, encodeText, hashOf, hashOfKept, readHash, readQuery, writeQuery } from '../../src/state/router.ts'
import fc from '../support/property.ts'

describe('addresses', () => {
  it('reads every place, with and without an id', () => {
    expect(readHash('#/ask')).toEqual({ place: 'ask', id: undefined, query: [] })
    expect(readHash('#/ask/gate-lines')).toEqual({ place: 'ask', id: 'gate-lines', query: [] })
    expect(readHash('#/check')).toEqual({ place: 'check', id: undefined, query: [] })
    expect(readHash('#/log/9f3a')).toEqual({ place: 'log', id: '9f3a', query: [] })
    expect(readHash('#/log/9f3a/l%2F1/window')).toEqual({
      place: 'log',
      id: '9f3a',
      query: [],
      kept: { lineId: 'l/1', check: 'window' },
    })
    expect(hashOfKept('9f3a', 'l/1', 'window')).toBe('#/log/9f3a/l%2F1/window')
    expect(readHash('#/log/9f3a/connector/k1/contact/A%2F1')).toEqual({
      place: 'log',
      id: '9f3a',
      query: [],
      connector: ['k1', 'contact', 'A/1'],
    })
    expect(readHash('#/notes/bond%20first')).toEqual({ place: 'notes', id: 'bond first', query: [] })
  })

  it('opens the first place for an empty address, and for one that ends in a slash the list', () => {
    expect(readHash('')).toMatchObject({ place: 'ask' })
    expect(readHash('#/')).toMatchObject({ place: 'ask' })
    expect(readHash('#/log/')).toEqual({ place: 'log', id: undefined, query: [] })
  })

  it('names an address it does not know instead of guessing', () => {
    expect(readHash('#/cheque/filter?a=1')).toEqual({ place: 'nowhere', path: '/cheque/filter' })
    expect(readHash('#/check/filter/more')).toEqual({ place: 'nowhere', path: '/check/filter/more' })
    expect(readHash('#ask')).toEqual({ place: 'nowhere', path: 'ask' })
    for (const path of [
      '/log/9f3a/l1',
      '/log/9f3a/l1/window/more',
      '/log//l1/window',
      '/check/a/b/window',
      '/log/9f3a/connector',
      '/log/9f3a/connector/k1/paste/',
    ])
      expect(readHash(`#${path}`)).toEqual({ place: 'nowhere', path })
  })

  it('reads the texts of a check: plus stays plus, lists keep their semicolons, percent signs are decoded', () => {
    const { query } = readHash('#/check/window' + '?toleranceFrac=+100/-0%20%25&sourceOhm=1;10;50&loadOhm=') as {
      query: unknown
    }
    expect(query).toEqual([
      { key: 'toleranceFrac', text: '+100/-0 %' },
      { key: 'sourceOhm', text: '1;10;50' },
      { key: 'loadOhm', text: '' },
    ])
  })

  it('keeps percent signs that encode nothing as they were typed', () => {
    expect(decodeText('20%')).toBe('20%')
    expect(decodeText('100%25%')).toBe('100%%')
    expect(decodeText('a%E2%28b')).toBe('a%E2(b')
    expect(decodeText('%C0%80')).toBe('%C0%80')
    expect(decodeText('4.7%C2%B5H')).toBe('4.7µH')
  })

  it('takes a second equals sign as text and a key without one as known to be empty', () => {
    expect(readQuery('a=1=2&b&&c=')).toEqual([
      { key: 'a', text: '1=2' },
      { key: 'b', text: '' },
      { key: 'c', text: '' },
    ])
  })

  it('brings any text through an address and back', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ key: fc.string({ minLength: 1 }), text: fc.string() })), (pairs) => {
        expect(readQuery(writeQuery(pairs))).toEqual(pairs)
      }),
    )
  })

  it('writes half of a surrogate pair without failing, and no mark that message apps cut off', () => {
    expect(encodeText('\uD800x')).toBe('%EF%BF%BDx')
    expect(encodeText("2*(4.7n+330p)!'")).not.toMatch(/[()'!*]/)
  })
})

describe('the texts of a check in its address', () => {
  const inputs = [{ key: 'topology', defaultText: 'C' }, { key: 'capacitanceF' }, { key: 'marginDb', defaultText: '6' }]

  it('writes every input that is not blank, defaults too, so that a later default does not change a shared answer', () => {
    expect(pairsOf(inputs, { capacitanceF: ' 4n7' })).toEqual([
      { key: 'topology', text: 'C' },
      { key: 'capacitanceF', text: ' 4n7' },
      { key: 'marginDb', text: '6' },
    ])
  })

  it('writes key= only where a default was emptied on purpose', () => {
    expect(pairsOf(inputs, { topology: '', capacitanceF: '' })).toEqual([
      { key: 'topology', text: '' },
      { key: 'marginDb', text: '6' },
    ])
  })

  it('keeps keys it does not know when the address is rewritten', () => {
    const { texts, strangers } = splitQuery(readQuery('colour=blue&capacitanceF=3.3n&__proto__=x'), inputs)
    expect(texts['capacitanceF']).toBe('3.3n')
    expect(strangers).toEqual([
      { key: 'colour', text: 'blue' },
      { key: '__proto__', text: 'x' },
    ])
    expect(hashOf('check', 'filter', pairsOf(inputs, texts, strangers))).toBe(
      '#/check/filter?topology=C&capacitanceF=3.3n&marginDb=6&colour=blue&__proto__=x',
    )
  })
})
