/** One pulse through one circuit, and the figures read from it; the worse of several. */
import type { Progress } from '../types.ts'
import type { SurgeCircuit } from './circuit.ts'
import { type Used, usedByPulse } from './rating.ts'
import type { Shape } from './shape.ts'
import { type SolveOptions, solveSurge } from './solve.ts'
import { type Excess, excessOver, integral, type Peak, peakOf, powerOf, type Trace } from './trace.ts'

export type RunFigures = {
  readonly trace: Trace
  /** across the junction, without its lead */
  readonly clamp: Peak
  readonly connector: Peak
  readonly load: Peak
  /** highest on any capacitor of the filter; undefined without one */
  readonly capacitor: Peak | undefined
  readonly amps: Peak
  readonly peakW: number
  readonly energyJ: number
  readonly used: Used | undefined
  readonly overshoot: { readonly volts: number; readonly sec: number } | undefined
  /** above what the circuit withstands */
  readonly excess: Excess | undefined
}

export type RunQuestion = {
  readonly circuit: SurgeCircuit
  readonly shape: Shape
  readonly withstandV?: number | undefined
  readonly rating?: { readonly ratedW: number; readonly factor: number } | undefined
  readonly options?: SolveOptions
}

/** Runs and reads. Volts and amperes are magnitudes. */
export function* runOnce(question: RunQuestion): Generator<Progress, RunFigures> {
  const { circuit, shape, withstandV, rating } = question
  const trace = yield* solveSurge(circuit, shape, question.options)
  yield { doneFrac: 1 }
  const { sec } = trace
  const watts = powerOf(trace)
  const peakW = peakOf(sec, watts).value
  const clamp = peakOf(sec, trace.clampV)
  const terminal = peakOf(sec, trace.terminalV)
  const { suppressor } = circuit
  yield { doneFrac: 1 }
  const used = suppressor && rating ? usedByPulse({ sec, watts, peakW, ...rating }) : undefined
  yield { doneFrac: 1 }
  return {
    trace,
    clamp,
    connector: peakOf(sec, trace.connectorV),
    load: peakOf(sec, trace.loadV),
    capacitor: capacitorPeak(circuit, trace),
    amps: peakOf(sec, trace.clampA),
    peakW,
    energyJ: suppressor ? integral(sec, watts) : 0,
    used,
    overshoot:
      suppressor && suppressor.leadH > 0
        ? {
            volts: Math.max(0, terminal.value - clamp.value),
            sec: excessOver(sec, trace.terminalV, clamp.value).forSec,
          }
        : undefined,
    excess: withstandV === undefined ? undefined : excessOver(sec, trace.loadV, withstandV),
  }
}

function capacitorPeak({ filter }: SurgeCircuit, trace: Trace): Peak | undefined {
  const at = (volts: Float64Array) => peakOf(trace.sec, volts)
  switch (filter.topology) {
    case 'none':
    case 'L':
      return undefined
    case 'C':
    case 'CL':
      return at(trace.connectorV)
    case 'PI':
      return higher(at(trace.connectorV), at(trace.loadV))
    case 'LC':
    case 'T':
      return at(trace.middleV)
  }
}

const higher = (a: Peak, b: Peak): Peak => (b.value > a.value ? b : a)

/** Figure by figure the worse of two runs; the curves of the one with the higher load peak. */
export function worseRun(a: RunFigures, b: RunFigures): RunFigures {
  return {
    trace: a.load.value >= b.load.value ? a.trace : b.trace,
    clamp: higher(a.clamp, b.clamp),
    connector: higher(a.connector, b.connector),
    load: higher(a.load, b.load),
    capacitor: a.capacitor && b.capacitor ? higher(a.capacitor, b.capacitor) : undefined,
    amps: higher(a.amps, b.amps),
    peakW: Math.max(a.peakW, b.peakW),
    energyJ: Math.max(a.energyJ, b.energyJ),
    used: usesMore(a, b) ? b.used : a.used,
    overshoot: a.overshoot && b.overshoot && b.overshoot.volts > a.overshoot.volts ? b.overshoot : a.overshoot,
    excess: a.excess && b.excess && b.excess.untilSec > a.excess.untilSec ? b.excess : a.excess,
  }
}

/** Which of two runs uses more of the rating. */
export const usesMore = (a: RunFigures, b: RunFigures): boolean =>
  (b.used ? usedFracOf(b.used) : 0) > (a.used ? usedFracOf(a.used) : 0)

/** The worse of both ways to judge one pulse: by its real power, and by its peak with the nominal shape. */
export const usedFracOf = (used: Used): number => Math.max(used.byPowerFrac, used.byShapeFrac)
