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

export const CAPACITORS: Readonly<Record<Topology, number>> = { C: 1, L: 0, LC: 1, CL: 1, PI: 2, T: 1 }
export const COILS: Readonly<Record<Topology, number>> = { C: 0, L: 1, LC: 1, CL: 1, PI: 1, T: 2 }
