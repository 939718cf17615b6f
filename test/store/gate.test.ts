/** What one version sets aside lies where it was found, however deep, until a version comes that reads it. */
import { expect, it } from 'vitest'
import { dictionaryOf, listOf, type Reader, readRecord, type Table, text } from '../../src/store/gate.ts'

type Noted = { readonly rows: { readonly [key in string]?: readonly (string | number)[] } }
const isWord = (key: string): key is string => /^[a-z]+$/u.test(key)
const tableOf = (value: Reader<string | number>, isKey = isWord): Table<Noted> => ({
  rows: { read: dictionaryOf(isKey, listOf(value)), or: () => ({}) },
})
const textOrNumber: Reader<string | number> = (value, at, gate) =>
  typeof value === 'number' ? value : text(value, at, gate)

it('what is not understood within an entry that was set aside itself stays under that entry, and comes back there', () => {
  const isNone = (_key: string): _key is string => false
  const oldest = readRecord(tableOf(text, isNone), { rows: { noted: ['x', 7, 'y'] } }, 'stored')
  expect(oldest).toEqual({ rows: {}, kept: [{ at: 'rows.noted', value: ['x', 7, 'y'] }] })
  const older = readRecord(tableOf(text), oldest, 'stored')
  expect(older).toEqual({ rows: { noted: ['x', 'y'] }, kept: [{ at: 'rows.noted.1', value: 7 }] })
  expect(readRecord(tableOf(textOrNumber), older, 'stored')).toEqual({ rows: { noted: ['x', 7, 'y'] }, kept: [] })
})
