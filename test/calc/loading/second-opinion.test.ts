/**
 * mathjs works each closed form out again, with units: the value must agree and the dimension must be right
 * (a conversion to a unit of another dimension throws).
 */
import { all, create } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { bandLossDb, faradsForLoss, faradsForPhase, phaseLagDeg } from '../../../src/calc/loading/band.ts'
import {
  bandCrossingFarads,
  bandCrossingSec,
  canDecaySec,
  canFarads,
  faradsForImpedance,
  i2cFarads,
  i2cRiseSec,
} from '../../../src/calc/loading/buses.ts'
import {
  combinedEdgeSec,
  faradsForRise,
  faradsForSlowest,
  inductorRiseSec,
  riseSec,
} from '../../../src/calc/loading/edge.ts'
import { dampingRatio, lcLossDb, ringHz } from '../../../src/calc/loading/inductor.ts'
import { innerEyeFrac, jitterFrac } from '../../../src/calc/loading/nrz.ts'
import { faradsForReturnLoss, returnLossDb } from '../../../src/calc/loading/return-loss.ts'
import { leastSpacingM, loadedDelaySecPerM, loadedImpedanceOhm } from '../../../src/calc/loading/spacing.ts'
import {
  conversionRatio,
  pairCommonF,
  pairDifferentialF,
  worstConversionHz,
  worstConversionRatio,
} from '../../../src/calc/pair.ts'
import { inrushPeak } from '../../../src/calc/power/inrush.ts'
import { navyLimit } from '../../../src/calc/power/navy-rule.ts'
import {
  bleedSec,
  crestV,
  heatW,
  lineCurrentRmsA,
  phaseLostCurrentRmsA,
  reactiveVar,
  storedJ,
  withstandV,
} from '../../../src/calc/power/supply.ts'

if (all === undefined) throw new Error('mathjs lists no functions')
const math = create(all)

/** The SI number of an expression, which must have the dimension of `unit`; '' = a plain number. */
function opinion(expression: string, unit: string): number {
  const value: unknown = math.evaluate(expression)
  if (unit === '') {
    if (typeof value !== 'number') throw new Error(`${expression} is not a plain number`)
    return value
  }
  return math.unit(String(value)).toNumber(unit)
}

const navyF = (loadW: number): number => {
  const limit = navyLimit({ supplyHz: 0, loadW })
  if (limit.limitF === undefined) throw new Error(`the rule lacks ${limit.lacks}`)
  return limit.limitF
}

const lc = { henries: 1.7e-6, farads: 330e-12, sourceOhm: 83, loadOhm: 117 }
const legs = { legF: 1.3e-9, leg2F: 0.87e-9 }
const pair = { ...legs, legOhm: 47 }
const light = { stepV: 28.4, farads: 3.3e-6, ohm: 0.21, henries: 1.9e-6 }
const heavy = { stepV: 28.4, farads: 3.3e-6, ohm: 4.7, henries: 1.9e-6 }
const loadedLine = { z0Ohm: 118, faradsPerM: 43e-12, loadF: 37e-12, spacingM: 1.3 }

type Case = readonly [name: string, ours: number, expression: string, unit: string]

const CASES: readonly Case[] = [
  ['edge of one pole', riseSec({ ohm: 73, farads: 4.9e-9 }), 'log(9) * 73 ohm * 4.9 nF', 's'],
  ['capacitance for an edge', faradsForRise({ ohm: 51, edgeSec: 31e-9 }), '31 ns / (log(9) * 51 ohm)', 'F'],
  [
    'capacitance for a slowest edge',
    faradsForSlowest({ ohm: 73, driverEdgeSec: 1.4e-6, slowestEdgeSec: 2.1e-6 }),
    'sqrt((2.1 us)^2 - (1.4 us)^2) / (log(9) * 73 ohm)',
    'F',
  ],
  ['edges in a row', combinedEdgeSec([1.4e-6, 0.9e-6]), 'sqrt((1.4 us)^2 + (0.9 us)^2)', 's'],
  ['edge of an inductor', inductorRiseSec({ henries: 1.7e-6, loopOhm: 200 }), 'log(9) * 1.7 uH / (200 ohm)', 's'],
  ['inner eye', innerEyeFrac({ bitSec: 87e-9, tauSec: 31e-9 }), '1 - 2 * exp(-87 ns / (31 ns))', ''],
  [
    'jitter',
    jitterFrac({ bitSec: 87e-9, tauSec: 31e-9 }) ?? Number.NaN,
    '-(31 ns / (87 ns)) * log(1 - exp(-87 ns / (31 ns)))',
    '',
  ],
  [
    'band loss',
    bandLossDb({ ohm: 610, farads: 5.3e-9, hz: 19e3 }),
    '10 * log10(1 + (2 * pi * 19 kHz * 610 ohm * 5.3 nF)^2)',
    '',
  ],
  [
    'capacitance for a loss',
    faradsForLoss({ ohm: 610, db: 0.47, hz: 19e3 }),
    'sqrt(10^(0.47/10) - 1) / (2 * pi * 19 kHz * 610 ohm)',
    'F',
  ],
  [
    'phase',
    phaseLagDeg({ ohm: 1900, farads: 170e-12, hz: 9.1e3 }),
    'atan(2 * pi * 9.1 kHz * 1900 ohm * 170 pF) * 180 / pi',
    '',
  ],
  [
    'capacitance for a phase',
    faradsForPhase({ ohm: 1900, deg: 1.1, hz: 9.1e3 }),
    'tan(1.1 * pi / 180) / (2 * pi * 9.1 kHz * 1900 ohm)',
    'F',
  ],
  ['I²C rise', i2cRiseSec({ pullUpOhm: 2300, farads: 157e-12 }), 'log(7/3) * 2300 ohm * 157 pF', 's'],
  ['I²C capacitance', i2cFarads({ pullUpOhm: 2300, riseSec: 310e-9 }), '310 ns / (log(7/3) * 2300 ohm)', 'F'],
  ['CAN decay', canDecaySec({ ohm: 61, farads: 1.1e-9 }), 'log(4) * 61 ohm * 1.1 nF', 's'],
  ['CAN capacitance', canFarads({ ohm: 61, decaySec: 97e-9 }), '97 ns / (log(4) * 61 ohm)', 'F'],
  ['band crossing', bandCrossingSec({ bandV: 6.1, farads: 2.3e-9, driverA: 9.7e-3 }), '6.1 V * 2.3 nF / (9.7 mA)', 's'],
  [
    'capacitance for a crossing',
    bandCrossingFarads({ bandV: 6.1, crossingSec: 1.9e-6, driverA: 9.7e-3 }),
    '9.7 mA * 1.9 us / (6.1 V)',
    'F',
  ],
  [
    'capacitance for an impedance',
    faradsForImpedance({ leastOhm: 1013, hz: 0.97e6 }),
    '1 / (2 * pi * 0.97 MHz * 1013 ohm)',
    'F',
  ],
  [
    'return loss',
    returnLossDb({ farads: 11.3e-12, loadOhm: 97, referenceOhm: 97 }, 61e6),
    '-20 * log10((2 * pi * 61 MHz * 11.3 pF * 97 ohm) / sqrt(4 + (2 * pi * 61 MHz * 11.3 pF * 97 ohm)^2))',
    '',
  ],
  [
    'return loss with an inductor, by complex impedances',
    returnLossDb({ farads: 11.3e-12, henries: 23e-9, loadOhm: 97, referenceOhm: 101 }, 61e6),
    '-20 * log10(abs((i*2*pi*61e6*23e-9 + 1/(1/97 + i*2*pi*61e6*11.3e-12) - 101) / (i*2*pi*61e6*23e-9 + 1/(1/97 + i*2*pi*61e6*11.3e-12) + 101)))',
    '',
  ],
  [
    'capacitance for a return loss',
    faradsForReturnLoss({ db: 13, hz: 61e6, loadOhm: 97, referenceOhm: 97 }),
    '2 * 10^(-13/20) / (2 * pi * 61 MHz * 97 ohm * sqrt(1 - 10^(-13/10)))',
    'F',
  ],
  [
    'damping',
    dampingRatio(lc) ?? Number.NaN,
    '(1.7 uH / (200 ohm) + 330 pF * 83 ohm * 117 ohm / (200 ohm)) / (2 * sqrt(1.7 uH * 330 pF * 117 ohm / (200 ohm)))',
    '',
  ],
  ['ringing', ringHz(lc) ?? Number.NaN, '1 / (2 * pi * sqrt(1.7 uH * 330 pF * 117 ohm / (200 ohm)))', 'Hz'],
  [
    'loss of an L–C section, by chain matrix',
    lcLossDb(lc, 7.3e6),
    '20 * log10(abs(((1 + i*2*pi*7.3e6*1.7e-6*i*2*pi*7.3e6*330e-12)*117 + i*2*pi*7.3e6*1.7e-6 + i*2*pi*7.3e6*330e-12*83*117 + 83) / 200))',
    '',
  ],
  ['loaded impedance', loadedImpedanceOhm(loadedLine), '118 ohm / sqrt(1 + 37 pF / (1.3 m * 43 pF/m))', 'ohm'],
  [
    'loaded delay over a metre',
    loadedDelaySecPerM({ ...loadedLine, delaySecPerM: 5.1e-9 }),
    '5.1 ns * sqrt(1 + 37 pF / (1.3 m * 43 pF/m))',
    's',
  ],
  [
    'spacing of nodes',
    leastSpacingM({ loadF: 97e-12, faradsPerM: 43e-12, ratio: 0.7 }),
    '97 pF / (43 pF/m * (1 / 0.7^2 - 1))',
    'm',
  ],
  ['pair, between the wires', pairDifferentialF(legs), '1.3 nF * 0.87 nF / (1.3 nF + 0.87 nF)', 'F'],
  ['pair, to chassis', pairCommonF(legs), '1.3 nF + 0.87 nF', 'F'],
  [
    'conversion, by complex dividers',
    conversionRatio(pair, 2.9e6),
    'abs(1/(1 + i*2*pi*2.9e6*47*1.3e-9) - 1/(1 + i*2*pi*2.9e6*47*0.87e-9))',
    '',
  ],
  ['worst conversion', worstConversionRatio(legs), '(1.3 nF - 0.87 nF) / (1.3 nF + 0.87 nF)', ''],
  [
    'worst conversion at',
    worstConversionHz(pair) ?? Number.NaN,
    '1 / (2 * pi * 47 ohm * sqrt(1.3 nF * 0.87 nF))',
    'Hz',
  ],
  ['crest', crestV({ workingRmsV: 117, supplyHz: 410 }), 'sqrt(2) * 117 V', 'V'],
  [
    'chassis current',
    lineCurrentRmsA({ supplyHz: 410, farads: 23e-9, workingRmsV: 117 }),
    '2 * pi * 410 Hz * 23 nF * 117 V',
    'A',
  ],
  ['current with a phase lost', phaseLostCurrentRmsA({ lineA: 7.1e-3, lineCount: 6 }), '6 * 7.1 mA / 3', 'A'],
  [
    'reactive power',
    reactiveVar({ supplyHz: 410, farads: 23e-9, workingRmsV: 117 }),
    '2 * pi * 410 Hz * 23 nF * (117 V)^2',
    'W',
  ],
  [
    'heat',
    heatW({ supplyHz: 410, farads: 23e-9, workingRmsV: 117, dissipationFrac: 0.021 }),
    '0.021 * 2 * pi * 410 Hz * 23 nF * (117 V)^2',
    'W',
  ],
  ['stored energy', storedJ({ farads: 1.7e-6, crestV: 271 }), '0.5 * 1.7 uF * (271 V)^2', 'J'],
  ['bleed', bleedSec({ ohm: 1.1e6, farads: 1.7e-6, fromV: 271, toV: 34 }), '1.1 Mohm * 1.7 uF * log(271 / 34)', 's'],
  ['withstand, AC', withstandV({ workingRmsV: 117, supplyHz: 410 }), '2.8 * 117 V', 'V'],
  ['withstand, DC', withstandV({ workingRmsV: 29.3, supplyHz: 0 }), '2.5 * 29.3 V', 'V'],
  ['Navy rule on DC', navyF(1700), '0.075 uF / kW * 1700 W', 'F'],
  ['inrush without resistance', inrushPeak({ ...light, ohm: 0 }).peakA, '28.4 V * sqrt(3.3 uF / (1.9 uH))', 'A'],
  ['inrush without inductance', inrushPeak({ ...light, henries: 0 }).peakA, '28.4 V / (0.21 ohm)', 'A'],
  [
    'inrush, lightly damped, at the time of its peak',
    inrushPeak(light).peakA,
    'a = 0.21/(2*1.9e-6); wd = sqrt(1/(1.9e-6*3.3e-6) - a^2); t = atan2(wd, a)/wd; 28.4/(wd*1.9e-6)*exp(-a*t)*sin(wd*t)',
    '',
  ],
  [
    'overshoot, lightly damped',
    inrushPeak(light).peakV,
    'a = 0.21/(2*1.9e-6); wd = sqrt(1/(1.9e-6*3.3e-6) - a^2); 28.4*(1 + exp(-pi*a/wd))',
    '',
  ],
  [
    'inrush, heavily damped',
    inrushPeak(heavy).peakA,
    'a = 4.7/(2*1.9e-6); r = sqrt(a^2 - 1/(1.9e-6*3.3e-6)); t = log((a + r)/(a - r))/(2*r); 28.4/(2*r*1.9e-6)*(exp(-(a - r)*t) - exp(-(a + r)*t))',
    '',
  ],
  [
    'inrush, critically damped',
    inrushPeak({ ...light, ohm: 2 * Math.sqrt(1.9 / 3.3) }).peakA,
    '2 * 28.4 V / (e * 2 * sqrt(1.9 uH / (3.3 uF)))',
    'A',
  ],
]

/** Worst relative difference today is about 1e-14. */
const RELATIVE = 1e-12

describe('a second opinion on every closed form of loading, pair and power', () => {
  for (const [name, ours, expression, unit] of CASES) {
    it(`${name} has the value and the dimension mathjs finds`, () => {
      const theirs = lastOf(expression, unit)
      expect(Math.abs(ours / theirs - 1), `ours ${ours}, theirs ${theirs}`).toBeLessThan(RELATIVE)
    })
  }
})

/** Expressions of several statements give a set of results: the last one counts. */
function lastOf(expression: string, unit: string): number {
  if (!expression.includes(';')) return opinion(expression, unit)
  const parser = math.parser()
  const results = expression.split(';').map((part): unknown => parser.evaluate(part))
  const value = results.at(-1)
  if (typeof value !== 'number') throw new Error(`${expression} is not a plain number`)
  return value
}
