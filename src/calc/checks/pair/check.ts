/** How much common mode two unequal capacitors of a pair turn into signal. */
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
import type { Basis, Cell, Check, Finding, Given, Input, Picture, Result, Step } from '../../types.ts'
import { FARADS } from '../noise-inputs.ts'
import { type Told, told } from '../told.ts'

const inputs = [
  {
    key: 'capacitanceF',
    fact: 'legF',
    label: 'One leg to chassis',
    help: 'All capacitance of one leg, as it may really be: two 1 nF parts of ±20 % can be 1.2 and 0.8 nF.',
    type: FARADS,
    whenEmpty: {
      do: 'ask',
      how: 'Marked value times one plus the tolerance, or measured at 1 kHz with the line isolated.',
    },
  },
  {
    key: 'capacitance2F',
    fact: 'leg2F',
    label: 'Other leg to chassis',
    help: 'The same for the other leg; 0 for a leg without a capacitor.',
    type: FARADS,
    whenEmpty: {
      do: 'ask',
      how: 'Marked value times one minus the tolerance, or measured. A leg without a capacitor is 0.',
    },
  },
  {
    key: 'legOhm',
    fact: 'legOhm',
    label: 'Series resistance of each leg',
    help: 'What the common-mode noise comes through in each leg.',
    type: { is: 'number', quantity: 'resistance', min: 1e-6, max: 1e9 },
    whenEmpty: {
      do: 'ask',
      how: 'Rarely known. It moves the frequency of the worst, not the worst itself.',
      offer: { text: '50', why: 'a bench value' },
    },
  },
  {
    key: 'frequencyHz',
    fact: 'noiseHz',
    label: 'Noise frequency',
    help: 'Where the common-mode noise is. Several: 2M;12M. Empty: only the worst of all frequencies.',
    type: { is: 'number', quantity: 'frequency', min: 0, max: 1e11, many: true },
    whenEmpty: { do: 'omit' },
  },
] as const satisfies readonly Input[]

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

function compute(given: Given<typeof inputs>): Result {
  const { capacitanceF: legF, capacitance2F: leg2F, legOhm, frequencyHz } = given
  if (legF === undefined || leg2F === undefined || legOhm === undefined) return waiting(given)
  const circuit = { legF, leg2F, legOhm }
  const at = hardest(circuit, frequencyHz ?? [])
  const worst = worstConversionRatio(circuit)
  return {
    ok: true,
    headline: headlineOf(circuit, at),
    findings: findingsOf(circuit),
    outputs: {
      conversionDb: conversionOutput(circuit, at),
      worstConversionDb: worstOutput(circuit, worst),
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
    pictures: plotsOf(circuit, frequencyHz ?? []),
    cautions: ['matched-legs', 'chassis-capacitance', 'screening'],
  }
}

function waiting(given: Given<typeof inputs>): Result {
  const missing = [
    given.capacitanceF === undefined ? 'one leg to chassis' : undefined,
    given.capacitance2F === undefined ? 'the other leg' : undefined,
    given.legOhm === undefined ? 'the series resistance' : undefined,
  ].filter((word) => word !== undefined)
  const cell = none(`needs ${missing.join(', ')}`)
  const output = { cell, basis: basisOf([]) }
  return {
    ok: true,
    headline: `Enter ${missing.join(', ')}.`,
    findings: [],
    outputs: { conversionDb: output, worstConversionDb: output, worstHz: output },
    bounds: [],
    rungs: [],
    pictures: [],
    cautions: [],
  }
}

type Hardest = { readonly hz: number; readonly ratio: number } | undefined

function hardest(circuit: PairCircuit, frequenciesHz: readonly number[]): Hardest {
  return frequenciesHz
    .map((hz) => ({ hz, ratio: conversionRatio(circuit, hz) }))
    .reduce<Hardest>((worst, at) => (worst === undefined || at.ratio > worst.ratio ? at : worst), undefined)
}

const EQUAL = 'the legs are equal: nothing is converted'

function conversionOutput(circuit: PairCircuit, at: Hardest) {
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

function worstOutput(circuit: PairCircuit, worst: number) {
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

function headlineOf(circuit: PairCircuit, at: Hardest): string {
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
  if (legF === 0 || leg2F === 0)
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

export const pairCheck: Check<typeof inputs, Told> = {
  id: 'pair',
  title: 'Pair',
  question: 'How much common mode do two unequal capacitors turn into signal?',
  inputs,
  outputs: [
    { key: 'conversionDb', label: 'Conversion at the noise', quantity: 'decibel', digits: 4, lead: true },
    { key: 'worstConversionDb', label: 'Worst conversion', quantity: 'decibel', digits: 4, lead: true },
    { key: 'worstHz', label: 'Worst at', quantity: 'frequency', digits: 4 },
    { key: 'differentialF', label: 'Between the wires', quantity: 'capacitance', digits: 3 },
    { key: 'commonF', label: 'Both wires to chassis', quantity: 'capacitance', digits: 3 },
  ],
  ...told(compute),
}
