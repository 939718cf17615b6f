import { describe, expect, it } from 'vitest'
import { CONNECTOR_TEXTS, CONTACT_TEXTS } from '../../src/calc/connector/types.ts'
import { type KeptConnector, keptConnector, newConnector, restoreConnector } from '../../src/store/connector.ts'
import { type ConnectorEdit, editConnector } from '../../src/store/connector-edits.ts'
import fc from '../support/property.ts'
import v5 from './fixtures/v5.json' with { type: 'json' }

const [STORED] = v5.stores.connectors.records
const wild = fc.anything({ withNullPrototype: true, withBigInt: true, withDate: true })
const wildTexts = fc.oneof(
  wild,
  fc.dictionary(
    fc.oneof(fc.constantFrom(...CONTACT_TEXTS, ...CONNECTOR_TEXTS), fc.string()),
    fc.oneof(fc.string(), wild),
  ),
)
const name = fc.oneof(fc.constantFrom('1', 'J', 'aa', '__proto__', ' 7', ''), fc.string(), wild)
const wildContact = fc.oneof(
  wild,
  fc.record(
    {
      id: name,
      type: fc.oneof(fc.constantFrom('line', 'ground', 'spare'), wild),
      lineId: fc.oneof(fc.string(), wild),
      leg: fc.oneof(fc.constantFrom('a', 'b'), wild),
      texts: wildTexts,
    },
    { requiredKeys: ['id', 'type'] },
  ),
)
const wildConnector = fc.oneof(
  wild,
  fc.record(
    {
      id: wild,
      complaintId: wild,
      order: wild,
      updatedAt: wild,
      name: fc.oneof(fc.string(), wild),
      shape: fc.oneof(fc.constantFrom('ring', 'rectangular'), wild),
      contacts: fc.oneof(fc.array(wildContact, { maxLength: 6 }), wild),
      shared: wildTexts,
      texts: wildTexts,
      suppressors: fc.oneof(fc.array(fc.oneof(wild, fc.record({ id: name, contacts: fc.array(name) }))), wild),
      adjacent: fc.oneof(fc.array(fc.oneof(wild, fc.record({ a: name, b: name, text: fc.string() }))), wild),
      rivals: wild,
      kept: fc.oneof(
        fc.array(
          fc.oneof(
            wild,
            fc.record({
              at: fc.constantFrom('contacts.0', 'contacts.J.texts.wire', 'contacts.J.again', 'texts.half', 'name'),
              value: fc.oneof(wildContact, fc.string()),
            }),
          ),
          { maxLength: 5 },
        ),
        wild,
      ),
      later: wild,
    },
    { requiredKeys: [] },
  ),
)

describe('the gate for stored and imported connectors', () => {
  it('leaves a good connector as it is', () => {
    expect(restoreConnector(structuredClone(STORED))).toEqual(STORED)
  })

  it('makes a valid connector of anything, with a name of its own for each contact; restoring it again changes nothing', () => {
    fc.assert(
      fc.property(wildConnector, fc.constantFrom('stored' as const, 'import' as const), (raw, from) => {
        const once = restoreConnector(raw, from)
        expect(once.id).toMatch(/^[\w-]{1,64}$/)
        expect(new Set(once.contacts.map(({ id }) => id)).size).toBe(once.contacts.length)
        for (const { id, texts } of once.contacts) {
          expect(id).toBe(id.trim())
          expect(id).not.toBe('')
          for (const text of Object.values(texts)) expect(text).toBeTypeOf('string')
        }
        expect(JSON.parse(JSON.stringify(once))).toEqual(once)
        expect(restoreConnector(JSON.parse(JSON.stringify(once)), from)).toEqual(once)
      }),
      { numRuns: 400 },
    )
  })

  it('sets a second contact of one name aside, and each piece it does not know under the contact it belongs to', () => {
    const contacts = [
      { id: 'J', type: 'line', texts: { wire: 'W1', colour: 'white' } },
      { id: 'J', type: 'spare', texts: {} },
      { id: 'K', type: 'shield', texts: {} },
      { id: ' L', type: 'line', texts: {} },
    ]
    const read = restoreConnector({ ...STORED, contacts, kept: [] })
    expect(read.contacts).toEqual([{ id: 'J', type: 'line', texts: { wire: 'W1' } }])
    expect(read.kept).toEqual([
      { at: 'contacts.J.texts.colour', value: 'white' },
      { at: 'contacts.2', value: contacts[2] },
      { at: 'contacts.3', value: contacts[3] },
      { at: 'contacts.J.again', value: { id: 'J', type: 'spare', texts: {} } },
    ])
  })

  it('takes a text and a contact back that were set aside once they are known', () => {
    const back = restoreConnector({
      ...STORED,
      contacts: [{ id: '9', type: 'ground', texts: {} }],
      kept: [
        { at: 'contacts.9.texts.wire', value: 'W9' },
        { at: 'contacts.4', value: { id: '4', type: 'spare', texts: {} } },
      ],
    })
    expect(back.contacts).toEqual([
      { id: '9', type: 'ground', texts: { wire: 'W9' } },
      { id: '4', type: 'spare', texts: {} },
    ])
    expect(back.kept).toEqual([])
  })
})

const AT = '2026-11-26T08:00:00.000Z'
const LATER = '2026-11-26T09:00:00.000Z'
const OLD: KeptConnector = {
  ...keptConnector(
    {
      ...newConnector('J1'),
      contacts: [
        { id: '1', type: 'line', lineId: 'a', texts: { wire: 'W1' } },
        { id: '2', type: 'spare', texts: {} },
        { id: '3', type: 'ground', texts: {} },
      ],
    },
    'complaint',
    0,
  ),
  updatedAt: AT,
}
const edit = (parts: object): ConnectorEdit =>
  ({ id: 'complaint', connectorId: OLD.id, at: LATER, ...parts }) as ConnectorEdit
const typed = (next: string, base: string, place: object = { contact: '1', field: 'wire' }) =>
  edit({ do: 'connectorText', place, next, base })

describe('a change to a connector', () => {
  it('writes a text of a contact, of the connector, and of what is shared; an empty one is not there', () => {
    const contact = editConnector(OLD, typed('W7', 'W1'), false)
    expect(contact).toMatchObject({ contacts: [{ texts: { wire: 'W7' } }, {}, {}], updatedAt: LATER })
    expect(contact.rivals).toBeUndefined()
    expect(editConnector(OLD, typed('', 'W1'), false).contacts[0]?.texts).toEqual({})
    expect(editConnector(OLD, typed('P1', 'J1', { field: 'name' }), false).name).toBe('P1')
    expect(editConnector(OLD, typed('2 m', '', { field: 'bondOhm' }), false).shared).toEqual({ bondOhm: '2 m' })
    expect(editConnector(OLD, typed('plug', '', { field: 'half' }), false).texts).toEqual({ half: 'plug' })
  })

  it('keeps both texts of two windows, each beside its own place, until one is taken', () => {
    const both = editConnector(OLD, typed('W8', 'W0'), false)
    expect(both.contacts[0]?.texts.wire).toBe('W8')
    expect(both.rivals).toEqual([{ contact: '1', field: 'wire', text: 'W1', at: LATER }])
    const elsewhere = editConnector(both, typed('r', '', { contact: '1', field: 'remark' }), false)
    expect(elsewhere.rivals).toEqual(both.rivals)
    const place = { contact: '1', field: 'wire' }
    const taken = editConnector(both, edit({ do: 'settleConnector', place, text: 'W1', left: ['W8'] }), false)
    expect([taken.contacts[0]?.texts.wire, taken.rivals]).toEqual(['W1', undefined])
  })

  it('brings a contact back into which somebody types after another window took it out', () => {
    const without = { ...OLD, contacts: OLD.contacts.slice(1) }
    expect(editConnector(without, typed('W7', 'W1'), false).contacts.at(-1)).toEqual({
      id: '1',
      type: 'line',
      texts: { wire: 'W7' },
    })
    expect(editConnector(without, typed('', 'W1'), false).contacts).toEqual(without.contacts)
  })

  it('lays contacts that were changed here over those another window has changed meanwhile', () => {
    const base = OLD.contacts
    const here = [
      { id: '1', type: 'line', lineId: 'b', texts: { wire: 'W1', function: 'bus' } },
      { id: '3', type: 'ground', texts: {} },
      { id: '4', type: 'line', texts: {} },
    ] as const
    const meanwhile: KeptConnector = {
      ...OLD,
      contacts: [
        { id: '1', type: 'line', lineId: 'a', texts: { wire: 'W1', remark: 'typed there' } },
        { id: '2', type: 'spare', texts: { remark: 'typed there' } },
        { id: '5', type: 'spare', texts: {} },
      ],
    }
    const merged = editConnector(
      meanwhile,
      edit({ do: 'changeConnector', patch: { contacts: here }, base: { contacts: base } }),
      false,
    )
    expect(merged.contacts).toEqual([
      { id: '1', type: 'line', lineId: 'b', texts: { wire: 'W1', remark: 'typed there', function: 'bus' } },
      { id: '4', type: 'line', texts: {} },
      { id: '2', type: 'spare', texts: { remark: 'typed there' } },
      { id: '5', type: 'spare', texts: {} },
    ])
  })

  it('leaves what is newer when it comes late, and keeps its texts beside', () => {
    const newer = { ...OLD, updatedAt: '2999-01-01T00:00:00.000Z' }
    const late = editConnector(newer, typed('W7', 'W0'), true)
    expect([late.contacts[0]?.texts.wire, late.rivals?.map(({ text }) => text)]).toEqual(['W1', ['W7']])
    expect(editConnector(newer, edit({ do: 'removeConnector' }), true)).toEqual({ ...newer, turn: 1 })
    const shaped = edit({ do: 'changeConnector', patch: { shape: 'rectangular' }, base: { shape: 'ring' } })
    expect(editConnector(newer, shaped, true).shape).toBe('ring')
    expect(editConnector(OLD, shaped, true).shape).toBe('rectangular')
  })
})
