/** Ceilings, edges, eyes and return losses against the line tables, and against worked examples others printed. */
import { describe, expect, it } from 'vitest'
import worked from '../../golden/lines-worked.json' with { type: 'json' }
import loading from '../../golden/loading.json' with { type: 'json' }
import { testRows } from '../../support/golden-rows.ts'
import { LOADING_FIGURES } from '../../support/loading-figures.ts'

describe('figures of the line tables', () => {
  testRows(loading.rows, LOADING_FIGURES)
})

describe('worked examples others printed', () => {
  testRows(worked.rows, LOADING_FIGURES)
})

describe('the golden files', () => {
  it('have lost no row', () => {
    expect(loading.rows.length).toBe(101)
    expect(worked.rows.length).toBe(19)
    expect(loading.rowCount).toBe(101)
    expect(worked.rowCount).toBe(19)
  })
})
