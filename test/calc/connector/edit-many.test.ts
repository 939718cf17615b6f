import { describe, expect, it } from 'vitest'
import { editMany, type ManyChange, waitingContacts } from '../../../src/calc/connector/edit-many.ts'
import { mateOf, swapped, withLine } from '../../../src/calc/connector/pairing.ts'
import type { Connector, Contact } from '../../../src/calc/connector/types.ts'
import type { Line } from '../../../src/calc/types.ts'

const lineOf = (id: string, name = id): Line => ({ id, name, gate: 'unknown', trials: [], facts: {} })

const CONTACTS: readonly Contact[] = [
  { id: '1', type: 'line', lineId: 'l1', leg: 'a', texts: { function: 'Bus A' } },
  { id: '2', type: 'line', lineId: 'l1', leg: 'b', texts: {} },
  { id: '3', type: 'line', texts: { function: 'Lamp' } },
  { id: '4', type: 'ground', texts: {} },
]
const CONNECTOR: Connector = {
  id: 'k',
  name: 'J2',
  shape: 'ring',
  contacts: CONTACTS,
  shared: {},
  texts: {},
  suppressors: [],
  adjacent: [],
}

const edit = (ids: readonly string[], change: ManyChange) =>
  editMany({ connector: CONNECTOR, lines: [lineOf('l1')], ids, change, newLine: (name) => lineOf('new', name) })

describe('several contacts at once', () => {
  it('writes a fact on each line once, makes a line where there is none, and names contacts that carry none', () => {
    const done = edit(['1', '2', '3', '4'], { is: 'fact', fact: 'noiseLoadOhm', text: '50' })
    expect(done.lines.map(({ id, name, facts }) => [id, name, facts.noiseLoadOhm?.text])).toEqual([
      ['l1', 'l1', '50'],
      ['new', 'J2-3 Lamp', '50'],
    ])
    expect(done.contacts[2]?.lineId).toBe('new')
    expect(done).toMatchObject({ changed: ['1', '2', '3'], without: ['4'] })
    expect(edit(['1'], { is: 'fact', fact: 'noiseLoadOhm', text: '50' }).contacts[2]).toBe(CONTACTS[2])
  })

  it('sets the kind of a line, and changes nothing that is so already', () => {
    const barred = edit(['1'], { is: 'kind', kind: 'fuel-quantity' })
    expect(barred.lines[0]).toMatchObject({ gate: 'unknown', facts: { lineKind: { text: 'fuel-quantity' } } })
    const again = editMany({
      connector: CONNECTOR,
      lines: barred.lines,
      ids: ['1', '2'],
      change: { is: 'kind', kind: 'fuel-quantity' },
      newLine: (name) => lineOf('new', name),
    })
    expect(again).toMatchObject({ lines: [], changed: [], contacts: CONTACTS })
  })

  it('answers the safety question of lines, asked for those alone that nobody answered and no kind bars', () => {
    const lines = [
      lineOf('l1'),
      { ...lineOf('l2'), facts: { lineKind: { text: 'fuel-quantity', origin: { by: 'user' } } } } as Line,
    ]
    const connector = {
      ...CONNECTOR,
      contacts: [...CONTACTS.slice(0, 2), { ...(CONTACTS[2] as Contact), lineId: 'l2' }],
    }
    expect(waitingContacts(connector, lines)).toEqual(['1', '2'])
    const change = { is: 'gate', gate: 'clear' } as const
    const done = editMany({ connector, lines, ids: ['1', '2'], change, newLine: (name) => lineOf('new', name) })
    expect(done.lines.map(({ id, gate }) => [id, gate])).toEqual([['l1', 'clear']])
    expect(waitingContacts(connector, done.lines)).toEqual([])
    expect(edit(['1'], { is: 'gate', gate: 'barred' }).lines[0]?.gate).toBe('barred')
  })

  it('sets type and zone of the contacts alone', () => {
    const spare = edit(['1', '4'], { is: 'type', type: 'spare' })
    expect(spare.contacts.map(({ type, lineId }) => [type, lineId])).toEqual([
      ['spare', undefined],
      ['line', 'l1'],
      ['line', undefined],
      ['spare', undefined],
    ])
    const zoned = edit(['1', '4'], { is: 'text', field: 'zone', text: 'unpressurised' })
    expect(zoned.contacts.map(({ texts }) => texts.zone)).toEqual([
      'unpressurised',
      undefined,
      undefined,
      'unpressurised',
    ])
    expect(zoned.lines).toEqual([])
  })
})

describe('the line of a contact', () => {
  const legs = (contacts: readonly Contact[]) => contacts.map(({ lineId, leg }) => [lineId, leg])

  it('is its own, or makes it the other leg of a pair; who is left alone is no leg', () => {
    expect(mateOf(CONTACTS, CONTACTS[0] as Contact)?.id).toBe('2')
    const single = withLine(CONTACTS, '2', undefined)
    expect(legs(single)).toEqual([
      ['l1', undefined],
      [undefined, undefined],
      [undefined, undefined],
      [undefined, undefined],
    ])
    const paired = withLine(single, '3', 'l1')
    expect(legs(paired).slice(0, 3)).toEqual([
      ['l1', 'a'],
      [undefined, undefined],
      ['l1', 'b'],
    ])
    expect(legs(swapped(paired, 'l1'))[0]).toEqual(['l1', 'b'])
  })

  it('is carried by two contacts at most', () => {
    expect(withLine(CONTACTS, '3', 'l1')).toBe(CONTACTS)
  })

  it('makes a grounded contact one with a line', () => {
    expect(withLine(CONTACTS, '4', 'l9')[3]).toEqual({ id: '4', type: 'line', lineId: 'l9', texts: {} })
  })
})
