import { describe, expect, it } from 'vitest'
import { CHECK_KEYS } from '../../src/guide/check-keys.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { TEST_NOTES } from '../../src/guide/notes/tests.ts'
import { FIELD_NOTES } from '../../src/guide/notes.ts'
import { SOURCES } from '../../src/reference/sources.ts'

const byId = new Map(FIELD_NOTES.map((note) => [note.id, note]))
const SUBJECTS =
  'in-line-trial on-off-on common-or-differential which-way-round worst-case-capacitor lead-and-bond bench-figure pair-balance radio-bands noise-signatures alternator-frequencies current-probe headset-only source-impedance fits-contact may-i-fly insulation-tests after-a-strike codes paschen navy-rule suppressor-facts no-trial-lines inductance-as-built node-spacing limit-lines dummy-load breaker-matrix bond-four-wire shield-ends audio-ground bus-first-aid clamp-ferrites bus-dip lamps-and-chargers vhf-and-gnss hf-on-the-airframe l-band water intermittents event-table p-static drives compass-and-fields cabin-devices lightning-and-pulses rack-trays decibels insertion-loss which-topology edges-and-frequency return-and-ground twisting choke-or-capacitor inrush suppressor-lead hole-in-the-wall worst-case-first ferrite-and-current static-at-a-connector first-ten-minutes when-to-stop'

describe('the field notes', () => {
  it('cover every subject, each once', () => {
    expect([...byId.keys()].sort()).toEqual(SUBJECTS.split(' ').sort())
    expect(byId.size).toBe(FIELD_NOTES.length)
  })

  it('are short and cite sources that exist', () => {
    for (const { title, paragraphs, sources } of FIELD_NOTES) {
      expect(title.length).toBeLessThanOrEqual(60)
      expect(paragraphs.length).toBeGreaterThan(0)
      expect(paragraphs.join(' ').length).toBeLessThan(1200)
      for (const { id } of sources) expect(Object.keys(SOURCES)).toContain(id)
    }
  })

  it('have tables with as many cells in a row as in the head', () => {
    for (const { table } of FIELD_NOTES)
      for (const row of table?.rows ?? []) expect(row).toHaveLength(table?.head.length ?? 0)
  })

  it('point to notes and checks that exist', () => {
    for (const { check, note } of FIELD_NOTES.flatMap((each) => each.related ?? [])) {
      if (note !== undefined) expect([...byId.keys()]).toContain(note)
      if (check !== undefined) expect(Object.keys(CHECK_KEYS)).toContain(check)
    }
  })
})

describe('notes and tests', () => {
  it('lead to each other: every note of a test is named by a card of the guide', () => {
    const named = new Set(GUIDE.evidence.flatMap(({ note }) => note ?? []))
    for (const id of named) expect([...byId.keys()]).toContain(id)
    for (const { id } of TEST_NOTES) expect([...named]).toContain(id)
  })

  it('stand on every card of a look or a test', () => {
    expect(GUIDE.evidence.flatMap(({ id, kind, note }) => (kind === 'ask' || note !== undefined ? [] : [id]))).toEqual(
      [],
    )
  })
})

describe('figures in the notes', () => {
  const rowsOf = (id: string): readonly (readonly string[])[] => byId.get(id)?.table?.rows ?? []
  const number = (text = ''): number => Number(text.replace('−', '-').replace(/[^\d.-]/g, ''))

  it('has the bond floor of 50 Ω ends and 2.5 mΩ: 20·log10|1 + 25/(0.0025 + jωL)|', () => {
    const floorDb = (bondH: number, hz: number): number => {
      const x = 2 * Math.PI * hz * bondH
      const square = 0.0025 ** 2 + x ** 2
      return 20 * Math.log10(Math.hypot(1 + (25 * 0.0025) / square, (25 * x) / square))
    }
    const bonds = [0, 1e-9, 5e-9, 20e-9]
    for (const [at, row] of rowsOf('lead-and-bond').entries())
      for (const [column, hz] of [1e6, 1e7, 1e8].entries())
        expect(number(row[column + 1])).toBeCloseTo(floorDb(bonds[at] ?? 0, hz), 1)
  })

  it('has the spacing rules C/(0.98·C′) and C/(5.25·C′) of the application notes, at 50 pF/m', () => {
    for (const [load = '', can = '', rs485 = ''] of rowsOf('node-spacing')) {
      const perM = number(load) / 50
      // printed to a centimetre
      expect(number(can)).toBeCloseTo(perM / 0.98, 1)
      expect(number(rs485)).toBeCloseTo(perM / 5.25, 1)
    }
  })

  it('has the CE102 base curve: 94 dBµV at 10 kHz, straight to 60 at 500 kHz, then level', () => {
    const [, ...levels] = rowsOf('limit-lines')[0] ?? []
    // 94 − 34·log10(15)/log10(50) at 150 kHz
    expect(levels).toEqual(['94', '70', '60', '60', '60', '–'])
  })

  it('has the worst conversion of a pair: |C1 − C2|/(C1 + C2)', () => {
    const spreads: readonly (readonly [number, number])[] = [
      [1, 2],
      [0.8, 1.2],
      [0.9, 1.1],
      [0.95, 1.05],
      [0.99, 1.01],
    ]
    for (const [at, [low, high]] of spreads.entries())
      expect(number(rowsOf('pair-balance')[at]?.[1])).toBeCloseTo(20 * Math.log10((high - low) / (high + low)), 1)
  })

  it('has 34 dB for 50 Ω beside a current probe', () => {
    const row = rowsOf('current-probe').find(([ohm = '']) => ohm.startsWith('50'))
    expect(number(row?.[1])).toBeCloseTo(33.98, 1)
  })
})
