/** Pair balance against worked numbers and three ngspice circuits (netlists in the golden file). */
import { describe, expect, it } from 'vitest'
import golden from '../golden/pair.json' with { type: 'json' }
import { testRows } from '../support/golden-rows.ts'
import { PAIR_CIRCUITS, PAIR_FIGURES, PRINTED_DB } from '../support/pair-figures.ts'

describe('pair balance', () => {
  testRows(golden.rows, PAIR_FIGURES)

  for (const { id, title, results } of golden.circuits) {
    it(`${id}: ${title} (ngspice)`, () => {
      const closedForm = PAIR_CIRCUITS[id]
      if (closedForm === undefined) throw new Error(`no closed form for ${id}`)
      for (const { f_hz: hz, value_db: db } of results) expect(Math.abs(closedForm(hz) - db)).toBeLessThan(PRINTED_DB)
    })
  }

  it('has lost no row and no circuit', () => {
    expect(golden.rows.length).toBe(11)
    expect(golden.circuits.map(({ id, results }) => `${id} ${results.length}`)).toEqual(['M15 6', 'M16 6', 'M17 6'])
  })
})
