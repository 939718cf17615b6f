/** How each figure named in the golden file of power lines is calculated by the program. */
import { inrushPeak } from '../../src/calc/power/inrush.ts'
import { navyLimit } from '../../src/calc/power/navy-rule.ts'
import { crestV, heatW, lineCurrentRmsA, reactiveVar, storedJ, withstandV } from '../../src/calc/power/supply.ts'
import type { Figure, Numbers } from './golden-rows.ts'

const supply = (n: Numbers) => ({ workingRmsV: n('workingRmsV'), supplyHz: n('supplyHz') })
const step = (n: Numbers) => ({ stepV: n('stepV'), farads: n('farads'), ohm: n('ohm'), henries: n('henries') })

export const POWER_FIGURES: Readonly<Record<string, Figure>> = {
  navy: (n, _w, given) => {
    const loadW = given['loadW']
    const limit = navyLimit({ supplyHz: n('supplyHz'), loadW: typeof loadW === 'number' ? loadW : undefined })
    if (limit.limitF === undefined) throw new Error(`the rule lacks ${limit.lacks}`)
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
