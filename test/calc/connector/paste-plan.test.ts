import { describe, expect, it } from 'vitest'
import { barredWhy } from '../../../src/calc/connector/contact-line.ts'
import { meaningOfWord, unknownWords, type WordMeaning } from '../../../src/calc/connector/kind-words.ts'
import { type PasteGiven, planPaste } from '../../../src/calc/connector/paste-plan.ts'
import { readPasted } from '../../../src/calc/connector/pasted.ts'
import type { Connector, Contact } from '../../../src/calc/connector/types.ts'
import type { Line } from '../../../src/calc/types.ts'

const EMPTY: Connector = {
  id: 'k',
  name: 'J2',
  shape: 'rectangular',
  contacts: [],
  shared: {},
  texts: {},
  suppressors: [],
  adjacent: [],
}

const typed = (text: string) => ({ text, origin: { by: 'user' } as const })

function planOf(text: string, more: Partial<PasteGiven> = {}) {
  const pasted = readPasted(text)
  if (!pasted.ok) throw new Error(pasted.message)
  let count = 0
  const newLine = (name: string): Line => {
    count += 1
    return { id: `new${count}`, name, gate: 'unknown', trials: [], facts: {} }
  }
  return planPaste({ pasted, connector: EMPTY, lines: [], said: new Map(), pairsByName: true, newLine, ...more })
}

function done(text: string, more: Partial<PasteGiven> = {}) {
  const plan = planOf(text, more)
  if (!plan.ok) throw new Error(plan.refusals.join('\n'))
  return plan
}

const refused = (text: string, more: Partial<PasteGiven> = {}) => {
  const plan = planOf(text, more)
  return plan.ok ? [] : plan.refusals
}

describe('words for the kind of line', () => {
  it('takes the name of a kind or of a contact without a line, and asks about every other word once', () => {
    expect(meaningOfWord('CAN')).toEqual({ is: 'kind', kind: 'can' })
    expect(meaningOfWord('rs 422')).toEqual({ is: 'kind', kind: 'rs-422' })
    expect(meaningOfWord('N/C')).toEqual({ is: 'type', type: 'spare' })
    expect(meaningOfWord('chassis ground')).toEqual({ is: 'type', type: 'ground' })
    // several kinds of that name: none is taken
    expect(meaningOfWord('ARINC 429')).toBeUndefined()
    const pasted = readPasted('pin;kind\n1;ARINC 429\n2;arinc  429\n3;CAN\n4;wobble')
    expect(pasted.ok && unknownWords(pasted.kindWords, new Map()).map(({ word }) => word)).toEqual([
      'ARINC 429',
      'wobble',
    ])
    const said = new Map<string, WordMeaning>([['arinc 429', { is: 'kind', kind: 'arinc-429-high' }]])
    expect(pasted.ok && unknownWords(pasted.kindWords, said).map(({ word }) => word)).toEqual(['wobble'])
  })
})

describe('what a pasted table would change', () => {
  it('makes contacts and lines, with the unit of a heading at every bare number', () => {
    const plan = done(
      'Pin\tFunction\tKind\tFrequency (MHz)\tNeed (dB)\tWire\tPhase\n1\tMic\tmicrophone\t118;137,5\t20\tW12\t\n2\tspare\t\t\t\t\t\n3\t115 V\t115 VAC\t400 Hz\t\t\tph B\n',
    )
    expect(plan.rows.map(({ id, state }) => [id, state])).toEqual([
      ['1', 'new'],
      ['2', 'new'],
      ['3', 'new'],
    ])
    expect(plan.contacts).toEqual([
      { id: '1', type: 'line', lineId: 'new1', texts: { function: 'Mic', wire: 'W12' } },
      { id: '2', type: 'spare', texts: { function: 'spare' } },
      { id: '3', type: 'line', lineId: 'new2', texts: { function: '115 V', phase: 'B' } },
    ])
    expect(plan.lines.map(({ name, facts }) => [name, facts.noiseHz?.text, facts.neededDb?.text])).toEqual([
      ['J2-1 Mic', '118 MHz;137,5 MHz', '20 dB'],
      ['J2-3 115 V', '400 Hz', undefined],
    ])
    expect(plan.lines[1]?.facts.lineKind).toEqual(typed('power-115-vac-400'))
  })

  it('makes the two legs of a pair one line, by their names or by a column', () => {
    const plan = done('pin;function;kind\n4;Bus 1 A;CAN\n5;Bus 1 B;CAN\n6;Other A;audio\n7;Third B;audio')
    expect(plan.contacts.map(({ lineId, leg }) => [lineId, leg])).toEqual([
      ['new1', 'a'],
      ['new1', 'b'],
      ['new2', undefined],
      ['new3', undefined],
    ])
    expect(plan.lines[0]?.name).toBe('J2-4/5 Bus 1')
    expect(plan.rows[1]?.pair).toEqual({ leg: 'b', mate: '4', by: 'name' })
    const apart = done('pin;function;kind\n4;Bus 1 A;CAN\n5;Bus 1 B;CAN', { pairsByName: false })
    expect(apart.lines).toHaveLength(2)
    const named = done('pin;function;pair with\n4;up;5\n5;down;\n6;x;T1\n7;y;t1')
    expect(named.contacts.map(({ lineId, leg }) => [lineId, leg])).toEqual([
      ['new1', 'a'],
      ['new1', 'b'],
      ['new2', 'a'],
      ['new2', 'b'],
    ])
    // the marks at the end say which leg is which, in whatever order they stand
    const turned = done('pin;function;kind\n4;TX-;RS-422\n5;TX+;RS-422')
    expect(turned.contacts.map(({ leg }) => leg)).toEqual(['b', 'a'])
  })

  it('takes the legs as their column has them, before names and order', () => {
    const legsOf = (text: string, given = {}) => done(text, given).contacts.map(({ leg }) => leg)
    expect(legsOf('pin;pair with;leg\n4;5;b\n5;4;a')).toEqual(['b', 'a'])
    expect(legsOf('pin;pair with;leg\n4;5;\n5;;+')).toEqual(['b', 'a'])
    expect(legsOf('pin;function;kind;leg\n4;TX+;RS-422;b\n5;TX-;RS-422;')).toEqual(['b', 'a'])
    expect(legsOf('pin;kind;leg\n4;RS-422;b')).toEqual(['b'])
    expect(refused('pin;pair with;leg\n4;5;a\n5;4;a')[0]).toContain('Lines 2 and 3, column “Leg”: both are leg a')
    expect(refused('pin;kind;leg\n4;CAN;left')[0]).toContain('Line 2, column “Leg”: “left” is no leg of a pair')
    expect(refused('pin;type;leg\n4;ground;a')[0]).toContain('“Leg”')
  })

  it('turns a pair that stands round where both are named, and refuses one of them alone', () => {
    const before = done('pin;kind;pair with\n4;CAN;5\n5;CAN;4')
    const connector: Connector = { ...EMPTY, contacts: before.contacts }
    const { lines } = before
    const turned = done('pin;leg\n4;b\n5;a', { connector, lines })
    expect(turned.contacts.map(({ leg, lineId }) => [leg, lineId])).toEqual([
      ['b', lines[0]?.id],
      ['a', lines[0]?.id],
    ])
    expect(turned.rows.map(({ pair }) => pair?.leg)).toEqual(['b', 'a'])
    expect(done('pin;leg\n4;a\n5;b', { connector, lines }).rows.map(({ state }) => state)).toEqual(['same', 'same'])
    expect(refused('pin;leg\n4;b', { connector, lines })[0]).toContain('to turn them round, name both')
  })

  it('refuses pairs that cannot be, naming line and column', () => {
    expect(refused('pin;pair with\n4;4')).toEqual(['Line 2, column “Pair with”: a contact is no pair with itself.'])
    expect(refused('pin;pair with\n4;T\n5;T\n6;T')[0]).toContain('stands on 3 rows')
    expect(refused('pin;pair with\n4;5\n5;6\n6;5')[0]).toContain('Line 2, column “Pair with”: contact 5 names “6”')
    expect(refused('pin;pair with;load\n4;5;50\n5;4;75')[0]).toContain('Lines 2 and 3')
    // by name they are then simply two lines
    expect(done('pin;function;kind;load\n4;Bus A;CAN;50\n5;Bus B;CAN;75').lines).toHaveLength(2)
  })

  it('says of contacts that stand what is new, changed and the same, and leaves the others', () => {
    const before = done('pin;function;kind;load\n1;Mic;microphone;150\n2;Bus A;CAN;60\n3;Bus B;CAN;60')
    const connector: Connector = { ...EMPTY, contacts: before.contacts }
    const { lines } = before
    const again = done('pin;function;kind;load\n1;Mic;microphone;150 ohm\n2;Bus A;CAN;60', { connector, lines })
    expect(again.rows.map(({ state }) => state)).toEqual(['same', 'same'])
    expect(again).toMatchObject({ lines: [], untouched: ['3'], contacts: before.contacts })
    const next = done('pin;function;load;kind\n3;Bus B;120;\n1;;;ground\n9;new one;;', { connector, lines })
    expect(next.rows.map(({ id, state }) => [id, state])).toEqual([
      ['3', 'changed'],
      ['1', 'changed'],
      ['9', 'new'],
    ])
    expect(next.rows[0]?.changes).toEqual([{ what: 'Noise load impedance', before: '60', after: '120' }])
    expect(next.rows[1]?.changes).toEqual([{ what: 'Contact type', before: 'line', after: 'ground' }])
    expect(next.contacts.map(({ id, type, leg }) => [id, type, leg])).toEqual([
      ['1', 'ground', undefined],
      ['2', 'line', 'a'],
      ['3', 'line', 'b'],
      ['9', 'line', undefined],
    ])
    // one line of a pair: the other leg has it too
    expect(next.lines[0]).toMatchObject({ id: before.contacts[1]?.lineId, facts: { noiseLoadOhm: { text: '120' } } })
    expect(refused('pin;load\n2;100\n3;120', { connector, lines })[0]).toContain('the legs of one pair')
  })

  it('answers no safety question: a barred kind bars by itself', () => {
    const plan = done('pin;kind\n1;fuel probe\n2;audio')
    expect(plan.lines.map(({ gate }) => gate)).toEqual(['unknown', 'unknown'])
    expect(plan.lines.map((line) => barredWhy(line) !== undefined)).toEqual([true, false])
  })

  it('refuses what a field refuses with line and column, and takes nothing of the rest', () => {
    const said = refused('pin;load;need;zone;phase;contact type\n1;50;20;;;\n2;many;-;attic;Q;sometimes')
    expect(said).toHaveLength(5)
    for (const sentence of said) expect(sentence).toMatch(/^Line 3, column “/)
    expect(said.join(' ')).toContain('write pressurised or unpressurised')
    expect(refused('pin;type;load\n1;spare;50')[0]).toContain('Line 2: a spare contact carries no line')
    const rows = Array.from({ length: 257 }, (_, i) => `${i};x`).join('\n')
    expect(refused(`pin;function\n${rows}`)[0]).toContain('257 contacts')
  })

  it('takes a calculation for the field to work out', () => {
    expect(done('pin;load\n1;2*75').lines[0]?.facts.noiseLoadOhm?.text).toBe('2*75')
  })

  it('keeps every text of a contact that the table does not speak of', () => {
    const contact: Contact = { id: '1', type: 'line', texts: { wire: 'W1', chosenF: '1n', remark: 'old' } }
    const plan = done('pin;remark\n1;new', { connector: { ...EMPTY, contacts: [contact] } })
    expect(plan.contacts[0]?.texts).toEqual({ wire: 'W1', chosenF: '1n', remark: 'new' })
  })
})
