/** From what was entered to what the rows of the window need, as numbers: bounds, surroundings, what is missing. */

import type { LineKind } from '../../../reference/line-kinds.ts'
import type { NoiseMode } from '../../bounds/legs.ts'
import type { Taken } from '../../bounds/room.ts'
import type { Need, Span } from '../../bounds/surroundings.ts'
import { leastShare, mostShare, type Spread } from '../../bounds/worst-case.ts'
import { type CeilingAsk, type LoadingCeiling, loadingBounds, loadingCeiling } from '../../loading/ceiling.ts'
import { carriesSignal } from '../../loading/inductor.ts'
import type { CoilOwn } from '../../loading/ladder.ts'
import { bandTopHz, type SignalFacts, usefulHzOf } from '../../loading/signal.ts'
import { beadCoil, beadSpanH } from '../../network/bead.ts'
import type { NavyLimit } from '../../power/navy-rule.ts'
import { counted } from '../../quantity/counted.ts'
import type { Bound, Issue } from '../../types.ts'
import { spreadOf } from '../dielectric.ts'
import { type Elements, elementsOf } from '../elements.ts'
import { onLine } from '../nodes.ts'
import { ownOf } from '../own-ceiling.ts'
import { type AroundQuestion, aroundOf, type WindowAround } from './around.ts'
import { chokeOf, isOneWire, type WindowChoke } from './choke.ts'
import type { WindowGiven } from './inputs.ts'
import { buildableBounds, chassisBounds, navyBounds, navyOf } from './rules.ts'
import { isTraceOpen, isTraceUntried } from './trace-needs.ts'
import { type Shown, shownOf, triedBounds } from './tried.ts'
import { type TriedCircuits, triedCircuitsOf } from './tried-circuits.ts'

export type WindowSetup = {
  readonly kind: LineKind | undefined
  /** undefined while no line is chosen */
  readonly signal: SignalFacts | undefined
  readonly mode: NoiseMode
  /**
   * the noise meets two wires, each with the same parts: a pair, a supply and its return in differential mode, or all that
   * goes through the core of a choke
   */
  readonly isPair: boolean
  readonly needs: readonly Need[]
  readonly taken: Taken
  /** the same with the damping capacitor at its most: what room is left under a ceiling */
  readonly room: Taken
  /**
   * what of the existing capacitance stands as a lump at an end of the filter: what was entered. What is only usual on
   * such a line is spread along it and part of the noise source as it is.
   */
  readonly lumpedF: number
  readonly spread: Spread
  /** what stands around the filter, nothing at its ends; undefined while the noise ends or the need are unknown */
  readonly around: WindowAround | undefined
  /** what the readings of a trial allow the line to be, for a capacitor alone; undefined where none may be counted */
  readonly tried: TriedCircuits | undefined
  /** least and most inductance of one inductor */
  readonly inductanceH: Span
  /** the inductance as it was entered or assumed, before the current takes its share */
  readonly enteredH: number
  /** what the inductor is beside its inductance */
  readonly coil: CoilOwn
  /** bead and damping, and what is missing of the inductor */
  readonly elements: Elements
  /** every bound but the need, which differs by topology */
  readonly bounds: readonly Bound[]
  /** what a trial on the line showed in full */
  readonly shown: Shown | undefined
  /** a trace on the line whose need is not known */
  readonly isTraceOpen: boolean
  /** rows of an opened trace, how many, that were not tried under these facts; undefined: none */
  readonly untriedRows: number | undefined
  /** fields the kind of line needs before its ceiling is known */
  readonly asks: readonly CeilingAsk[]
  /** fields a limit of the user's own waits for */
  readonly ownLacks: readonly CeilingAsk[]
  /** a common-mode choke, in every row; absent = none */
  readonly choke: WindowChoke | undefined
  /** most of the common mode that may become signal, dB below it (negative); undefined = nothing is required */
  readonly mostConversionDb: number | undefined
  /** a core around one wire: not counted, so that no row is ok beside it */
  readonly isOneWire: boolean
  /** a line-to-line capacitor on a line that has but one wire: not counted */
  readonly hasCrossOnSingle: boolean
  /** differential noise that lies inside the signal band, up to this frequency */
  readonly inBandHz: number | undefined
  /** supply of an AC line at its worst: what its capacitors put into the chassis; undefined elsewhere */
  readonly acSupply: { readonly workingRmsV: number; readonly supplyHz: number } | undefined
  /** the Navy rule where it was chosen: 'not-power' on a line it is not for */
  readonly navy:
    | { readonly limit: NavyLimit; readonly supplyHz: number; readonly loadW: number | undefined }
    | 'not-power'
    | undefined
}

/** Whether a rule was chosen, or a limit entered, that lacks a fact: nothing can be ok under it. */
export const ruleLacks = ({ navy, ownLacks }: Pick<WindowSetup, 'navy' | 'ownLacks'>): boolean =>
  ownLacks.length > 0 || (navy !== undefined && navy !== 'not-power' && navy.limit.limitF === undefined)

/** Whether something on the line could not be counted: no row can be ok beside it. */
export const isUncounted = (setup: WindowSetup): boolean =>
  setup.isOneWire ||
  setup.hasCrossOnSingle ||
  setup.isTraceOpen ||
  setup.untriedRows !== undefined ||
  isBalanceUncounted(setup)

/** A requirement on the balance of a pair, and legs with a bead or damping, which are not counted apart. */
export const isBalanceUncounted = ({ mostConversionDb, elements: { bead, damper } }: WindowSetup): boolean =>
  mostConversionDb !== undefined && (bead !== undefined || damper !== undefined)

/** Shares of its mark that a capacitor can have in service. */
export const sharesOf = ({ spread }: Pick<WindowSetup, 'spread'>): Span => ({
  least: leastShare(spread),
  most: mostShare(spread),
})

/**
 * Pairs each frequency with its need: one need for all, or one for each.
 * Returns an issue when the two lists have different lengths.
 */
export function pairNeeds(hz: readonly number[], db: readonly number[], key = 'neededDb'): readonly Need[] | Issue {
  const first = db[0]
  if (first === undefined || hz.length === 0) return []
  if (db.length !== 1 && db.length !== hz.length) {
    return {
      key,
      code: 'length-mismatch',
      message: `${counted(db.length, 'need')} for ${hz.length === 1 ? '1 frequency' : `${hz.length} frequencies`}; give one need for all, or one for each, separated by “;”.`,
    }
  }
  return hz.map((f, i) => ({ hz: f, db: db[i] ?? first }))
}

export function setUp(given: WindowGiven, kind: LineKind | undefined, needs: readonly Need[]): WindowSetup {
  const mode: NoiseMode = given.mode === 'differential' ? 'differential' : 'common'
  const isPower = kind?.supply !== undefined
  const choke = chokeOf(given, mode)
  const isPair = (kind?.isPair ?? false) || choke !== undefined || (isPower && mode === 'differential')
  const spread = spreadOf(given)
  const crossF = kind?.isPair || isPower ? (given.crossF ?? 0) : 0
  const taken: Taken = {
    isPair: kind?.isPair ?? false,
    ...onLine(kind, given),
    crossF: crossF * mostShare(spread),
    crossLeastF: crossF * leastShare(spread),
    suppressorF: given.suppressorF,
  }
  const { bitRateHz, driverEdgeSec, signalOhm } = given
  const signal = kind && { kind, bitRateHz, driverEdgeSec, signalOhm, own: ownOf(given) }
  const ceiling = signal && loadingCeiling(signal)
  const elements = elementsOf(given, {
    kind,
    spread,
    inductanceH: given.inductanceH,
    loadW: given.loadW,
    needHz: needs.map(({ hz }) => hz),
    bandHz: signal === undefined ? 0 : bandTopHz(signal),
  })
  const { bead } = elements
  // The inductance entered is its least value; the same tolerance spread above it gives the most.
  const inductanceH = bead === undefined ? elements.inductanceH : beadSpanH(bead)
  const asked: AroundQuestion = { given, needs, isPair, mode, taken, inductanceH, choke, elements }
  const navy = navyOf(given, kind)
  const acSupply =
    kind?.supply && kind.supply.worstHz > 0
      ? { workingRmsV: kind.supply.worstRmsV, supplyHz: kind.supply.worstHz }
      : undefined
  const bounds = [
    ...(signal ? loadingBounds(signal) : []),
    ...navyBounds(navy),
    ...chassisBounds(given, acSupply),
    ...buildableBounds(given, kind),
  ]
  return {
    kind,
    signal,
    mode,
    isPair,
    needs,
    taken,
    lumpedF: taken.existingF,
    spread,
    room: roomOf(taken, elements.damper),
    around: aroundOf(asked),
    tried: triedCircuitsOf(asked),
    inductanceH,
    enteredH: given.inductanceH,
    coil: bead === undefined ? coilOf(given) : beadCoil(bead),
    elements,
    bounds: [...bounds, ...triedBounds(given, bounds)],
    shown: shownOf(given),
    isTraceOpen: isTraceOpen(given),
    untriedRows: isTraceUntried(given) ? given.traceRowCount : undefined,
    asks: ceiling === undefined ? [] : asksOf(ceiling),
    ownLacks: ceiling?.lacks ?? [],
    choke,
    mostConversionDb: isPair && mode === 'common' ? given.mostConversionDb : undefined,
    isOneWire: isOneWire(given),
    hasCrossOnSingle: kind !== undefined && crossF < (given.crossF ?? 0),
    inBandHz: signal && inBandOf(signal, isPair && mode === 'common', needs),
    acSupply,
    navy,
  }
}

/** What the ceiling waits for; then what a limit of the user's own does. */
const asksOf = ({ works, lacks }: LoadingCeiling): readonly CeilingAsk[] =>
  works.farads === undefined && works.ask !== undefined ? [works.ask] : lacks

const coilOf = ({ dcrOhm, inductorParallelF, inductorParallelOhm }: WindowGiven): CoilOwn => ({
  dcrOhm,
  parallelF: inductorParallelF,
  parallelOhm: inductorParallelOhm ?? Number.POSITIVE_INFINITY,
})

/** Room with a damping capacitor at its most on every leg: like a suppressor it takes room, and stays where it is. */
export const roomOf = (taken: Taken, damper: Elements['damper']): Taken =>
  damper === undefined ? taken : { ...taken, suppressorF: taken.suppressorF + damper.farads.most }

/**
 * The highest useful frequency where the noise shares the signal's way and lies inside its band: in differential mode,
 * and always on a single wire. No low-pass filter tells the two apart.
 */
function inBandOf(signal: SignalFacts, isApart: boolean, needs: readonly Need[]): number | undefined {
  if (!carriesSignal(signal.kind) || isApart) return undefined
  const useful = usefulHzOf(signal)
  return useful !== undefined && needs.some(({ hz, db }) => hz <= useful && db > 0) ? useful : undefined
}
