/** Each figure of a power line with its working: current, energy, bleed, inrush, withstand. */
import { formatQuantity } from '../quantity/format.ts'
import type { Quantity } from '../quantity/quantity.ts'
import type { Basis, Cell, Source, Step } from '../types.ts'
import { type InrushPeak, inrushPeak } from './inrush.ts'
import {
  bleedSec,
  crestV,
  isThreePhase,
  lineCurrentRmsA,
  phaseLostCurrentRmsA,
  reactiveVar,
  residualCurrentRmsA,
  storedJ,
  withstandV,
} from './supply.ts'

/** What was entered; wiring and bleed may be missing. */
export type PowerLine = {
  readonly workingRmsV: number
  readonly supplyHz: number
  readonly capacitanceF: number
  readonly wiringOhm?: number | undefined
  readonly wiringH?: number | undefined
  readonly bleedOhm?: number | undefined
}

export type PowerOutputs = Readonly<Record<string, { readonly cell: Cell; readonly basis: Basis }>>

const DERIVED: Source = { id: 'derived', standing: 'derived' }
const show = (value: number, quantity: Quantity, digits = 3): string => formatQuantity(value, quantity, digits)

/** The level to which a capacitor is often required to bleed before it may be touched. */
const TOUCH_V = 34
const BLED_SHARE = 0.01

/** A basis of one or more steps; derived unless a source is named. */
export function basisOf(steps: readonly Step[], assumptions: readonly string[] = [], source: Source = DERIVED): Basis {
  return { steps, assumptions, sources: [source] }
}

const figure = (step: Step, assumptions: readonly string[] = [], source?: Source) => ({
  cell: { is: 'si' as const, si: step.si },
  basis: basisOf([step], assumptions, source),
})
/** An output that does not exist, and why. */
export const lacking = (why: string) => ({ cell: { is: 'none' as const, why }, basis: basisOf([]) })

/** Current of each line, of all of them, the net one, and (AC only) reactive power. */
export function currentOutputs(given: PowerLine, lineCount: number): PowerOutputs {
  const { workingRmsV, supplyHz, capacitanceF: farads } = given
  const lineA = lineCurrentRmsA({ supplyHz, farads, workingRmsV })
  const residualA = residualCurrentRmsA({ lineA, lineCount })
  const per = show(lineA, 'current', 4)
  const outputs: PowerOutputs = {
    currentRmsA: figure({
      formula: 'I = 2π·f·C·V',
      withNumbers: `2π · ${show(supplyHz, 'frequency', 4)} · ${show(farads, 'capacitance', 4)} · ${show(workingRmsV, 'voltage', 4)}`,
      si: lineA,
      quantity: 'current',
    }),
    totalCurrentRmsA: figure({
      formula: 'I_total = n·I',
      withNumbers: `${lineCount} · ${per}`,
      si: lineA * lineCount,
      quantity: 'current',
    }),
    residualCurrentRmsA: figure(
      {
        formula: isThreePhase(lineCount) ? 'balanced phases cancel at the fundamental' : 'I_residual = n·I',
        withNumbers: isThreePhase(lineCount) ? `${lineCount} lines, 120° apart` : `${lineCount} · ${per}`,
        si: residualA,
        quantity: 'current',
      },
      [isThreePhase(lineCount) ? 'the lines are balanced three-phase sets' : 'the lines do not cancel (conservative)'],
    ),
  }
  if (supplyHz === 0) return outputs
  const reactive = reactiveVar({ supplyHz, farads, workingRmsV })
  return {
    ...outputs,
    ...(isThreePhase(lineCount)
      ? {
          phaseLostCurrentRmsA: figure({
            formula: 'I_lost = n·I/3',
            withNumbers: `${lineCount} · ${per} / 3`,
            si: phaseLostCurrentRmsA({ lineA, lineCount }),
            quantity: 'current',
          }),
        }
      : {}),
    reactiveVa: figure({
      formula: 'Q = V·I',
      withNumbers: `${show(workingRmsV, 'voltage', 4)} · ${per}`,
      si: reactive,
      quantity: 'number',
    }),
  }
}

/** Stored energy at the crest and the time to bleed it. */
export function energyOutputs(given: PowerLine): PowerOutputs {
  const { capacitanceF: farads, bleedOhm } = given
  const fromV = crestV(given)
  const storedOutput = figure(
    {
      formula: given.supplyHz === 0 ? 'E = ½·C·V²' : 'E = ½·C·(√2·V)²',
      withNumbers: `½ · ${show(farads, 'capacitance', 4)} · (${show(fromV, 'voltage', 4)})²`,
      si: storedJ({ farads, crestV: fromV }),
      quantity: 'energy',
    },
    ['one capacitor, switched off at the crest'],
  )
  if (bleedOhm === undefined) {
    const none = lacking('no bleed resistor was entered: the charge stays')
    return { storedJ: storedOutput, bleedSec: none, bleedTo34Sec: none }
  }
  const bleed = (toV: number) => bleedSec({ ohm: bleedOhm, farads, fromV, toV })
  const rc = `${show(bleedOhm, 'resistance', 4)} · ${show(farads, 'capacitance', 4)}`
  return {
    storedJ: storedOutput,
    bleedSec: figure(
      { formula: 't = R·C·ln 100', withNumbers: `${rc} · 4.605`, si: bleed(BLED_SHARE * fromV), quantity: 'time' },
      ['to 1 % of the crest, one capacitor on the resistor'],
    ),
    bleedTo34Sec: figure(
      {
        formula: 't = R·C·ln(V/34 V)',
        withNumbers:
          fromV > TOUCH_V
            ? `${rc} · ln(${show(fromV, 'voltage', 4)}/34 V)`
            : `${show(fromV, 'voltage', 4)} is already below 34 V`,
        si: bleed(TOUCH_V),
        quantity: 'time',
      },
      ['one capacitor on the resistor'],
    ),
  }
}

const DAMPING_WORDS: Readonly<Record<InrushPeak['damping'], { readonly formula: string; readonly words: string }>> = {
  none: { formula: 'I = V·√(C/L)', words: 'no resistance counted: the lossless bound' },
  light: { formula: 'I = V·√(C/L)·e^(−a·t), t = atan(ωd/a)/ωd', words: 'lightly damped: the capacitor overshoots' },
  critical: { formula: 'I = 2V/(e·R)', words: 'critically damped: no overshoot' },
  heavy: { formula: 'I = V/(L·(s1 − s2))·(e^(s1·t) − e^(s2·t))', words: 'heavily damped: no overshoot' },
  'no-inductance': { formula: 'I = V/R', words: 'no inductance counted: the resistance alone limits it' },
}

/** Inrush peak; undefined when neither resistance nor inductance of the wiring is known, or they are next to nothing. */
export function inrushOf(given: PowerLine): InrushPeak | undefined {
  const { wiringOhm: ohm = 0, wiringH: henries = 0, capacitanceF: farads } = given
  if (ohm === 0 && henries === 0) return undefined
  const peak = inrushPeak({ stepV: crestV(given), farads, ohm, henries })
  // Wiring near 1e-300 bounds the current no better than none: the quotient overflows.
  return Number.isFinite(peak.peakA) && Number.isFinite(peak.peakV) ? peak : undefined
}

/** Inrush current and the peak on the capacitor. */
export function inrushOutputs(given: PowerLine, peak: InrushPeak | undefined): PowerOutputs {
  if (peak === undefined) {
    const none = lacking('enter the resistance or the inductance of the wiring')
    return { inrushPeakA: none, inrushPeakV: none }
  }
  const { wiringOhm = 0, wiringH = 0, capacitanceF } = given
  const { formula, words } = DAMPING_WORDS[peak.damping]
  const withNumbers = `V = ${show(crestV(given), 'voltage', 4)}, C = ${show(capacitanceF, 'capacitance', 4)}, R = ${show(wiringOhm, 'resistance', 4)}, L = ${show(wiringH, 'inductance', 4)}`
  const assumptions = [
    words,
    'switched on at the crest into an empty capacitor',
    'the source behind the wiring is stiff',
  ]
  return {
    inrushPeakA: figure({ formula, withNumbers, si: peak.peakA, quantity: 'current' }, assumptions),
    inrushPeakV: figure(
      { formula: 'V_peak = V·(1 + e^(−π·a/ωd))', withNumbers, si: peak.peakV, quantity: 'voltage' },
      assumptions,
    ),
  }
}

/** Withstand test of a part rated for this working voltage. */
export function withstandOutput(given: PowerLine) {
  const factor = given.supplyHz === 0 ? '2.5' : '2.8'
  return figure(
    {
      formula: given.supplyHz === 0 ? 'V_test = 2.5 · V DC' : 'V_test = 2.8 · V rms',
      withNumbers: `${factor} · ${show(given.workingRmsV, 'voltage', 4)}`,
      si: withstandV(given),
      quantity: 'voltage',
    },
    ['a part rated for just this voltage; held 5 s to 1 min, at most 50 mA while charging'],
    { id: 'S28', clause: '4.6.3', standing: 'read' },
  )
}
