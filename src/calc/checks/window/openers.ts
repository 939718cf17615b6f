/** What would open a shut window, as numbers. Every one is a row worked out anew with what it would change. */
import { worstInBox } from '../../bounds/box.ts'
import { roomUnderF } from '../../bounds/room.ts'
import type { Spread } from '../../bounds/worst-case.ts'
import { mostShare } from '../../bounds/worst-case.ts'
import { CAPACITOR_COUNT } from '../../network/circuit.ts'
import type { Topology } from '../../types.ts'
import { placings } from './around.ts'
import { type DampingOpener, damped, withDamper } from './damping.ts'
import type { WindowGiven } from './inputs.ts'
import { type ModeOpener, modeOpeners } from './mode-openers.ts'
import { type WindowRow, windowRow } from './row.ts'
import { roomOf, sharesOf, type WindowSetup } from './setup.ts'

export type WindowOpener =
  | { readonly is: 'topology' | 'part' | 'bond' | 'lead'; readonly row: WindowRow }
  | { readonly is: 'inductance'; readonly inductanceH: number; readonly row: WindowRow }
  /** the suppressor may have so much, or so much has to come off what is on the line */
  | { readonly is: 'suppressor' | 'existing'; readonly farads: number; readonly row: WindowRow }
  | DampingOpener
  | { readonly is: 'need'; readonly db: number; readonly row: WindowRow }
  | ModeOpener

/** A 5 % C0G part: no ageing, no loss at voltage, 0.3 % over temperature. S23, S24 (read). */
const CLASS_1: Spread = {
  tolerance: { lowFrac: 0.05, highFrac: 0.05 },
  temperatureFrac: 0.003,
  biasFrac: 0,
  ageingDecades: 0,
  ageingFracPerDecade: 0,
}

/** Each opens the row, cheapest change first; a row that only rings is offered its damping. */
export function openersOf(
  row: WindowRow,
  rows: readonly WindowRow[],
  setup: WindowSetup,
  given: WindowGiven,
): readonly WindowOpener[] {
  if (!setup.around || setup.inBandHz !== undefined) return []
  if (row.verdict !== 'fails') return row.verdict === 'marginal' ? damped(row, setup) : []
  return [
    ...otherRows(row, rows),
    ...dampedRow(row, rows, setup),
    ...largerInductor(rows, setup),
    ...modeOpeners(row, setup, given),
    ...betterPart(row, setup),
    ...betterBond(row, setup),
    ...lessNeed(row, setup),
    ...lessTaken(row, setup),
  ]
}

/** The row itself, or where it has nothing that rings the other shut ones: the first that damping opens. */
function dampedRow(row: WindowRow, rows: readonly WindowRow[], setup: WindowSetup): readonly WindowOpener[] {
  if (rows.some(isOpen)) return damped(row, setup)
  for (const one of [row, ...rows.filter(({ topology }) => topology === 'LC' || topology === 'CL')]) {
    const found = damped(one, setup)
    if (found.length > 0) return found
  }
  return []
}

const isOpen = ({ verdict }: WindowRow): boolean => verdict !== 'fails'

function otherRows(row: WindowRow, rows: readonly WindowRow[]): readonly WindowOpener[] {
  const open = rows.filter((r) => r.topology !== row.topology && (r.verdict === 'ok' || r.verdict === 'marginal'))
  return open.slice(0, 2).map((r) => ({ is: 'topology', row: r }))
}

/** Inductors to try, henries: a coarse series from 100 nH to 1 mH. */
const TRY_H = [-7, -6, -5, -4].flatMap((decade) => [1, 2.2, 4.7].map((digit) => digit * 10 ** decade)).concat(1e-3)

/** When no row is open: the smallest inductor of the series that opens LC, CL or T (whichever faces the lower impedance). */
function largerInductor(rows: readonly WindowRow[], setup: WindowSetup): readonly WindowOpener[] {
  const { around, inductanceH } = setup
  const { bead, lacks } = setup.elements
  if (!around || rows.some(isOpen) || bead !== undefined || lacks.length > 0) return []
  const leftFrac = leftOf(setup)
  const source = around.sources[0]?.ohm ?? 0
  const sided: Topology = source <= around.load.ohm ? 'LC' : 'CL'
  for (const enteredH of TRY_H) {
    const least = enteredH * leftFrac
    if (least <= inductanceH.least) continue
    const larger = withInductor(setup, { least, most: (least * inductanceH.most) / inductanceH.least })
    const tried: WindowRow[] = []
    for (const topology of [sided, 'PI', 'T'] as const) {
      const row = windowRow(topology, larger)
      if (isOpen(row)) return [{ is: 'inductance', inductanceH: enteredH, row }]
      tried.push(row)
    }
    // The signal does not stand this one in any topology: a larger one is no way out.
    if (tried.every(({ reasons }) => reasons.includes('signal'))) return []
  }
  return []
}

/** What the current leaves of an inductance as it is entered. */
function leftOf({ inductanceH, enteredH }: WindowSetup): number {
  return inductanceH.least / enteredH
}

function withInductor(setup: WindowSetup, inductanceH: WindowSetup['inductanceH']): WindowSetup {
  const { around } = setup
  return {
    ...setup,
    inductanceH,
    around: around && { ...around, inductancesH: [inductanceH.least, inductanceH.most] },
  }
}

function betterPart(row: WindowRow, setup: WindowSetup): readonly WindowOpener[] {
  const better = { ...setup, spread: CLASS_1 }
  const { damper } = setup.elements
  const again = windowRow(row.topology, damper === undefined ? better : withDamper(better, damper.marked))
  return isOpen(again) ? [{ is: 'part', row: again }] : []
}

function betterBond(row: WindowRow, setup: WindowSetup): readonly WindowOpener[] {
  const { around } = setup
  if (!around || (around.bondH === 0 && around.bondOhm === 0 && around.eslH === 0)) return []
  const bonded = { ...around, bondH: 0, bondOhm: 0 }
  const perfect = windowRow(row.topology, { ...setup, around: bonded })
  if (isOpen(perfect)) return [{ is: 'bond', row: perfect }]
  const both = windowRow(row.topology, { ...setup, around: { ...bonded, eslH: 0, esrOhm: 0 } })
  return isOpen(both) ? [{ is: 'lead', row: both }] : []
}

function lessNeed(row: WindowRow, setup: WindowSetup): readonly WindowOpener[] {
  const { around } = setup
  const upperF = row.upper?.markedF
  if (!around || upperF === undefined || upperF <= 0) return []
  const at = placings(around, setup).map((one) =>
    worstInBox({ ...one, topology: row.topology }, sharesOf(setup), upperF),
  )
  const db = Math.max(...at.map((margin) => -margin.db))
  if (db <= 0) return []
  // A rounding more, so that the row worked out anew is not shut by one.
  const eased = around.needs.map((need) => ({ ...need, db: Math.max(0, need.db - db - 1e-6) }))
  const again = windowRow(row.topology, { ...setup, around: { ...around, needs: eased } })
  return isOpen(again) ? [{ is: 'need', db, row: again }] : []
}

/** Room per leg that the least would need, against what suppressor and existing capacitance now take. */
function lessTaken(row: WindowRow, setup: WindowSetup): readonly WindowOpener[] {
  const { least } = row
  const { taken, room } = setup
  const bound = setup.bounds.find(({ id }) => id === row.upper?.id)
  if (!least || !Number.isFinite(least.markedF) || !bound || bound.per === 'capacitor') return []
  const wantedF = least.markedF * CAPACITOR_COUNT[row.topology] * mostShare(setup.spread)
  const shortF = (wantedF - roomUnderF(bound, room)) * (1 + 1e-9)
  if (shortF <= 0) return []
  const after = (change: Partial<WindowSetup['taken']>) => {
    const less = { ...taken, ...change }
    // What is taken off stands at no end of the filter any more: a resonance may move into the noise.
    const lumpedF = Math.max(0, setup.lumpedF - (taken.existingF - less.existingF))
    return windowRow(row.topology, { ...setup, taken: less, lumpedF, room: roomOf(less, setup.elements.damper) })
  }
  const out: WindowOpener[] = []
  if (taken.suppressorF >= shortF) {
    const suppressorF = taken.suppressorF - shortF
    const again = after({ suppressorF })
    if (isOpen(again)) out.push({ is: 'suppressor', farads: suppressorF, row: again })
  }
  const offF = shortF / (taken.isPair && bound.per === 'pair' ? 2 : 1)
  if (taken.existingF - (taken.otherNodesF ?? 0) >= offF && (bound.per === 'pair' || !taken.isPair)) {
    const again = after({ existingF: taken.existingF - offF })
    if (isOpen(again)) out.push({ is: 'existing', farads: offF, row: again })
  }
  return out
}
