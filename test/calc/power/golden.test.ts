/** Power-line figures against rule values as quoted and numbers worked out independently. */
import { describe, expect, it } from 'vitest'
import golden from '../../golden/power.json' with { type: 'json' }
import { testRows } from '../../support/golden-rows.ts'
import { POWER_FIGURES } from '../../support/power-figures.ts'

describe('power-line figures', () => {
  testRows(golden.rows, POWER_FIGURES)

  it('have lost no row', () => {
    expect(golden.rows.length).toBe(31)
    expect(golden.rowCount).toBe(31)
  })
})
