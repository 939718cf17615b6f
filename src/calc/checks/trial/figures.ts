/** The trial in numbers: four numbers, what they prove and exclude, the impedance the readings give, what they refute. */
import { type LineKind, lineKindById } from '../../../reference/line-kinds.ts'
import { loadingCeiling } from '../../loading/ceiling.ts'
import type { OhmSpan } from '../../network/clamp.ts'
import { type Impedance, sizesOf } from '../../network/trial-region.ts'
import { circuitsOf, isCarried, neededPerLegF } from '../../trial/circuits.ts'
import { readTrial, type TrialReading } from '../../trial/four-numbers.ts'
import { outcomesOf, type Refuted, refutedBy, type TrialOutcome } from '../../trial/outcomes.ts'
import { type ReadAt, readPair, type Solved, solveTrial } from '../../trial/solve.ts'
import { stepsOf, type TrialStep, unplacedRows } from '../../trial/steps.ts'
import { type Next, nextStep, type Zones, zonesOf } from '../../trial/zones.ts'
import type { ColumnEntry, Figures, Issue, Refused, Verdict } from '../../types.ts'
import { boundsOfTrial } from './bounds.ts'
import type { TrialGiven } from './inputs.ts'

export type OpenTrial = Figures & {
  readonly is: 'trial'
  readonly reading: TrialReading
  readonly zones: Zones
  readonly outcomes: readonly TrialOutcome[]
  readonly solved: Solved | undefined
  /** extremes of Zs ∥ Zl over every reading; empty where no circuit gives them all */
  readonly circuits: readonly Impedance[] | undefined
  /** whether the window is worked out on them */
  readonly isCarried: boolean
  readonly refuted: readonly Refuted[]
  readonly toTry: Next | undefined
  /** what the signal is worked out to stand on a leg, nothing else being on the line; undefined where that is not known */
  readonly standsLegF: number | undefined
  /** Zs ∥ Zl as entered */
  readonly supposed: OhmSpan | undefined
}
export type NoTrial = Figures & { readonly is: 'none' }
export type BarredTrial = Figures & { readonly is: 'barred'; readonly kind: LineKind; readonly why: string }
export type TrialFigures = OpenTrial | NoTrial | BarredTrial

const NOTHING = { values: {}, bounds: [], rungs: [] } as const

export function trialFigures(given: TrialGiven): TrialFigures | Refused {
  const kind = given.lineKind === undefined ? undefined : lineKindById(given.lineKind)
  const why = kind?.barredWhy ?? kind?.noTrialWhy
  if (kind !== undefined && why !== undefined) return { is: 'barred', kind, why, verdict: 'fails', ...NOTHING }
  const issues = [...columnIssues(given), ...unplacedIssues(given)]
  if (issues.length > 0) return { ok: false, issues }
  const steps = given.steps === undefined ? [] : stepsOf({ ...given, steps: given.steps })
  const oneWire = oneWireIssue(kind, steps)
  if (oneWire !== undefined) return { ok: false, issues: [oneWire] }
  if (steps.length === 0) return { is: 'none', verdict: 'unknown', ...NOTHING }
  const { offDb, adapterFrac, leadH } = given
  const neededDb = given.neededDb && Math.max(...given.neededDb)
  const reading = readTrial(steps, { offDb, neededDb })
  const standsLegF = kind === undefined ? undefined : standsOf(kind)
  const outcomes = outcomesOf(reading, offDb)
  const toTry = nextStep(reading, outcomes)
  const [hz, ...others] = given.readAtHz ?? []
  const readHz = others.length === 0 ? hz : undefined
  const at = readHz === undefined ? undefined : { hz: readHz, leadH, isPair: kind?.isPair ?? false }
  const pair = at && readPair(reading, at)
  const circuits = at && circuitsOf(reading, at, { offDb, adapterFrac })
  const solved = pair && readHz !== undefined ? solveTrial(pair, readHz, 2 * offDb, adapterFrac) : undefined
  const supposed = supposedOf(given)
  const mode = given.mode === 'differential' ? 'differential' : given.mode === 'common' ? 'common' : undefined
  const carried = circuits !== undefined && circuits.length > 0 && isCarried(reading, mode) ? circuits : []
  const refuted = refutedBy(reading, outcomes, {
    hz: readHz,
    leadH,
    offDb,
    parallel: supposed,
    mode,
    measured: solved?.span,
  })
  const zones = zonesIn(reading, adapterFrac, refuted)
  return {
    is: 'trial',
    reading,
    zones,
    outcomes,
    solved,
    circuits,
    isCarried: carried.length > 0,
    refuted,
    toTry,
    supposed,
    verdict: verdictOf(reading, zones, { standsLegF, refuted }),
    standsLegF,
    values: { ...valuesOf(reading, zones, solved, toTry), ...circuitValues(circuits, reading, at, neededDb) },
    lists: {
      sideReOhm: carried.map(({ ohm }) => ohm),
      sideImOhm: carried.map(({ reactanceOhm }) => reactanceOhm),
    },
    bounds: boundsOfTrial(zones),
    rungs: [],
  }
}

/** Longer than the steps: an entry that belongs to none, and would say nothing. */
function columnIssues(given: TrialGiven): readonly Issue[] {
  const count = given.steps?.length
  if (count === undefined) return []
  const columns: readonly [string, readonly ColumnEntry[] | undefined][] = [
    ['noise', given.noise],
    ['signal', given.signal],
    ['places', given.places],
    ['repeats', given.repeats],
    ['times', given.times],
  ]
  return columns.flatMap(([key, entries]) =>
    entries === undefined || entries.length <= count
      ? []
      : [
          {
            key,
            code: 'length-mismatch',
            message: `${entries.length} entries for ${count} ${count === 1 ? 'step' : 'steps'}; give one for each step, nothing between two semicolons where nothing was noted.`,
          },
        ],
  )
}

/** Taken for chassis it would exclude or show on a leg what was never there. */
function unplacedIssues({ steps, places }: TrialGiven): readonly Issue[] {
  if (steps === undefined) return []
  const [row] = unplacedRows({ steps, places })
  if (row === undefined) return []
  const message = `Entry ${row + 1}: where that capacitor stood is not written; write chassis or between beside each, or one place alone for all of them.`
  return [{ key: 'places', code: 'place-missing', message }]
}

/** Between the wires of a line that has but one there is nothing: counted twice on a leg it would show what was never tried. */
function oneWireIssue(kind: LineKind | undefined, steps: readonly TrialStep[]): Issue | undefined {
  const hasTwo = kind === undefined || kind.isPair || kind.supply !== undefined
  if (hasTwo || !steps.some(({ part, place }) => part === 'capacitor' && place === 'between')) return undefined
  return {
    key: 'places',
    code: 'one-wire',
    message: `${kind.name} has one wire, so nothing stands between two: write chassis where the capacitor went to the plate, or name the line as a pair or a supply.`,
  }
}

/** Every source named beside the load: least and most. */
function supposedOf({ sourceOhm, loadOhm }: TrialGiven): OhmSpan | undefined {
  if (sourceOhm === undefined || sourceOhm.length === 0 || loadOhm === undefined) return undefined
  const all = sourceOhm.map((ohm) => (ohm * loadOhm) / (ohm + loadOhm))
  return { least: Math.min(...all), most: Math.max(...all) }
}

/**
 * A yes is a window shown; a no is a window shut. Everything else is open. What did no harm once, above what the signal is
 * worked out to stand, shows neither the slowest driver nor the cold: with care, as beside an assumption it refutes.
 */
function verdictOf(
  reading: TrialReading,
  { proven, isShut }: Zones,
  { standsLegF, refuted }: { readonly standsLegF: number | undefined; readonly refuted: readonly Refuted[] },
): Verdict {
  if (reading.voids.length > 0) return 'unknown'
  if (isShut) return 'fails'
  if (proven === undefined) return 'unknown'
  return isBeyond(proven.mostF, standsLegF) || refuted.length > 0 ? 'marginal' : 'ok'
}

/**
 * Where only a capacitor between the wires did something and the noise was not said to be differential, nothing is shown
 * of a capacitor to chassis: none of those that were tried there cleared it.
 */
function zonesIn(reading: TrialReading, adapterFrac: number, refuted: readonly Refuted[]): Zones {
  const zones = zonesOf(reading, adapterFrac)
  if (!refuted.includes('mode')) return zones
  const toChassisF = reading.steps
    .filter(({ part, place, heard }) => part === 'capacitor' && place === 'chassis' && heard !== 'unread')
    .reduce((most, { farads }) => Math.max(most, farads), 0)
  const excludedBelowF = Math.max(zones.excludedBelowF, toChassisF * (1 + adapterFrac))
  return { ...zones, proven: undefined, excludedBelowF }
}

/** Whether a trial shows more than the signal is worked out to stand. */
export const isBeyond = (mostF: number, standsLegF: number | undefined): boolean =>
  standsLegF !== undefined && mostF > standsLegF

/** Both legs of a pair are in series for its signal. */
function standsOf(kind: LineKind): number | undefined {
  const { farads } = loadingCeiling({ kind }).works
  return farads === undefined ? undefined : (kind.isPair ? 2 : 1) * farads
}

function valuesOf(
  { numbers, voids }: TrialReading,
  { proven, excludedBelowF, excludedFromF }: Zones,
  solved: Solved | undefined,
  next: Next | undefined,
): Readonly<Record<string, number>> {
  const isVoid = voids.length > 0
  const counted = isVoid
    ? {}
    : {
        notClearedF: numbers.notClearedF > 0 ? numbers.notClearedF : undefined,
        clearedF: numbers.clearedF,
        goodF: numbers.goodF > 0 ? numbers.goodF : undefined,
        degradedF: numbers.degradedF,
        belowF: excludedBelowF > 0 ? excludedBelowF : undefined,
        fromF: excludedFromF,
      }
  const values: Readonly<Record<string, number | undefined>> = {
    ...counted,
    provenLeastF: proven?.leastF,
    provenMostF: proven?.mostF,
    parallelOhm: solved?.parallel?.ohm,
    parallelLeastOhm: solved?.span?.least,
    parallelMostOhm: solved?.span?.most,
    nextF: next?.farads,
  }
  return Object.fromEntries(
    Object.entries(values).filter(
      (entry): entry is [string, number] => entry[1] !== undefined && Number.isFinite(entry[1]),
    ),
  )
}

/** Size of Zs ∥ Zl over every reading, and what the need takes of a leg against the worst of them. */
function circuitValues(
  circuits: readonly Impedance[] | undefined,
  reading: TrialReading,
  at: ReadAt | undefined,
  neededDb: number | undefined,
): Readonly<Record<string, number>> {
  if (circuits === undefined || circuits.length === 0 || at === undefined) return {}
  const { leastOhm, mostOhm, leastDeg, mostDeg } = sizesOf(circuits)
  return {
    sideLeastOhm: leastOhm,
    sideMostOhm: mostOhm,
    sideLeastDeg: leastDeg,
    sideMostDeg: mostDeg,
    ...(neededDb === undefined ? {} : { readLeastF: neededPerLegF(circuits, neededDb, at, reading) }),
  }
}
