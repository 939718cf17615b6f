/** The part that was found, in its topology, under other facts: what doubts about an assumption are answered from. */
import { lineKindById } from '../../../reference/line-kinds.ts'
import { hasInductor } from '../../network/circuit.ts'
import type { Figures, Refused } from '../../types.ts'
import type { WindowFigures } from './figures.ts'
import { heldBy, heldOrShort } from './held.ts'
import type { WindowGiven } from './inputs.ts'
import { fixedRow } from './row.ts'
import { pairNeeds, setUp } from './setup.ts'
import { allNeeds } from './trace-needs.ts'

export function doubtedWindow(given: WindowGiven, found: WindowFigures): Figures | Refused {
  if (found.is === 'barred') return found
  const needs = allNeeds(given, pairNeeds)
  if ('code' in needs) return { ok: false, issues: [needs] }
  const { lumpedF, untriedRows } = found.setup
  const setup = { ...setUp(given, lineKindById(given.lineKind ?? ''), needs), lumpedF, untriedRows }
  // a doubt asks whether the verdict gets worse: of what is with care already only what is short can
  const judge = found.verdict === 'marginal' ? heldOrShort : heldBy
  return {
    verdict: fixedRow(found.row, setup, judge).verdict,
    values: {},
    bounds: setup.bounds,
    rungs: [],
  }
}

/** What only says of an inductor how large it is and what it is beside that. */
const OF_INDUCTOR: ReadonlySet<string> = new Set(['inductanceH', 'inductorParallelF'])

/** A row of capacitors alone, without a choke, has no inductor to be in doubt about. */
export const ignoredByWindow = (found: WindowFigures, key: string): boolean =>
  found.is === 'window' && !hasInductor(found.row.topology) && found.setup.choke === undefined && OF_INDUCTOR.has(key)
