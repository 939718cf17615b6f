/** What would open a shut window. Every line is a recomputation, never a feeling. */

import { worstInBox } from '../bounds/box.ts'
import { leastMarkedF } from '../bounds/least-marked.ts'
import type { Taken } from '../bounds/room.ts'
import { leastShare, mostShare } from '../bounds/worst-case.ts'
import { CAPACITOR_COUNT } from '../network/circuit.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Opener } from '../types.ts'
import { type WindowFacts, type WindowRow, windowRow } from './row.ts'

const farads = (x: number) => formatQuantity(x, 'capacitance', 3)
const dB = (x: number) => formatQuantity(x, 'decibel', 3)

/** A 5 % C0G part: no ageing, no loss at voltage, 0.3 % over temperature. S23, S24 (read). */
const CLASS_1 = {
  tolerance: { lowFrac: 0.05, highFrac: 0.05 },
  temperatureFrac: 0.003,
  biasFrac: 0,
  ageingDecades: 0,
  ageingFracPerDecade: 0,
}

/** Sentences that each open the row, cheapest change first; pauses between recomputations. Empty when the row is not shut. */
export function* openersOf(
  row: WindowRow,
  rows: readonly WindowRow[],
  facts: WindowFacts,
  taken: Taken,
): Generator<void, Opener[]> {
  if (row.verdict !== 'fails' || !facts.around) return []
  const found = otherRows(row, rows)
  found.push(...(yield* largerInductor(rows, facts)))
  for (const more of [betterPart, betterBond, lessNeed]) {
    yield
    found.push(...more(row, facts))
  }
  return [...found, ...lessTaken(row, facts, taken)]
}

function otherRows(row: WindowRow, rows: readonly WindowRow[]): Opener[] {
  const open = rows.filter((r) => r.topology !== row.topology && (r.verdict === 'ok' || r.verdict === 'marginal'))
  return open.slice(0, 2).map((r) => ({
    id: `topology-${r.topology}`,
    sentence:
      r.least.is === 'inductor-only' ? `${r.label} alone meets the need.` : `${r.label} opens it: ${rangeOf(r)}.`,
  }))
}

/** Inductors to try, henries: a coarse series from 100 nH to 1 mH. */
const TRY_H = [-7, -6, -5, -4].flatMap((decade) => [1, 2.2, 4.7].map((digit) => digit * 10 ** decade)).concat(1e-3)

/** When no row is open: the smallest inductor of the series that opens LC, CL or T (whichever faces the lower impedance). */
function* largerInductor(rows: readonly WindowRow[], facts: WindowFacts): Generator<void, Opener[]> {
  const { around } = facts
  if (!around || rows.some((r) => r.verdict !== 'fails')) return []
  const leastH = around.inductancesH[0] ?? 0
  const source = around.sources[0]?.ohm ?? 0
  const sided = source <= around.load.ohm ? 'LC' : 'CL'
  for (const inductanceH of TRY_H) {
    if (inductanceH <= leastH) continue
    const inductancesH = around.inductancesH.map((h) => (inductanceH * h) / leastH)
    for (const topology of [sided, 'PI', 'T'] as const) {
      yield
      const again = windowRow(topology, { ...facts, around: { ...around, inductancesH } })
      if (again.verdict === 'fails') continue
      const henries = formatQuantity(inductanceH, 'inductance', 3)
      return [{ id: `inductance-${topology}`, sentence: `${again.label} with ${henries} opens it: ${rangeOf(again)}.` }]
    }
  }
  return []
}

function rangeOf(row: WindowRow): string {
  const least = farads(row.leastF ?? 0)
  return row.upper ? `${least} to ${farads(row.upper.markedF)}` : `${least} or more`
}

function betterPart(row: WindowRow, facts: WindowFacts): Opener[] {
  const tight = { ...facts, leastShare: leastShare(CLASS_1), mostShare: mostShare(CLASS_1) }
  return opens(row, tight, 'part', (r) => `A 5 % C0G capacitor opens it: ${rangeOf(r)}.`)
}

function betterBond(row: WindowRow, facts: WindowFacts): Opener[] {
  const { around } = facts
  if (!around || (around.bondH === 0 && around.bondOhm === 0 && around.eslH === 0)) return []
  const perfect = opens(
    row,
    { ...facts, around: { ...around, bondH: 0, bondOhm: 0 } },
    'bond',
    (r) => `A perfect bond opens it: ${rangeOf(r)}.`,
  )
  if (perfect.length > 0) return perfect
  const both = { ...around, bondH: 0, bondOhm: 0, eslH: 0, esrOhm: 0 }
  return opens(
    row,
    { ...facts, around: both },
    'lead',
    (r) => `Feed-through parts on a perfect bond open it: ${rangeOf(r)}.`,
  )
}

function opens(row: WindowRow, facts: WindowFacts, id: string, say: (r: WindowRow) => string): Opener[] {
  const again = windowRow(row.topology, facts)
  return again.verdict === 'fails' ? [] : [{ id, sentence: say(again) }]
}

/** Room per leg that the least would need, against what suppressor and existing capacitance now take. */
function lessTaken(row: WindowRow, facts: WindowFacts, taken: Taken): Opener[] {
  if (row.leastF === undefined || !facts.works) return []
  const wantedF = row.leastF * CAPACITOR_COUNT[row.topology] * facts.mostShare
  const shortF = wantedF - facts.works.roomF
  if (shortF <= 0) return []
  const out: Opener[] = []
  if (taken.suppressorF >= shortF) {
    out.push({
      id: 'suppressor',
      sentence: `A suppressor of ${farads(taken.suppressorF - shortF)} or less per leg opens it.`,
    })
  }
  const perLeg = taken.isPair ? 2 : 1
  if (taken.existingF >= shortF / perLeg) {
    out.push({
      id: 'existing',
      sentence: `Taking ${farads(shortF / perLeg)} off what is already on the line opens it.`,
    })
  }
  return out
}

function lessNeed(row: WindowRow, facts: WindowFacts): Opener[] {
  const { around } = facts
  const upperF = row.upper?.markedF
  if (!around || upperF === undefined || upperF <= 0) return []
  const at = { ...around, topology: row.topology }
  const shares = { least: facts.leastShare, most: facts.mostShare }
  const shortDb = -worstInBox(at, shares, upperF).db
  if (shortDb <= 0) return []
  const eased = { ...at, needs: around.needs.map((n) => ({ ...n, db: Math.max(0, n.db - shortDb) })) }
  const least = leastMarkedF(eased, shares)
  const works = least.is === 'none-needed' || (least.is === 'found' && least.marked <= upperF * 1.000001)
  return works
    ? [{ id: 'need', sentence: `${dB(shortDb)} less at the source (or by bond, shield or choke) opens it.` }]
    : []
}
