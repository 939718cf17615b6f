/** The shipped table of suspects and evidence, and the linter that guards it. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { EVIDENCE } from '../../src/guide/evidence/evidence.ts'
import { printGrid } from '../../src/guide/investigate/grid.ts'
import { lintTable } from '../../src/guide/investigate/lint.ts'
import type { Table } from '../../src/guide/investigate/table.ts'
import type { Evidence } from '../../src/guide/investigation.ts'
import { SUSPECTS } from '../../src/guide/suspects/suspects.ts'
import { isSafetyId } from '../../src/reference/safety.ts'
import { SOURCES } from '../../src/reference/sources.ts'

const TABLE: Table = { suspects: SUSPECTS, evidence: EVIDENCE }
const GRID = join(import.meta.dirname, '../golden/guide-grid.txt')

const codes = (table: Table): readonly string[] => [...new Set(lintTable(table).map(({ code }) => code))]
const item = (id: string): Evidence => {
  const found = EVIDENCE.find((each) => each.id === id)
  if (found === undefined) throw new Error(`no item ${id}`)
  return found
}
const withItem = (changed: Evidence): Table => ({
  ...TABLE,
  evidence: EVIDENCE.map((each) => (each.id === changed.id ? changed : each)),
})

describe('the table', () => {
  it('has no fault', () => {
    expect(lintTable(TABLE)).toEqual([])
  })

  it('is plain data: a JSON round trip gives the same', () => {
    expect(JSON.parse(JSON.stringify(TABLE))).toEqual(TABLE)
  })

  it('prints as the reviewed grid; UPDATE=1 writes it anew', () => {
    const printed = printGrid(TABLE)
    if (process.env['UPDATE'] === '1') writeFileSync(GRID, printed)
    expect(printed).toBe(readFileSync(GRID, 'utf8'))
  })

  it('names cautions and sources that exist', () => {
    for (const { id, cautions = [] } of EVIDENCE)
      for (const caution of cautions) expect(isSafetyId(caution), `${id}: ${caution}`).toBe(true)
    const cited = EVIDENCE.flatMap(({ options }) => options.flatMap(({ cites = {} }) => Object.values(cites)))
    for (const { id } of [...cited, ...SUSPECTS.flatMap(({ sources }) => sources)])
      expect(Object.keys(SOURCES)).toContain(id)
  })
})

describe('the linter of the table', () => {
  const flex = item('flex')

  it('finds a test without a card', () => {
    const { card: _card, ...bare } = flex
    expect(codes(withItem(bare))).toContain('card-missing')
  })

  it('finds a reading that settles another part', () => {
    const options = flex.options.map((each) => ({ ...each, says: { ...each.says, alternator: 'rules-out' as const } }))
    expect(codes(withItem({ ...flex, options }))).toContain('other-part')
  })

  it('finds a reading that changes nothing or does not say what it means', () => {
    const options = [...flex.options, { id: 'idle', label: 'Idle', says: {}, means: '' }]
    expect(codes(withItem({ ...flex, options }))).toEqual(expect.arrayContaining(['changes-nothing', 'means-missing']))
  })

  it('finds a suspect whose proof proves nothing', () => {
    const suspects = SUSPECTS.map((each) => (each.id === 'contact' ? { ...each, proof: 'volume' } : each))
    expect(codes({ ...TABLE, suspects })).toContain('proof-empty')
  })

  it('finds two suspects that nothing tells apart', () => {
    const twin = { ...(SUSPECTS.find(({ id }) => id === 'regulator') ?? SUSPECTS[0]), id: 'twin' }
    const evidence = EVIDENCE.map((each) => ({
      ...each,
      options: each.options.map((option) => ({
        ...option,
        says: option.says['regulator'] === undefined ? option.says : { ...option.says, twin: option.says['regulator'] },
      })),
    }))
    expect(codes({ suspects: [...SUSPECTS, twin as (typeof SUSPECTS)[number]], evidence })).toContain('not-separated')
  })

  it('finds a condition nobody can meet', () => {
    const when = { answered: [{ evidence: 'volume', options: ['purple'] }] }
    expect(codes(withItem({ ...flex, when }))).toContain('condition-unknown')
  })
})
