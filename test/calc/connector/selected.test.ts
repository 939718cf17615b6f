import { describe, expect, it } from 'vitest'
import { contradictions } from '../../../src/calc/connector/contradictions.ts'
import { selectedContacts } from '../../../src/calc/connector/selected.ts'

const IDS = ['1', '2', '3', '10', 'A', 'B', 'P-1', 'GND']
const of = (text: string) => {
  const found = selectedContacts(text, IDS)
  return found.ok ? found.ids.join(' ') : found.message
}

describe('contacts named by a text', () => {
  it('takes names and spans in the order of the connector, each once', () => {
    expect(of('GND, 2-10;A–B 2')).toBe('2 3 10 A B GND')
    expect(of('P-1')).toBe('P-1')
    expect(of('B-P-1')).toBe('B P-1')
  })

  it('says what is no contact, and what would be right', () => {
    expect(of('1, 7')).toBe('“7” is no contact of this connector; its contacts go from 1 to GND.')
    expect(of('3-1')).toContain('“1-3”')
    expect(of(' , ')).toContain('Name the contacts')
  })
})

describe('a description that contradicts itself', () => {
  const say = (
    texts: Parameters<typeof contradictions>[0]['texts'],
    shape: 'rectangular' | 'ring' = 'ring',
    count = 37,
  ) => contradictions({ shape, texts, contacts: Array.from({ length: count }) }).map(({ field }) => field)

  it('finds nothing in what may be so', () => {
    expect(say({ half: 'receptacle', shell: 'receptacle for the plug of the cable', gender: 'pins' })).toEqual([])
    expect(say({ half: 'plug', shell: 'size 17', arrangement: '17-35', gender: 'sockets' })).toEqual([])
    expect(say({ arrangement: '37 pins', gender: 'sockets' })).toEqual([])
    expect(say({ half: 'adapter', gender: 'pins', shell: 'sockets at the box end', matingUnchanged: 'true' })).toEqual(
      [],
    )
    expect(say({ arrangement: '12 pins and 25 sockets' })).toEqual([])
    expect(say({}, 'rectangular', 37)).toEqual([])
  })

  it('finds a half, a face, a count and a gender that cannot be together', () => {
    expect(say({ half: 'plug', shell: 'flange receptacle' })).toEqual(['shell'])
    expect(say({ half: 'receptacle', shell: 'Free plug, size 17' })).toEqual(['shell'])
    expect(say({ half: 'adapter', matingUnchanged: 'false' })).toEqual(['matingUnchanged'])
    expect(say({ shell: 'circular, size 17' }, 'rectangular')).toEqual(['shell'])
    expect(say({ shell: 'D-sub shell' })).toEqual(['shell'])
    expect(say({}, 'rectangular', 20)).toEqual(['shape'])
    expect(say({ arrangement: '15-way' })).toEqual(['arrangement'])
    expect(say({ arrangement: '17-35SN', gender: 'pins' })).toEqual(['gender'])
    expect(say({ shell: 'female', gender: 'pins' })).toEqual(['gender'])
    expect(say({ arrangement: '17-35PN', gender: 'sockets' })).toEqual(['gender'])
  })
})
