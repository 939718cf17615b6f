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
  /** share of the inductance typed that the current of the line takes */
  readonly lostFrac: number
  /** a bead in the place of every coil */
  readonly bead: BeadFacts | undefined
  readonly damper: { readonly ohm: number; readonly farads: number } | undefined
  /** a dielectric by name, with voltage and build, instead of the three shares */
  readonly dielectric: DielectricFacts | undefined
}

/** Its curve as it was read at rising frequencies, and the share the current of the line takes. */
export type BeadFacts = {
  readonly hz: readonly number[]
  readonly ohm: readonly number[]
  readonly reactanceOhm: readonly number[]
  readonly lostFrac: number
}

export type DielectricFacts = {
  readonly id: 'c0g' | 'x7r'
  readonly voltageFrac: number
  readonly caseSize: 'filter-part' | 'large-chip' | 'small-chip'
}

export const lineOf = ({ lineKind }: Pick<WindowFacts, 'lineKind'>): LineFacts => {
  const line = LINES[lineKind]
  if (!line) throw new RangeError(`no facts about ${lineKind}`)
  return line
}

/** Least and most share of its mark that a capacitor has: tolerance, temperature, bias and ageing multiply. */
export function capacitorShare(facts: WindowFacts): Span {
  const { temperature, bias, perDecade } = facts.dielectric ? sharesOfDielectric(facts.dielectric) : facts
  return {
    least: (1 - facts.tolLow) * (1 - temperature) * (1 - bias) * (1 - perDecade) ** facts.decades,
    most: (1 + facts.tolHigh) * (1 + temperature),
  }
}

/** Share of the marked value lost at a share of the rated voltage, on straight lines between what is published. */
const LOST_OF_CLASS_2: Readonly<Record<DielectricFacts['caseSize'], readonly (readonly [v: number, lost: number])[]>> =
  {
    'filter-part': [
      [0, 0],
      [1, 0.4],
    ],
    'large-chip': [
      [0, 0],
      [0.5, 0.07],
      [1, 0.4],
    ],
    'small-chip': [
      [0, 0],
      [0.5, 0.5],
      [0.71, 0.8],
      [1, 0.9],
    ],
  }

/** Class 1 keeps 0.3 %; X7R has ±15 %, 2.5 % a decade of hours, and loses by voltage and build. */
function sharesOfDielectric({ id, voltageFrac, caseSize }: DielectricFacts) {
  if (id === 'c0g') return { temperature: 0.003, bias: 0, perDecade: 0 }
  const points = LOST_OF_CLASS_2[caseSize]
  const bias = points.slice(1).reduce((lost, [v, end], i) => {
    const [from = 0, start = 0] = points[i] ?? []
    return voltageFrac <= from ? lost : start + ((end - start) * (Math.min(v, voltageFrac) - from)) / (v - from)
  }, 0)
  return { temperature: 0.15, bias, perDecade: 0.025 }
}

/** The inductance typed is its least, before the current takes its share; the same tolerance above that least gives the most. */
export const inductanceSpan = ({ inductanceH, lostFrac, tolLow, tolHigh }: WindowFacts): Span => ({
  least: inductanceH * (1 - lostFrac),
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
