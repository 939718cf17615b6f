/** What a window is asked with, as numbers: the other half of the texts it is driven by. SI units, as typed. */
import type { Topology } from '../../../src/calc/types.ts'
import { LINES, type LineFacts } from './lines.ts'

export type Span = { readonly least: number; readonly most: number }

export type WindowFacts = {
  readonly lineKind: string
  readonly topology: Topology | undefined
  readonly mode: 'common' | 'differential'
  readonly needs: readonly { readonly hz: number; readonly db: number }[]
  readonly sourceOhm: readonly number[]
  readonly sourceH: number
  readonly loadOhm: number
  readonly loadF: number
  /** Infinity = none */
  readonly loadH: number
  readonly inductanceH: number
  readonly suppressorF: number
  readonly existingF: number
  readonly crossF: number
  readonly bitRateHz: number | undefined
  readonly driverEdgeSec: number | undefined
  readonly signalOhm: number | undefined
  /** the user's own limits on the signal */
  readonly ownCeilingF: number | undefined
  readonly usefulHz: number | undefined
  readonly ownLossDb: number | undefined
  readonly ownPhaseDeg: number | undefined
  readonly tolLow: number
  readonly tolHigh: number
  readonly temperature: number
  readonly bias: number
  readonly decades: number
  readonly perDecade: number
  readonly esrOhm: number
  readonly eslH: number
  readonly dcrOhm: number
  /** Infinity = none */
  readonly inductorParallelOhm: number
  readonly inductorParallelF: number
  readonly bondOhm: number
  readonly bondH: number
  readonly navyRule: boolean
  readonly loadW: number | undefined
  readonly chassisLimitA: number | undefined
  readonly maxBuildableF: number | undefined
  /** one winding of a common-mode choke, its least; 0 = no choke */
  readonly chokeH: number
  /** both windings in series, opposing, its most; undefined = nothing stated */
  readonly chokeLeakageH: number | undefined
  readonly chokeOhm: number
  readonly chokeF: number
  readonly chokeSide: 'source' | 'load'
  readonly isOneWire: boolean
  /** the windings apart, as a share of their mean */
  readonly chokeMismatch: number
  /** most of the common mode that may become signal, dB; undefined = nothing is required */
  readonly mostConversionDb: number | undefined
}

export const lineOf = ({ lineKind }: Pick<WindowFacts, 'lineKind'>): LineFacts => {
  const line = LINES[lineKind]
  if (!line) throw new RangeError(`no facts about ${lineKind}`)
  return line
}

/** Least and most share of its mark that a capacitor has: tolerance, temperature, bias and ageing multiply. */
export const capacitorShare = (facts: WindowFacts): Span => ({
  least: (1 - facts.tolLow) * (1 - facts.temperature) * (1 - facts.bias) * (1 - facts.perDecade) ** facts.decades,
  most: (1 + facts.tolHigh) * (1 + facts.temperature),
})

/** The inductance typed is its least; the same tolerance above that least gives the most. */
export const inductanceSpan = ({ inductanceH, tolLow, tolHigh }: WindowFacts): Span => ({
  least: inductanceH,
  most: (inductanceH * (1 + tolHigh)) / (1 - tolLow),
})

export const hasChoke = ({ chokeH, isOneWire }: WindowFacts): boolean => chokeH > 0 && !isOneWire

/** Windings and leakage a choke can have: what is stated is the least of the one and the most of the other, a quarter of it the least. */
export function chokeSpans(facts: WindowFacts): { readonly windingH: Span; readonly leakageH: Span } {
  const none = { least: 0, most: 0 }
  if (!hasChoke(facts)) return { windingH: none, leakageH: none }
  const { chokeH, chokeLeakageH, tolLow, tolHigh } = facts
  const most = (chokeH * (1 + tolHigh)) / (1 - tolLow)
  const leakageH =
    chokeLeakageH === undefined
      ? { least: 0.005 * chokeH, most: 0.02 * most }
      : { least: chokeLeakageH / 4, most: chokeLeakageH }
  return { windingH: { least: chokeH, most }, leakageH }
}

/** Two wires the noise travels on: a pair, all that goes through a core, a supply and its return in differential mode. */
export const isTwoWire = (facts: WindowFacts): boolean => {
  const { isPair, limit } = lineOf(facts)
  return isPair === true || hasChoke(facts) || (limit.is === 'supply' && facts.mode === 'differential')
}

/** A line-to-line capacitor has two wires to stand between: those of a pair, or of a supply and its return. */
export const hasCrossOnSingle = (facts: WindowFacts): boolean => {
  const { isPair, limit } = lineOf(facts)
  return facts.crossF > 0 && isPair !== true && limit.is !== 'supply'
}

export const CAPACITORS: Readonly<Record<Topology, number>> = { C: 1, L: 0, LC: 1, CL: 1, PI: 2, T: 1 }
export const COILS: Readonly<Record<Topology, number>> = { C: 0, L: 1, LC: 1, CL: 1, PI: 1, T: 2 }
