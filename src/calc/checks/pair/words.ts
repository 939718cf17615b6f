/** What the pair check says and draws. */
import { missingNames } from '../../line/missing.ts'
import {
  conversionRatio,
  type PairCircuit,
  pairCommonF,
  pairDifferentialF,
  ratioDb,
  worstConversionHz,
  worstConversionRatio,
} from '../../pair.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Quantity } from '../../quantity/quantity.ts'
import type { Basis, Cell, Finding, Picture, Step, Success } from '../../types.ts'
import { type Hardest, hasDeadLeg, type PairFigures } from './figures.ts'
import { type PairGiven, pairInputs } from './inputs.ts'

const show = (si: number, quantity: Quantity, digits = 4): string => formatQuantity(si, quantity, digits)
const none = (why: string): Cell => ({ is: 'none', why })
const si = (value: number): Cell => ({ is: 'si', si: value })

const basisOf = (steps: readonly Step[]): Basis => ({
  steps,
  assumptions: ['both legs have the same series resistance; the receiver is a high impedance'],
  sources: [
    { id: 'derived', standing: 'derived' },
    { id: 'S46', standing: 'read' },
  ],
})

export function explainPair(given: PairGiven, figures: PairFigures): Success {
  const { circuit, hardest: at, verdict } = figures
  if (circuit === undefined) return waiting(given)
  const { legF, leg2F } = circuit
  return {
    ok: true,
    ...(verdict === undefined ? {} : { verdict }),
    headline: headlineOf(circuit, at),
    findings: findingsOf(circuit),
    outputs: {
      conversionDb: conversionOutput(circuit, at),
      worstConversionDb: worstOutput(circuit),
      worstHz: worstHzOutput(circuit),
      differentialF: {
        cell: si(pairDifferentialF(circuit)),
        basis: basisOf([
          {
            formula: 'C_dm = C1·C2/(C1 + C2)',
            withNumbers: `${show(legF, 'capacitance')} · ${show(leg2F, 'capacitance')} / ${show(legF + leg2F, 'capacitance')}`,
            si: pairDifferentialF(circuit),
            quantity: 'capacitance',
          },
        ]),
      },
      commonF: {
        cell: si(pairCommonF(circuit)),
        basis: basisOf([
          {
            formula: 'C_cm = C1 + C2',
            withNumbers: `${show(legF, 'capacitance')} + ${show(leg2F, 'capacitance')}`,
            si: pairCommonF(circuit),
            quantity: 'capacitance',
          },
        ]),
      },
    },
    bounds: [],
    rungs: [],
    pictures: plotsOf(circuit, given.frequencyHz ?? []),
    cautions: ['matched-legs', 'chassis-capacitance', 'screening'],
  }
}

function waiting(given: PairGiven): Success {
  const missing = missingNames(pairInputs, given).join(', ')
  const output = { cell: none(`needs ${missing}`), basis: basisOf([]) }
  return {
    ok: true,
    headline: `Enter ${missing}.`,
    findings: [],
    outputs: { conversionDb: output, worstConversionDb: output, worstHz: output },
    bounds: [],
    rungs: [],
    pictures: [],
    cautions: [],
  }
}

const EQUAL = 'the legs are equal: nothing is converted'

function conversionOutput(circuit: PairCircuit, at: Hardest | undefined) {
  if (circuit.legF === circuit.leg2F) return { cell: none(EQUAL), basis: basisOf([]) }
  if (at === undefined) return { cell: none('no noise frequency was entered'), basis: basisOf([]) }
  if (at.ratio === 0) return { cell: none('nothing is converted at DC'), basis: basisOf([]) }
  const value = ratioDb(at.ratio)
  return {
    cell: si(value),
    basis: basisOf([
      {
        formula: 'Vdm/Vcm = ω·R·|C1 − C2| / √((1 + (ωRC1)²)(1 + (ωRC2)²))',
        withNumbers: `${show(at.hz, 'frequency')}, R = ${show(circuit.legOhm, 'resistance')}, ${show(circuit.legF, 'capacitance')} and ${show(circuit.leg2F, 'capacitance')}`,
        si: value,
        quantity: 'decibel',
      },
    ]),
  }
}

function worstOutput(circuit: PairCircuit) {
  const worst = worstConversionRatio(circuit)
  if (worst === 0) return { cell: none(EQUAL), basis: basisOf([]) }
  const value = ratioDb(worst)
  const { legF, leg2F } = circuit
  return {
    cell: si(value),
    basis: basisOf([
      {
        formula: 'largest |Vdm/Vcm| = |C1 − C2|/(C1 + C2)',
        withNumbers: `${show(Math.abs(legF - leg2F), 'capacitance')} / ${show(legF + leg2F, 'capacitance')}`,
        si: value,
        quantity: 'decibel',
      },
    ]),
  }
}

function worstHzOutput(circuit: PairCircuit) {
  if (circuit.legF === circuit.leg2F) return { cell: none(EQUAL), basis: basisOf([]) }
  const hz = worstConversionHz(circuit)
  if (hz === undefined)
    return { cell: none('one leg has no capacitor: the conversion keeps rising towards 0 dB'), basis: basisOf([]) }
  return {
    cell: si(hz),
    basis: basisOf([
      {
        formula: 'f = 1/(2π·R·√(C1·C2))',
        withNumbers: `1/(2π · ${show(circuit.legOhm, 'resistance')} · √(${show(circuit.legF, 'capacitance')} · ${show(circuit.leg2F, 'capacitance')}))`,
        si: hz,
        quantity: 'frequency',
      },
    ]),
  }
}

function headlineOf(circuit: PairCircuit, at: Hardest | undefined): string {
  if (circuit.legF === circuit.leg2F) return 'Equal legs: no common mode becomes signal.'
  const worst = `at worst ${show(ratioDb(worstConversionRatio(circuit)), 'decibel')}`
  const hz = worstConversionHz(circuit)
  const where = hz === undefined ? ', rising with frequency' : ` at ${show(hz, 'frequency', 3)}`
  if (at === undefined || at.ratio === 0) return `Common mode becomes signal, ${worst}${where}.`
  return `${show(ratioDb(at.ratio), 'decibel')} of the common mode becomes signal at ${show(at.hz, 'frequency', 3)}; ${worst}${where}.`
}

function findingsOf(circuit: PairCircuit): readonly Finding[] {
  const { legF, leg2F } = circuit
  if (legF === leg2F) {
    return legF === 0
      ? []
      : [{ verdict: 'ok', sentence: 'Real parts are never equal: enter both ends of their tolerance.' }]
  }
  if (hasDeadLeg(circuit))
    return [{ verdict: 'marginal', sentence: 'One leg has no capacitor. One dead leg is worse than none on both.' }]
  const crossF = 10 * Math.max(legF, leg2F)
  return [
    {
      verdict: 'ok',
      sentence: `A capacitor from line to line of at least ${show(crossF, 'capacitance', 3)}, ten times the larger leg, takes the conversion down, where the signal stands it.`,
    },
  ]
}

/** A worst beyond the frequency of light helps nobody, and the arithmetic ends not far above. */
const PLOT_UP_TO_HZ = 1e15
const CURVE_POINTS = 241
const DECADES_EACH_SIDE = 3

function plotsOf(circuit: PairCircuit, frequenciesHz: readonly number[]): readonly Picture[] {
  const largestF = Math.max(circuit.legF, circuit.leg2F)
  const centreHz = worstConversionHz(circuit) ?? 1 / (2 * Math.PI * circuit.legOhm * largestF)
  if (circuit.legF === circuit.leg2F || centreHz > PLOT_UP_TO_HZ) return []
  const x = Float64Array.from(
    { length: CURVE_POINTS },
    (_, i) => centreHz * 10 ** (DECADES_EACH_SIDE * ((2 * i) / (CURVE_POINTS - 1) - 1)),
  )
  const inside = frequenciesHz.filter((hz) => hz > 0)
  return [
    {
      is: 'plot',
      title: 'Common mode turned into signal',
      xLabel: 'Frequency',
      xQuantity: 'frequency',
      xScale: 'log',
      yLabel: 'Conversion',
      yQuantity: 'decibel',
      curves: [
        {
          id: 'conversion',
          label: 'conversion',
          style: 'solid',
          x,
          y: x.map((hz) => ratioDb(conversionRatio(circuit, hz))),
        },
      ],
      bands: inside.map((hz) => ({ label: show(hz, 'frequency', 3), from: hz, to: hz })),
      limits: [],
      flags: [`never above ${show(ratioDb(worstConversionRatio(circuit)), 'decibel')}`],
    },
  ]
}
