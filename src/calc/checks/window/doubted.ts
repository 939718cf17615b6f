/** The part that was found, in its topology, under other facts: what doubts about an assumption are answered from. */
import { lineKindById } from '../../../reference/line-kinds.ts'
import type { Figures, Refused } from '../../types.ts'
import type { WindowFigures } from './figures.ts'
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
  return { verdict: fixedRow(found.row, setup).verdict, values: {}, bounds: setup.bounds, rungs: [] }
}
