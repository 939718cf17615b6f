/** What the pair check says and draws. */

import { ONE_WIRE, usualLeakage } from '../../explain/choke.ts'
import { waitingFor } from '../../explain/sentence.ts'
import { missingInputs, missingNames } from '../../line/missing.ts'
import { type ChokedPair, chokedConversionRatio, isBalanced, type WorstConversion } from '../../network/choked-pair.ts'
import { pairCommonF, pairDifferentialF, ratioDb, worstConversionHz } from '../../pair.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Quantity } from '../../quantity/quantity.ts'
import type { Basis, Cell, Finding, Picture, Step, Success } from '../../types.ts'
import { type Hardest, hasDeadLeg, isOneWire, isResonant, type PairFigures } from './figures.ts'
import { type PairGiven, pairInputs } from './inputs.ts'
import { pairSaid } from './sentence.ts'

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
  const { circuit, hardest: at, verdict, worst } = figures
  if (circuit === undefined || worst === undefined) return waiting(given)
  const { legF, leg2F } = circuit
  return {
    ok: true,
    verdict,
    ...pairSaid(given, figures, circuit, worst),
    findings: [...chokeFindings(given, circuit, worst), ...findingsOf(circuit)],
    outputs: {
      conversionDb: conversionOutput(circuit, at),
      worstConversionDb: worstOutput(circuit, worst),
      worstHz: worstHzOutput(circuit, worst),
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
    pictures: plotsOf(circuit, worst, given.frequencyHz ?? []),
    cautions: ['matched-legs', 'chassis-capacitance', 'screening'],
  }
}

function waiting(given: PairGiven): Success {
  const missing = missingNames(pairInputs, given).join(', ')
  const output = { cell: none(`needs ${missing}`), basis: basisOf([]) }
  return {
    ok: true,
    verdict: 'unknown',
    ...waitingFor(missingInputs(pairInputs, given)),
    findings: [],
    outputs: { conversionDb: output, worstConversionDb: output, worstHz: output },
    bounds: [],
    rungs: [],
    pictures: [],
    cautions: [],
  }
}

const EQUAL = 'the legs are equal: nothing is converted'

function conversionOutput(circuit: ChokedPair, at: Hardest | undefined) {
  if (isBalanced(circuit)) return { cell: none(EQUAL), basis: basisOf([]) }
  if (at === undefined) return { cell: none('no noise frequency was entered'), basis: basisOf([]) }
  if (at.ratio === 0) return { cell: none('nothing is converted at DC'), basis: basisOf([]) }
  const value = ratioDb(at.ratio)
  return {
    cell: si(value),
    basis: basisOf([
      {
        formula:
          circuit.choke === undefined
            ? 'Vdm/Vcm = ω·R·|C1 − C2| / √((1 + (ωRC1)²)(1 + (ωRC2)²))'
            : 'Vdm/Vcm of R, the coupled windings and C in each leg, solved together',
        withNumbers: `${show(at.hz, 'frequency')}, R = ${show(circuit.legOhm, 'resistance')}, ${show(circuit.legF, 'capacitance')} and ${show(circuit.leg2F, 'capacitance')}`,
        si: value,
        quantity: 'decibel',
      },
    ]),
  }
}

function worstOutput(circuit: ChokedPair, worst: WorstConversion) {
  if (worst.ratio === 0) return { cell: none(EQUAL), basis: basisOf([]) }
  const value = ratioDb(worst.ratio)
  const { legF, leg2F } = circuit
  const step =
    circuit.choke === undefined
      ? {
          formula: 'largest |Vdm/Vcm| = |C1 − C2|/(C1 + C2)',
          withNumbers: `${show(Math.abs(legF - leg2F), 'capacitance')} / ${show(legF + leg2F, 'capacitance')}`,
        }
      : {
          formula: 'largest |Vdm/Vcm| from 10 Hz to 10 GHz and at each resonance',
          withNumbers: `found at ${show(worst.hz ?? 0, 'frequency')}`,
        }
  return { cell: si(value), basis: basisOf([{ ...step, si: value, quantity: 'decibel' }]) }
}

function worstHzOutput(circuit: ChokedPair, { hz }: WorstConversion) {
  if (isBalanced(circuit)) return { cell: none(EQUAL), basis: basisOf([]) }
  if (hz === undefined)
    return { cell: none('one leg has no capacitor: the conversion keeps rising towards 0 dB'), basis: basisOf([]) }
  const step =
    circuit.choke === undefined
      ? {
          formula: 'f = 1/(2π·R·√(C1·C2))',
          withNumbers: `1/(2π · ${show(circuit.legOhm, 'resistance')} · √(${show(circuit.legF, 'capacitance')} · ${show(circuit.leg2F, 'capacitance')}))`,
        }
      : { formula: 'where the largest was found', withNumbers: '10 Hz to 10 GHz and each resonance' }
  return { cell: si(hz), basis: basisOf([{ ...step, si: hz, quantity: 'frequency' }]) }
}

/** What was counted of the choke, and where it rings with the capacitors. */
function chokeFindings(given: PairGiven, { choke }: ChokedPair, worst: WorstConversion): readonly Finding[] {
  if (isOneWire(given)) return [ONE_WIRE]
  if (choke === undefined) return []
  return [
    ...(isResonant(worst)
      ? [
          {
            verdict: 'marginal',
            sentence: `The choke rings with the capacitors near ${show(worst.hz ?? 0, 'frequency', 3)}: more signal appears there than there is common mode. Damp it, or keep that frequency clear.`,
          } as const,
        ]
      : []),
    ...(given.chokeLeakageH === undefined ? [usualLeakage(show(choke.leakageH, 'inductance', 3))] : []),
  ]
}

function findingsOf(circuit: ChokedPair): readonly Finding[] {
  const { legF, leg2F } = circuit
  if (legF === leg2F) {
    return legF === 0
      ? []
      : [{ verdict: 'ok', sentence: 'Real parts are never equal: enter both ends of their tolerance.' }]
  }
  if (hasDeadLeg(circuit))
    return [{ verdict: 'marginal', sentence: 'One leg has no capacitor. One dead leg is worse than none on both.' }]
  // With a choke it would ring with the leakage: not promised.
  if (circuit.choke !== undefined) return []
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

function plotsOf(circuit: ChokedPair, worst: WorstConversion, frequenciesHz: readonly number[]): readonly Picture[] {
  const largestF = Math.max(circuit.legF, circuit.leg2F)
  const centreHz = worst.hz ?? worstConversionHz(circuit) ?? 1 / (2 * Math.PI * circuit.legOhm * largestF)
  if (worst.ratio === 0 || centreHz > PLOT_UP_TO_HZ) return []
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
          y: x.map((hz) => ratioDb(chokedConversionRatio(circuit, hz))),
        },
      ],
      bands: inside.map((hz) => ({ label: show(hz, 'frequency', 3), from: hz, to: hz })),
      limits: [],
      flags: [`never above ${show(ratioDb(worst.ratio), 'decibel')}`],
    },
  ]
}
