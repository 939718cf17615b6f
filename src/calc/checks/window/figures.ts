/** The window in numbers: six rows, the one that is shown, and the figures the other checks read. */
import { type LineKind, lineKindById } from '../../../reference/line-kinds.ts'
import { isCeiling } from '../../bounds/intersect.ts'
import { mostShare } from '../../bounds/worst-case.ts'
import { CAPACITOR_COUNT, ELEMENT_COUNT, hasCapacitor, TOPOLOGIES } from '../../network/circuit.ts'
import { lineCurrentRmsA } from '../../power/supply.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Figures, Issue, Progress, Refused, Verdict } from '../../types.ts'
import { VERDICT_RANK } from '../../verdict.ts'
import { chokeIssues } from '../choke-issues.ts'
import { elementIssues } from '../elements.ts'
import { nodeIssues } from '../nodes.ts'
import { leastChokeH } from './choke-least.ts'
import type { WindowGiven } from './inputs.ts'
import { type WindowRow, windowRow } from './row.ts'
import { isUncounted, pairNeeds, ruleLacks, setUp, type WindowSetup } from './setup.ts'
import { allNeeds } from './trace-needs.ts'
import { triedIssues } from './tried-circuits.ts'

export type OpenWindow = Figures & {
  readonly is: 'window'
  readonly setup: WindowSetup
  /** the rows that had to be worked out to know which is shown; `allRows` gives the rest */
  readonly rows: readonly WindowRow[]
  /** the row asked for, or the simplest that works */
  readonly row: WindowRow
  readonly wasAsked: boolean
}

/** A line that never gets a part: no figures. */
export type Barred = Figures & { readonly is: 'barred'; readonly kind: LineKind; readonly why: string }

export type WindowFigures = OpenWindow | Barred

/** Rows one by one, yielding between them. */
export function* windowFigures(given: WindowGiven): Generator<Progress, WindowFigures | Refused> {
  const kind = given.lineKind === undefined ? undefined : lineKindById(given.lineKind)
  if (kind?.barredWhy !== undefined)
    return { is: 'barred', kind, why: kind.barredWhy, verdict: 'fails', values: {}, bounds: [], rungs: [] }
  const needs = allNeeds(given, pairNeeds)
  if ('code' in needs) return { ok: false, issues: [needs] }
  const setup = setUp(given, kind, needs)
  const issues = [
    ...elementIssues(given),
    ...dampingFits(given),
    ...triedIssues(given),
    ...nodeIssues(kind, given.nodeCount),
    ...(setup.choke === undefined ? [] : chokeIssues(setup.choke.windings)),
  ]
  if (issues.length > 0) return { ok: false, issues }
  const rows: WindowRow[] = []
  const asked = TOPOLOGIES.find((topology) => topology === given.topology)
  for (const topology of asked ? [asked] : TOPOLOGIES) {
    rows.push(windowRow(topology, setup))
    if (isDecided(rows, setup)) break
    yield { doneFrac: rows.length / TOPOLOGIES.length }
  }
  const row = simplestThatWorks(rows)
  return {
    is: 'window',
    setup,
    rows,
    row,
    wasAsked: asked !== undefined,
    verdict: row.verdict,
    values: valuesOf(row, setup),
    bounds: [...setup.bounds, ...rows.flatMap(({ asked, balance }) => [...asked, ...balance])],
    rungs: [],
  }
}

function dampingFits({ dampF, maxBuildableF }: WindowGiven): readonly Issue[] {
  if (dampF === undefined || maxBuildableF === undefined || dampF <= maxBuildableF) return []
  const most = formatQuantity(maxBuildableF, 'capacitance', 3)
  const message = `Larger than what the contact takes, ${most}: give a damping capacitor up to that, or take the limit off.`
  return [{ key: 'dampF', code: 'impossible', message }]
}

/** All six rows, for pictures and for what would open a shut window. */
export const allRows = ({ rows, setup }: OpenWindow): readonly WindowRow[] =>
  TOPOLOGIES.map((topology) => rows.find((row) => row.topology === topology) ?? windowRow(topology, setup))

/**
 * Whether no row still to come can be shown instead: one is as good as a row of this line can be, and all with as many
 * parts are there. (An inductor alone has no width: a capacitor alone that is as good comes before it.)
 */
function isDecided(rows: readonly WindowRow[], setup: WindowSetup): boolean {
  const best = bestPossible(setup)
  const [last, before] = [rows.at(-1), rows.at(-2)]
  if (last?.topology === 'LC') return false
  return last?.verdict === best || (last?.topology === 'CL' && before?.verdict === best)
}

function bestPossible(setup: WindowSetup): Verdict {
  if (setup.inBandHz !== undefined) return 'fails'
  const isKnown = setup.bounds.some(isCeiling)
  const isJudged = setup.around !== undefined || setup.tried?.isAll === true
  return isKnown && isJudged && !ruleLacks(setup) && !isUncounted(setup) ? 'ok' : 'unknown'
}

/** Best verdict, then fewest parts, then the wider window. */
export function simplestThatWorks(rows: readonly WindowRow[]): WindowRow {
  const width = ({ upper, least }: WindowRow) =>
    upper && least && least.markedF > 0 ? upper.markedF / least.markedF : 0
  const sorted = [...rows].sort(
    (a, b) =>
      VERDICT_RANK[a.verdict] - VERDICT_RANK[b.verdict] ||
      ELEMENT_COUNT[a.topology] - ELEMENT_COUNT[b.topology] ||
      width(b) - width(a) ||
      TOPOLOGIES.indexOf(a.topology) - TOPOLOGIES.indexOf(b.topology),
  )
  return sorted[0] as WindowRow
}

function valuesOf(row: WindowRow, setup: WindowSetup): Readonly<Record<string, number>> {
  const { acSupply, spread, elements } = setup
  const { need, least, most, upper, permitted, proposal, service } = row
  const values: Record<string, number | undefined> = {}
  if (need.is === 'inductor-only') values['leastInductanceH'] = need.leastH
  else {
    values['leastCapacitanceF'] = least && Number.isFinite(least.markedF) ? least.markedF : undefined
    values['mostCapacitanceF'] = most?.markedF
    values['proposedF'] = proposal?.valueF
    values['permittedF'] = permitted?.markedF
  }
  // the largest part in the proposal's mark, every capacitor of the line
  const besideF = hasCapacitor(row.topology) ? (elements.damper?.farads.most ?? 0) : 0
  const partF = proposal && CAPACITOR_COUNT[row.topology] * proposal.valueF * mostShare(spread) + besideF
  values['chassisRmsA'] = acSupply && partF !== undefined ? lineCurrentRmsA({ ...acSupply, farads: partF }) : undefined
  values['leastChokeH'] = leastChokeH(setup)
  values['worstLossDb'] = service?.lossDb
  if (proposal && least && least.markedF > 0) values['overLeastRatio'] = proposal.valueF / least.markedF
  if (proposal && upper) values['underMostRatio'] = upper.markedF / proposal.valueF
  return Object.fromEntries(Object.entries(values).filter((entry): entry is [string, number] => entry[1] !== undefined))
}
