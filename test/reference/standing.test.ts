/** How well a figure of a line is known is said no better than it is: what was read, recalled, or is practice. */
import { describe, expect, it } from 'vitest'
import { mostBondOhm } from '../../src/reference/bond-classes.ts'
import { CUSTOMARY_COMMON, GNSS_CHANNELS, SUPPLY_NETWORK } from '../../src/reference/field-figures.ts'
import { LINE_CARDS } from '../../src/reference/line-cards.ts'
import { type Citation, LINE_KINDS, lineKindById } from '../../src/reference/line-kinds.ts'
import { channelHz } from '../../src/reference/radio-bands.ts'

/** Clauses that were themselves in sight when their source was read; any other clause number is from memory. */
const SEEN: Readonly<Record<string, readonly string[]>> = {
  R2: ['3.3'],
  R21: ['7.1'],
  R24: ['7.1.1.2'],
  R25: ['ANSI X3.263-1995 9.1.5', 'IEEE 802.3 40.8.3.1'],
}

/** Every citation anywhere in a row. */
function citationsIn(value: unknown): readonly Citation[] {
  if (typeof value !== 'object' || value === null) return []
  const inside = Object.values(value).flatMap(citationsIn)
  return 'standing' in value ? [value as Citation, ...inside] : inside
}

const kindOf = (id: string) => {
  const kind = lineKindById(id)
  if (kind === undefined) throw new Error(`no line kind ${id}`)
  return kind
}

describe('the standing of a figure', () => {
  it('never makes a clause number read that was recalled', () => {
    const claimed = LINE_KINDS.flatMap(({ id, ...row }) =>
      citationsIn(row)
        .filter(({ standing, clause }) => standing === 'read' && /\d+\.\d+\.\d/u.test(clause ?? ''))
        .filter((cited) => !SEEN[cited.id]?.includes(cited.clause ?? ''))
        .map((cited) => `${id}: ${cited.id} ${cited.clause}`),
    )
    expect(claimed).toEqual([])
  })

  it('is practice for the tenth of a bit and the 100 pF a node of CAN', () => {
    const can = kindOf('can')
    expect(can.loadingSource.standing).toBe('practice')
    expect(can.permitted.map(({ source }) => source.standing)).toEqual(['practice'])
    expect(can.permitted[0]?.label).toContain('common practice')
  })

  it('of MIL-STD-1553 is read for the ohms of a coupled terminal, and memory for clauses, transformers and direct stubs', () => {
    const [stub, direct] = [kindOf('mil-std-1553-stub'), kindOf('mil-std-1553-direct')]
    expect(stub.loadingSource).toEqual({
      id: 'R7',
      clause: '1000 Ω at a transformer-coupled terminal',
      standing: 'read',
    })
    expect(direct.loadingSource.standing).toBe('memory')
    for (const kind of [stub, direct]) {
      expect(kind.transformer?.source.standing).toBe('memory')
      expect(kind.sources.find(({ id }) => id === 'mil-std-1553')?.standing).toBe('memory')
    }
  })

  it('of what a direct stub sends is memory, as the picofarads of fast USB are practice: nobody read either', () => {
    const wave = LINE_CARDS['mil-std-1553-direct']?.wave
    expect(wave?.is === 'not-known' ? undefined : wave?.source.standing).toBe('memory')
    expect(LINE_CARDS['usb-high-speed']?.suppressor?.map(({ source }) => source.standing)).toEqual(['practice'])
  })
})

describe('the standing of what is told at the aircraft', () => {
  it('is read for the channels and the dwell that owners tell, and memory for the channel that was only recalled', () => {
    const { thirteenth, twelfth, key } = GNSS_CHANNELS
    for (const { basis } of [thirteenth, key])
      expect(basis.map(({ id, standing }) => `${id} ${standing}`)).toEqual(['D11 read', 'C07 read'])
    expect(twelfth.basis.standing).toBe('memory')
  })

  it('is read for the network of airborne tests and for where common noise begins, memory for the military network', () => {
    expect(SUPPLY_NETWORK.airborneBasis).toMatchObject({ id: 'S36', standing: 'read' })
    expect(SUPPLY_NETWORK.basis).toMatchObject({ id: 'mil-std-461', standing: 'memory' })
    expect(CUSTOMARY_COMMON.basis).toMatchObject({ id: 'S6', standing: 'read' })
  })
})

it('an id that is none is a fault, never a figure that is not known', () => {
  expect(() => mostBondOhm('radios')).toThrow(RangeError)
  expect(mostBondOhm('lightning')).toBeUndefined()
  expect(() => channelHz('hf')).toThrow(RangeError)
  expect(channelHz('elt-121')).toBe(121.5e6)
})
