/** What the readings of a trial allow a line to be: enough for a capacitor alone, which meets source and load side by side. */
import { legFactor } from '../../bounds/legs.ts'
import type { Need, Span } from '../../bounds/surroundings.ts'
import { type NoiseLoad, type NoiseSource, sourceImpedance } from '../../network/circuit.ts'
import { hasCapacitiveAxis, type Impedance, sizesOf } from '../../network/trial-region.ts'
import { counted } from '../../quantity/counted.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Finding, Issue, Topology } from '../../types.ts'
import { type AroundQuestion, partsAround, type WindowAround } from './around.ts'
import type { WindowGiven } from './inputs.ts'

export type TriedCircuits = {
  /** where the readings were taken: they say nothing of another frequency */
  readonly hz: number
  /** source and load of each circuit, as one leg meets them */
  readonly ends: readonly { readonly source: NoiseSource; readonly load: NoiseLoad }[]
  /** least and most size of the two side by side, over all of them */
  readonly sizeOhm: Span
  /** whether every need lies there, so that a capacitor alone can be judged by them without anything else known */
  readonly isAll: boolean
  /** a purely capacitive circuit is among them: nothing is said of a part above its own resonance */
  readonly isOnAxis: boolean
  readonly parts: ReturnType<typeof partsAround>
}

/** A circuit on the reactance axis is taken this much off it, a share of its size, so that its conductance has a figure. */
const OFF_AXIS = 1e-6

/** Two lists that belong together: an issue where one is longer. */
export function triedIssues({ sideReOhm = [], sideImOhm = [] }: WindowGiven): readonly Issue[] {
  if (sideReOhm.length === sideImOhm.length) return []
  const message = `${counted(sideImOhm.length, 'reactance')} for ${counted(sideReOhm.length, 'resistance')}; give one for each, separated by “;”.`
  return [{ key: 'sideImOhm', code: 'length-mismatch', message }]
}

/** Undefined without readings, where several frequencies are asked for beside them, or where none of the needs lies there. */
export function triedCircuitsOf(q: AroundQuestion): TriedCircuits | undefined {
  const { given, needs, isPair, mode } = q
  const { sideReOhm = [], sideImOhm = [], frequencyHz = [] } = given
  const [hz, ...others] = frequencyHz
  if (sideReOhm.length === 0 || hz === undefined || others.length > 0 || !needs.some((need) => need.hz === hz))
    return undefined
  const factor = legFactor(isPair, mode)
  const all = sideReOhm.map(
    (ohm, i): Impedance => ({ ohm: factor * ohm, reactanceOhm: factor * (sideImOhm[i] as number) }),
  )
  return {
    hz,
    ends: all.map((one) => endsOf(one, hz)),
    sizeOhm: sizeOf(all),
    isAll: needs.every((need) => need.hz === hz),
    isOnAxis: hasCapacitiveAxis(all),
    parts: partsAround(q),
  }
}

function sizeOf(all: readonly Impedance[]): Span {
  const { leastOhm, mostOhm } = sizesOf(all)
  return { least: leastOhm, most: mostOhm }
}

/** Figures are typed with two or three digits: a touch is no contradiction. */
const TOUCH = 0.995

/**
 * Whether the noise ends as entered have a size side by side that no reading allows, every source named, with what is on
 * the line already and without it. Then nothing that rests on either of them apart is shown.
 */
export function isEndsRefuted(tried: TriedCircuits | undefined, arounds: readonly WindowAround[]): boolean {
  if (tried === undefined || arounds.length === 0) return false
  const { hz, sizeOhm } = tried
  const w = 2 * Math.PI * hz
  return arounds.every(({ sources, load }) =>
    sources.every((source) => {
      const [ohm, reactanceOhm] = sourceImpedance(source, w)
      const square = ohm * ohm + reactanceOhm * reactanceOhm
      const coilSie = w * load.parallelH > 0 ? 1 / (w * load.parallelH) : 0
      const size = 1 / Math.hypot(ohm / square + 1 / load.ohm, w * load.parallelF - coilSie - reactanceOhm / square)
      return size < sizeOhm.least * TOUCH || size > sizeOhm.most / TOUCH
    }),
  )
}

/** Any two ends do that stand side by side as this: half of its conductance at each, all of its susceptance at the load. */
function endsOf({ ohm, reactanceOhm }: Impedance, hz: number): TriedCircuits['ends'][number] {
  const square = ohm * ohm + reactanceOhm * reactanceOhm
  const eachOhm = (2 * square) / Math.max(ohm, OFF_AXIS * Math.sqrt(square))
  const siemens = -reactanceOhm / square
  const w = 2 * Math.PI * hz
  return {
    source: { ohm: eachOhm, seriesH: 0 },
    load: {
      ohm: eachOhm,
      parallelF: Math.max(0, siemens) / w,
      parallelH: siemens < 0 ? 1 / (w * -siemens) : Number.POSITIVE_INFINITY,
    },
  }
}

/**
 * Where a purely capacitive line is among the circuits, the largest capacitance in service that is one at its leads and
 * bond; above that it may meet the line in resonance, and the corners say nothing. Farads, infinite where neither has any.
 */
export const mostOfTriedF = ({ hz, isOnAxis, parts: { eslH, bondH } }: TriedCircuits): number =>
  isOnAxis ? 1 / ((2 * Math.PI * hz) ** 2 * (eslH + bondH)) : Number.POSITIVE_INFINITY

/**
 * The same with the parts around them. None beside a choke, which is in series and meets source and load apart, nor beside
 * a capacitor from line to line, which may have stood there in the trial and would be counted twice.
 */
export function triedArounds(
  tried: TriedCircuits | undefined,
  around: WindowAround | undefined,
  needs: readonly Need[],
): readonly WindowAround[] {
  const parts = around ?? tried?.parts
  if (tried === undefined || parts === undefined || parts.choke !== undefined || parts.crossF !== undefined) return []
  if (around === undefined && !tried.isAll) return []
  // a damper leaves no one resonance below which all of the part is a capacitor
  if (tried.isOnAxis && parts.damper !== undefined) return []
  const asked = (around?.needs ?? needs).filter(({ hz }) => hz === tried.hz)
  if (asked.length === 0) return []
  return tried.ends.map(({ source, load }) => ({ ...parts, needs: asked, sources: [source], load }))
}

/** What the readings of a trial do to the row that is shown, in a sentence; none without them. */
export function triedCircuitFindings(
  {
    tried,
    around,
    needs,
  }: {
    readonly tried: TriedCircuits | undefined
    readonly around: WindowAround | undefined
    readonly needs: readonly Need[]
  },
  topology: Topology,
): readonly Finding[] {
  if (tried === undefined) return []
  const isCounted = triedArounds(tried, around, needs).length > 0
  if (topology === 'C' && isCounted)
    return [
      {
        verdict: 'ok',
        sentence: `${around === undefined ? 'Worked out' : 'Counted beside what is computed'} with the readings of the trial at ${formatQuantity(tried.hz, 'frequency', 4)}: source and load side by side, whatever their phase.`,
      },
    ]
  if (around !== undefined) return []
  return [{ verdict: 'unknown', sentence: CLAMP_MISSING }]
}

/** What a topology that meets source and load apart waits for. */
export const CLAMP_MISSING =
  'The readings of the trial give source and load side by side at one frequency: enough for a capacitor alone there. Anything in series meets them apart: take the reading of a clamp.'
