/** The tables of the book: rows of the reference, and conversions as they are worked by hand. */
import { expect, test } from 'vitest'
import { USUAL_BOND } from '../../../src/calc/connector/plate/bond.ts'
import { pages } from '../../../src/guide/book/tables/tables.ts'
import type { Block } from '../../../src/guide/book/types.ts'
import { BOND_CLASSES, mostBondOhm } from '../../../src/reference/bond-classes.ts'
import { BOND_NOTE, DIELECTRICS } from '../../../src/reference/constructions.ts'
import { CONTACT_SIZES } from '../../../src/reference/contact-sizes.ts'
import { RADIO_BANDS } from '../../../src/reference/radio-bands.ts'

const plain = (text: string): string => text.replace(/\u00a0|\u202f/g, ' ')

function rowsOf(id: string): readonly (readonly string[])[] {
  const table = pages()
    .find((page) => page.id === `table-${id}`)
    ?.blocks.find((block): block is Extract<Block, { is: 'table' }> => block.is === 'table')
  if (table === undefined) throw new RangeError(id)
  for (const row of table.rows) expect(row).toHaveLength(table.head.length)
  return table.rows.map((row) => row.map(plain))
}

test('eleven tables, each with rows, a source, and its cells filled', () => {
  expect(pages()).toHaveLength(11)
  for (const { id, sources } of pages()) {
    const rows = rowsOf(id.replace('table-', ''))
    expect(rows.length, id).toBeGreaterThan(2)
    expect(rows.flat().join(' '), id).not.toMatch(/NaN|undefined|Infinity/)
    expect(sources.length, id).toBeGreaterThan(0)
  }
})

test('every row of the reference is in its table', () => {
  expect(rowsOf('bonds')).toHaveLength(BOND_CLASSES.length)
  expect(rowsOf('contact-sizes')).toHaveLength(CONTACT_SIZES.length)
  expect(rowsOf('dielectrics')).toHaveLength(DIELECTRICS.length)
  expect(rowsOf('receiver-bands')).toHaveLength(RADIO_BANDS.length)
})

test('0 dBm in 50 Ω is 107 dBµV, 73 dBµA and 224 mV; −107 dBm is 0 dBµV', () => {
  expect(rowsOf('level-conversion')).toContainEqual(['0', '107', '73', '224 mV'])
  expect(rowsOf('level-conversion').find(([dbm]) => dbm === '−107')).toEqual(['−107', '0', '−34', '999 nV'])
})

test('a tail of 50 mm is 0.31, 3.1 and 31 Ω at 1, 10 and 100 MHz', () => {
  expect(rowsOf('shield-ends')).toContainEqual(['50 mm', '310 mΩ', '3.1 Ω', '31 Ω'])
})

test('a suppressor that stands off 28 V starts from 31.1 V and holds about 45.4 V, as its class is printed', () => {
  const row = rowsOf('suppressor-classes').find(([standOff]) => standOff === '28 V')
  expect(row?.[1]).toBe('31.1 V')
  expect(Number.parseFloat(row?.[3] ?? '')).toBeCloseTo(45.4, 0)
})

test('a class R bond is at most 2.5 mΩ, class H 0.1 Ω, class S 1 Ω', () => {
  const by = (letter: string) => rowsOf('bonds').find((row) => row[1] === letter)?.[2]
  expect([by('R'), by('H'), by('S')]).toEqual(['2.5 mΩ', '100 mΩ', '1 Ω'])
})

test('the ohms of a class R bond are one figure, wherever they stand', () => {
  expect([BOND_NOTE.ohm, USUAL_BOND.ohm, mostBondOhm('shell')]).toEqual(Array(3).fill(mostBondOhm('radio')))
})
