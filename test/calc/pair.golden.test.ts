/** Pair balance against worked numbers and three ngspice circuits (netlists in the golden file). */
import { describe, expect, it } from 'vitest'
import { bandLossDb } from '../../src/calc/loading/band.ts'
import {
  conversionRatio,
  pairCommonF,
  pairDifferentialF,
  ratioDb,
  worstConversionHz,
  worstConversionRatio,
} from '../../src/calc/pair.ts'
import golden from '../golden/pair.json' with { type: 'json' }
import { type Figure, type Numbers, testRows } from '../support/golden-rows.ts'

const circuit = (n: Numbers) => ({ legF: n('legF'), leg2F: n('leg2F'), legOhm: n('legOhm') })

const FIGURES: Readonly<Record<string, Figure>> = {
  conversion: (n) => ratioDb(conversionRatio(circuit(n), n('hz'))),
  worst: (n) => ratioDb(worstConversionRatio(circuit(n))),
  worstHz: (n) => worstConversionHz(circuit(n)) ?? Number.NaN,
  // Small-signal form: taken a million times lower in frequency, where R·C no longer matters.
  lowRatio: (n) => 1e6 * conversionRatio({ legF: n('differenceF'), leg2F: 0, legOhm: n('legOhm') }, n('hz') / 1e6),
}

/** What each ngspice circuit is in closed form; the parts are those of its netlist. */
const CIRCUITS: Readonly<Record<string, (hz: number) => number>> = {
  M15: (hz) => ratioDb(conversionRatio({ legF: 1.2e-9, leg2F: 0.8e-9, legOhm: 50 }, hz)),
  M16: (hz) => bandLossDb({ ohm: 25, farads: pairDifferentialF({ legF: 1e-9, leg2F: 1e-9 }), hz }),
  M17: (hz) => bandLossDb({ ohm: 25, farads: pairCommonF({ legF: 1e-9, leg2F: 1e-9 }), hz }),
}

/** Half a unit of the last digit the netlist run printed. */
const PRINTED_DB = 6e-7

describe('pair balance', () => {
  testRows(golden.rows, FIGURES)

  for (const { id, title, results } of golden.circuits) {
    it(`${id}: ${title} (ngspice)`, () => {
      const closedForm = CIRCUITS[id]
      if (closedForm === undefined) throw new Error(`no closed form for ${id}`)
      for (const { f_hz: hz, value_db: db } of results) expect(Math.abs(closedForm(hz) - db)).toBeLessThan(PRINTED_DB)
    })
  }

  it('has lost no row and no circuit', () => {
    expect(golden.rows.length).toBe(11)
    expect(golden.circuits.map(({ id, results }) => `${id} ${results.length}`)).toEqual(['M15 6', 'M16 6', 'M17 6'])
  })
})
