/** Each figure of a surge with its working. */
import { formatQuantity } from '../quantity/format.ts'
import type { Quantity } from '../quantity/quantity.ts'
import type { Basis, Cell, Source, Step } from '../types.ts'
import type { Pulse } from './pulse.ts'
import type { RunFigures } from './runs.ts'
import type { FittedPart } from './setup.ts'
import type { Usage } from './usage.ts'
import type { Judgement } from './verdicts.ts'

type Figure = { readonly cell: Cell; readonly basis: Basis }
export type Figures = Readonly<Record<string, Figure>>

const SOLVER: Source = {
  id: 'derived',
  clause: 'exact steps of the piecewise-linear circuit; 13 ngspice circuits agree within 0.02 %',
  standing: 'derived',
}
const show = (si: number, quantity: Quantity, digits = 4) => formatQuantity(si, quantity, digits)
const si = (value: number): Cell => ({ is: 'si', si: value })
const none = (why: string): Cell => ({ is: 'none', why })
const step = (formula: string, withNumbers: string, value: number, quantity: Quantity): Step => ({
  formula,
  withNumbers,
  si: value,
  quantity,
})

export type FigureFacts = {
  readonly run: RunFigures
  readonly pulse: Pulse
  readonly part: FittedPart | undefined
  readonly usage: Usage | undefined
  readonly withstandV: number | undefined
}

/** Volts, amperes, energy and times of the run. */
export function runFigures({ run, pulse, part, usage, withstandV }: FigureFacts): Figures {
  const basis: Basis = {
    steps: [pulseStep(pulse)],
    assumptions: [pulse.note, ...pulse.assumed, ...MODEL, ...(part ? partWords(part) : [])],
    sources: [SOLVER, ...pulse.sources],
  }
  const figure = (cell: Cell, more: readonly Step[] = []): Figure => ({
    cell,
    basis: { ...basis, steps: [...basis.steps, ...more] },
  })
  const bare = 'no suppressor'
  return {
    loadPeakV: figure(si(run.load.value)),
    suppressorPeakV: part ? figure(si(run.clamp.value), [clampStep(run, part)]) : figure(none(bare)),
    connectorPeakV: figure(si(run.connector.value)),
    peakA: part ? figure(si(run.amps.value)) : figure(none(bare)),
    energyJ: part ? figure(si(run.energyJ)) : figure(none(bare)),
    usedFrac: usedFigure(usage, part !== undefined),
    loadPeakSec: figure(si(run.load.sec)),
    connectorPeakSec: figure(si(run.connector.sec)),
    ...(part ? { suppressorPeakSec: figure(si(run.clamp.sec)), peakASec: figure(si(run.amps.sec)) } : {}),
    ...(run.capacitor ? { capacitorPeakV: figure(si(run.capacitor.value)) } : {}),
    ...(run.overshoot
      ? { overshootV: figure(si(run.overshoot.volts)), overshootSec: figure(si(run.overshoot.sec)) }
      : {}),
    ...excessFigures(run, withstandV, figure),
  }
}

const MODEL = [
  'starts at rest: no supply on the line, nothing charged',
  'suppressor: straight above its breakdown, 0.1 µS below; forward 1 V + 0.02 Ω where unidirectional',
] as const

function partWords(part: FittedPart): readonly string[] {
  const words = part.fromClass
    ? [
        `breakdown ${show(part.leastV, 'voltage')} to ${show(part.mostV, 'voltage')} from its stand-off; the most for volts, the least for current`,
      ]
    : ['breakdown as entered, at 25 °C']
  return part.ohmFromClass ? [...words, 'dynamic resistance of its class, overstated for short pulses'] : words
}

function pulseStep({ row, openCircuitV, shortCircuitA, sourceOhm }: Pulse): Step {
  return row.form === 'current'
    ? step(
        `${row.name}: short-circuit peak`,
        `${show(openCircuitV, 'voltage')}, ${show(sourceOhm, 'resistance')}`,
        shortCircuitA,
        'current',
      )
    : step(
        `${row.name}: open-circuit peak`,
        `${show(sourceOhm, 'resistance')} source, ${show(shortCircuitA, 'current')} into a short`,
        openCircuitV,
        'voltage',
      )
}

const clampStep = (run: RunFigures, part: FittedPart): Step =>
  step(
    'V = Vbr + Rd·I',
    `${show(part.mostV, 'voltage')} + ${show(part.dynamicOhm, 'resistance')} · ${show(run.amps.value, 'current')}`,
    run.clamp.value,
    'voltage',
  )

function excessFigures(run: RunFigures, withstandV: number | undefined, figure: (cell: Cell) => Figure): Figures {
  const { excess } = run
  if (!excess || withstandV === undefined) return {}
  return {
    heldAfterSec: figure(excess.isOpen ? none('still above at the end of the run') : si(excess.untilSec)),
    letThroughVs: figure(si(excess.voltSec)),
  }
}

function usedFigure(usage: Usage | undefined, hasPart: boolean): Figure {
  const sources: Basis['sources'] = [
    { id: 'T30', clause: 'heat spreads with the square root of time', standing: 'read' },
    { id: 'derived', clause: 'integral over the real power', standing: 'derived' },
  ]
  if (!usage)
    return {
      cell: none(hasPart ? 'needs the 10/1000 µs pulse power' : 'no suppressor'),
      basis: { steps: [], assumptions: [], sources },
    }
  const { factor, peakW, byPowerFrac, byShapeFrac, deratedFrac, repeatFactor, repeatWords } = usage
  return {
    cell: usage.totalFrac === undefined ? none('no rating left at this temperature') : si(usage.totalFrac),
    basis: {
      steps: [
        step('by the heat of its real power, against 10/1000 µs', 'max ∫p(τ)/√(t − τ)dτ', byPowerFrac, 'fraction'),
        step(
          'by its peak power: P / (P_rated · factor of the nominal shape)',
          `peak ${show(peakW, 'power')}, factor ${show(factor, 'number')}`,
          byShapeFrac,
          'fraction',
        ),
        step('left of the rating at this temperature', 'straight from 25 °C to its end point', deratedFrac, 'fraction'),
        step(`repeats, an estimate: ${repeatWords}`, 'heat left as E/√t, none removed', repeatFactor, 'number'),
      ],
      assumptions: [
        'the larger of both counts, times repeats, over what temperature leaves',
        'the part’s own pulse curve governs where it is known',
      ],
      sources,
    },
  }
}

/** The four verdicts as words; one that does not apply says why. */
export function verdictFigures(given: {
  readonly circuit: Judgement
  readonly suppressor: Judgement | undefined
  readonly capacitor: Judgement | undefined
  readonly signal: Figure
}): Figures {
  const basis: Basis = { steps: [], assumptions: ['reasons under findings'], sources: [SOLVER] }
  const word = (judgement: Judgement | undefined, why: string): Figure => ({
    cell: judgement ? { is: 'word', word: judgement.word, verdict: judgement.verdict } : none(why),
    basis,
  })
  return {
    circuitVerdict: word(given.circuit, ''),
    suppressorVerdict: word(given.suppressor, 'no suppressor'),
    capacitorVerdict: word(given.capacitor, 'no filter capacitor'),
    signalVerdict: given.signal,
  }
}
