/** Power-line figures against rule values as quoted and numbers worked out independently. */
import { describe, expect, it } from 'vitest'
import { inrushPeak } from '../../../src/calc/power/inrush.ts'
import { navyLimit } from '../../../src/calc/power/navy-rule.ts'
import { crestV, heatW, lineCurrentRmsA, reactiveVar, storedJ, withstandV } from '../../../src/calc/power/supply.ts'
import golden from '../../golden/power.json' with { type: 'json' }
import { type Figure, type Numbers, testRows } from '../../support/golden-rows.ts'

const supply = (n: Numbers) => ({ workingRmsV: n('workingRmsV'), supplyHz: n('supplyHz') })
const step = (n: Numbers) => ({ stepV: n('stepV'), farads: n('farads'), ohm: n('ohm'), henries: n('henries') })

const FIGURES: Readonly<Record<string, Figure>> = {
  navy: (n, _w, given) => {
    const loadW = given['loadW']
    const limit = navyLimit({ supplyHz: n('supplyHz'), loadW: typeof loadW === 'number' ? loadW : undefined })
    if ('ask' in limit) throw new Error(limit.ask)
    return limit.limitF
  },
  withstand: (n) => withstandV(supply(n)),
  crest: (n) => crestV(supply(n)),
  current: (n) => lineCurrentRmsA({ ...supply(n), farads: n('farads') }),
  reactive: (n) => reactiveVar({ ...supply(n), farads: n('farads') }),
  heat: (n) => heatW({ ...supply(n), farads: n('farads'), dissipationFrac: n('dissipationFrac') }),
  inrushA: (n) => inrushPeak(step(n)).peakA,
  inrushV: (n) => inrushPeak(step(n)).peakV,
  stored: (n) => storedJ({ farads: n('farads'), crestV: n('crestV') }),
}

describe('power-line figures', () => {
  testRows(golden.rows, FIGURES)

  it('have lost no row', () => {
    expect(golden.rows.length).toBe(31)
    expect(golden.rowCount).toBe(31)
  })
})
