/** The numbers of the filter check. */
import { lineKindById } from '../../../reference/line-kinds.ts'
import type { NoiseMode } from '../../bounds/legs.ts'
import { missingInputs } from '../../line/missing.ts'
import { lossDb } from '../../network/chain.ts'
import { chokePart } from '../../network/choke.ts'
import {
  BENCH_LOAD,
  BENCH_SOURCE,
  type FilterCircuit,
  hasCapacitor,
  hasInductor,
  type NoiseLoad,
  type NoiseSource,
} from '../../network/circuit.ts'
import { type Corners, dipsAfter, type Ends, findCorners, worstGainOver } from '../../network/shape.ts'
import type { Figures, Input, Refused, Topology, Verdict } from '../../types.ts'
import { worse } from '../../verdict.ts'
import { cornersOf } from '../corners.ts'
import { spreadOf } from '../dielectric.ts'
import { type Elements, elementIssues, hasBead } from '../elements.ts'
import { type BoxWorst, worstOfBox } from './box.ts'
import {
  chokeOf,
  type FilterChoke,
  hasChoke,
  issuesOfChoke,
  loadOfLeg,
  needsMode,
  pairMode,
  sourceOfLeg,
} from './choke.ts'
import { circuitOf } from './circuit.ts'
import { filterElements, lacksOf } from './elements.ts'
import { type FilterGiven, filterInputs } from './inputs.ts'
import { valuesOf } from './values.ts'

/** The lowest loss over the frequencies and source impedances given. */
export type Worst = { readonly db: number; readonly hz: number; readonly source: NoiseSource }

export type Gain = {
  readonly gainDb: number
  readonly atHz: number
  /** from which source, where several were entered */
  readonly sourceOhm?: number
}
export type Dip = { readonly hz: number; readonly db: number }

/** What was worked out of a filter whose parts are known. */
export type Filtered = {
  readonly circuit: FilterCircuit
  /** the same on a bench of one line: the bond once */
  readonly benchCircuit: FilterCircuit
  /** facts without which the inductor, or the bead in its place, is not known */
  readonly lacks: Elements['lacks']
  /** absent = no choke */
  readonly choke: FilterChoke | undefined
  /** ends and parts are those of one leg of a pair in this mode; undefined = one wire */
  readonly mode: NoiseMode | undefined
  readonly frequenciesHz: readonly number[]
  /** DC was asked for across a load inductance */
  readonly hasShortedDc: boolean
  readonly neededDb: number | undefined
  readonly signalToHz: number | undefined
  /** the ends that govern; undefined = only the bench figure */
  readonly ends: Ends | undefined
  readonly isSeveral: boolean
  readonly worst: Worst | undefined
  /** the lowest loss over the tolerance of the parts; undefined = not asked for, or only the parts as entered are known */
  readonly boxWorst: BoxWorst | undefined
  readonly bench: Worst | undefined
  /** corners and dips of the curve, worked out when first asked for: no verdict needs them */
  readonly curve: () => Curve
  readonly gain: Gain | undefined
  /** the largest gain of the parts as entered and at the corners of their tolerance */
  readonly boxGain: Gain | undefined
}

export type Curve = { readonly corners: Corners | undefined; readonly dips: readonly Dip[] }

export type FilterFigures = Figures & {
  readonly verdict: Verdict
  /** absent = something must still be entered: `missing` */
  readonly filtered?: Filtered
  readonly missing: readonly Input[]
}

/** A gain of this much is worth a word; of this much more it may break what it stands in. */
export const GAIN_SAID_DB = 0.1
const GAIN_FAILS_DB = 3
/** Above this a figure is mathematics, not hardware. */
export const PRACTICAL_CEILING_DB = 100
/** A fall of this much after the corner is worth a word. */
const DIP_DB = 3
const MOST_DIPS = 3

export function filterFigures(given: FilterGiven): FilterFigures | Refused {
  const issues = [...issuesOfChoke(given), ...elementIssues(given)]
  if (issues.length > 0) return { ok: false, issues }
  const missing = missingParts(given)
  const topology = given.topology as Topology | undefined
  if (topology === undefined || missing.length > 0)
    return { verdict: 'unknown', values: {}, bounds: [], rungs: [], missing }
  const filtered = worked(given, circuitOf(given, topology))
  return {
    verdict: verdictOf(filtered),
    values: valuesOf(filtered),
    bounds: [],
    rungs: [],
    filtered,
    missing: [],
  }
}

/** Parts of the topology that have no value; the ends and the frequency may stay open: then less is shown. */
function missingParts(given: FilterGiven): readonly Input[] {
  const topology = given.topology as Topology | undefined
  return missingInputs(filterInputs, given).filter(({ key }) => {
    if (key === 'topology') return true
    if (topology === undefined) return false
    if (key === 'mode') return needsMode(given)
    const isChokeAlone = topology === 'C' && hasChoke(given)
    return (
      (key === 'capacitanceF' && hasCapacitor(topology) && !isChokeAlone) ||
      (key === 'inductanceH' && hasInductor(topology) && !hasBead(given))
    )
  })
}

/** Slower than this nothing here changes any more: it counts as DC. */
const DC_BELOW_HZ = 1e-3

/** At DC an inductance across the load shorts it with and without the filter: there is no loss to speak of. */
function usableHz(given: FilterGiven): readonly number[] {
  const all = (given.frequencyHz ?? []).map((hz) => (hz < DC_BELOW_HZ ? 0 : hz))
  return given.loadH === undefined ? all : all.filter((hz) => hz > 0)
}

function worked(given: FilterGiven, circuit: FilterCircuit): Filtered {
  const frequenciesHz = usableHz(given)
  const mode = pairMode(given)
  const elements = filterElements(given)
  const choke = chokeOf(given)
  const choked = choke && { part: chokePart(choke.choke, choke.current), side: choke.side, spanH: choke.spanH }
  const sources = (given.sourceOhm ?? []).map((ohm) => sourceOfLeg({ ohm, seriesH: given.sourceH ?? 0 }, mode))
  const { loadOhm, loadF = 0, loadH = Number.POSITIVE_INFINITY } = given
  const load: NoiseLoad | undefined =
    loadOhm === undefined ? undefined : loadOfLeg({ ohm: loadOhm, parallelF: loadF, parallelH: loadH }, mode)
  const worst = load && worstLoss(circuit, sources, load, frequenciesHz)
  const ends = load && sources[0] ? { source: worst?.source ?? governing(circuit, sources, load), load } : undefined
  const benchCircuit = { ...circuit, bondOhm: given.bondOhm, bondH: given.bondH }
  const all = load === undefined ? [] : sources.map((source): Ends => ({ source, load }))
  const gain = gainOver(circuit, all)
  const { neededDb } = given
  return {
    circuit,
    benchCircuit,
    lacks: lacksOf(given, circuit.topology),
    choke,
    mode,
    frequenciesHz,
    hasShortedDc: frequenciesHz.length < (given.frequencyHz ?? []).length,
    neededDb,
    signalToHz: given.lineKind === undefined ? undefined : lineKindById(given.lineKind)?.usefulHz?.hz,
    ends,
    isSeveral: sources.length * Math.max(1, frequenciesHz.length) > 1,
    worst,
    boxWorst:
      load && neededDb !== undefined
        ? worstOfBox({
            circuit,
            sources,
            load,
            frequenciesHz,
            neededDb,
            spread: spreadOf(given),
            elements,
            choke: choked,
          })
        : undefined,
    bench: worstLoss(benchCircuit, [BENCH_SOURCE], BENCH_LOAD, frequenciesHz),
    curve: remembered(() => curveOf(circuit, ends)),
    gain,
    boxGain:
      neededDb !== undefined && gainVerdict(gain) !== 'fails'
        ? cornersOf(circuit, spreadOf(given), elements, choked).reduce(
            (worst, corner) => gainOver(corner, all, worst),
            gain,
          )
        : gain,
  }
}

function curveOf(circuit: FilterCircuit, ends: Ends | undefined): Curve {
  const corners = ends && findCorners(circuit, ends)
  const firstHz = corners?.firstHz
  const dips = ends && firstHz !== undefined ? dipsAfter(circuit, ends, firstHz, DIP_DB).slice(0, MOST_DIPS) : []
  return { corners, dips }
}

/** Works out once, when first called. */
function remembered<T>(work: () => T): () => T {
  let known: { readonly value: T } | undefined
  return () => {
    known ??= { value: work() }
    return known.value
  }
}

/** With several source impedances and no frequency, the one that governs at 1 MHz. */
function governing(circuit: FilterCircuit, sources: readonly NoiseSource[], load: NoiseLoad): NoiseSource {
  return worstLoss(circuit, sources, load, [1e6])?.source ?? BENCH_SOURCE
}

function worstLoss(
  circuit: FilterCircuit,
  sources: readonly NoiseSource[],
  load: NoiseLoad,
  frequenciesHz: readonly number[],
): Worst | undefined {
  let worst: Worst | undefined
  for (const source of sources)
    for (const hz of frequenciesHz) {
      const db = lossDb(circuit, source, load, hz)
      if (!worst || db < worst.db) worst = { db, hz, source }
    }
  return worst
}

/** What a resonant gain is worth, wherever it lies: nothing, a warning, or a failure. */
export function gainVerdict(gain: Gain | undefined): Verdict {
  if (gain === undefined || gain.gainDb < GAIN_SAID_DB) return 'ok'
  return gain.gainDb >= GAIN_FAILS_DB ? 'fails' : 'marginal'
}

/** The worst resonant gain from any source, or what was found before. */
function gainOver(circuit: FilterCircuit, all: readonly Ends[], before?: Gain): Gain | undefined {
  const found = worstGainOver(circuit, all, before?.gainDb)
  if (found === undefined) return before
  const { gainDb, atHz, ends } = found
  return { gainDb, atHz, ...(all.length > 1 ? { sourceOhm: ends.source.ohm } : {}) }
}

/**
 * Against the need, if one was entered, and never better than what a resonance makes of it. Without a need the question
 * is for a number: it stands where both ends and a frequency are known.
 */
function verdictOf({ neededDb, worst: entered, boxWorst, boxGain, choke, lacks }: Filtered): Verdict {
  if (lacks.length > 0) return 'unknown'
  // Around one wire its inductance at the current of that wire is not known.
  const rings = choke?.current === 'one-wire' ? worse('unknown', gainVerdict(boxGain)) : gainVerdict(boxGain)
  const worst = boxWorst ?? entered
  if (worst === undefined) return worse('unknown', rings)
  if (neededDb === undefined) return rings
  if (worst.db < neededDb || boxWorst?.held === 'short') return 'fails'
  const isPlain = neededDb <= PRACTICAL_CEILING_DB && (boxWorst === undefined || boxWorst.held === 'kept')
  return worse(isPlain ? 'ok' : 'marginal', rings)
}
