/** The window drawn: one row a topology on a log capacitance axis, and the six side by side as a table. */
import { mostShare } from '../../bounds/worst-case.ts'
import { takenShare } from '../../explain/taken.ts'
import { CAPACITOR_COUNT } from '../../network/circuit.ts'
import { formatQuantity } from '../../quantity/format.ts'
import { stripAxis } from '../../strip-axis.ts'
import type { Cell, Picture, StripRow, Verdict } from '../../types.ts'
import { isHeldReason } from './held.ts'
import type { WindowRow } from './row.ts'
import type { WindowSetup } from './setup.ts'
import { triedMarks } from './tried.ts'
import { labelOf, noteOf } from './words.ts'

/** Strip picture of all rows. */
export function stripOf(rows: readonly WindowRow[], chosen: WindowRow, setup: WindowSetup, verdict: Verdict): Picture {
  const drawn = rows.map((row) => stripRow(row, setup, row.topology === chosen.topology ? verdict : undefined))
  return {
    is: 'strip',
    title: 'Window, one capacitor as marked',
    ...stripAxis([
      ...drawn.flatMap((r) => [r.leastF, r.mostF, r.takenToF, r.proposedF, r.permittedF]),
      ...triedMarks(setup).map(({ atF }) => atF),
    ]),
    rows: drawn,
    marks: triedMarks(setup),
    ...(chosen.proposal ? { chosenF: chosen.proposal.valueF } : {}),
  }
}

function stripRow(row: WindowRow, setup: WindowSetup, bestVerdict: Verdict | undefined): StripRow {
  const { least, upper, permitted, proposal } = row
  const leastF = least && Number.isFinite(least.markedF) ? least.markedF : undefined
  const isCapacitor = CAPACITOR_COUNT[row.topology] > 0 && row.need.is !== 'choke-alone'
  return {
    topology: row.topology,
    label: labelOf(row),
    best: bestVerdict !== undefined,
    state: stateOf(row, leastF),
    ...(leastF === undefined || !isCapacitor ? {} : { leastF }),
    ...(upper === undefined || !isCapacitor ? {} : { mostF: upper.markedF }),
    ...(isCapacitor ? takenOf(row, setup) : {}),
    ...(permitted === undefined || !isCapacitor || row.reasons.includes('never')
      ? {}
      : { permittedF: permitted.markedF }),
    ...(proposal === undefined ? {} : { proposedF: proposal.valueF }),
    ...(row.reasons.some(isHeldReason) ? { isWithCare: true } : {}),
    holes: row.holes.filter(([, to]) => Number.isFinite(to)),
    verdict: bestVerdict ?? row.verdict,
    note: noteOf(row, setup),
  }
}

function stateOf({ need, reasons, verdict, upper }: WindowRow, leastF: number | undefined): StripRow['state'] {
  if (need.is === 'inductor-only' || need.is === 'choke-alone' || reasons.includes('never')) return 'none'
  if (leastF === undefined || upper === undefined) return leastF === undefined && upper === undefined ? 'none' : 'half'
  if (leastF > upper.markedF) return 'shut'
  return verdict === 'fails' && reasons.includes('signal') ? 'harmed' : 'open'
}

/** Where the deciding ceiling would stand with nothing on the line, and who takes the difference. */
function takenOf({ upper, topology }: WindowRow, { bounds, room, spread }: WindowSetup) {
  const bound = bounds.find(({ id }) => id === upper?.id)
  if (!bound || bound.per === 'capacitor') return {}
  const share = takenShare(bound, room)
  if (!share) return {}
  return { takenToF: share.ownF / (CAPACITOR_COUNT[topology] * mostShare(spread)), takenWhy: share.sentence }
}

/** The six topologies at the frequency that governs each, with the proposed value (or the least) in its worst corner. */
export function topologyTable(rows: readonly WindowRow[], chosen: WindowRow, setup: WindowSetup): Picture {
  const farads = (si: number | undefined, why: string): Cell =>
    si === undefined || !Number.isFinite(si) ? { is: 'none', why } : { is: 'si', si }
  return {
    is: 'table',
    title: 'Six topologies side by side, worst case',
    columns: [
      { key: 'topology', label: 'Topology' },
      { key: 'least', label: 'At least', quantity: 'capacitance', side: 'least' },
      { key: 'most', label: 'At most', quantity: 'capacitance', side: 'most' },
      { key: 'proposed', label: 'Proposed', quantity: 'capacitance' },
      { key: 'loss', label: 'Attenuation', quantity: 'decibel', side: 'most' },
      { key: 'at', label: 'at', quantity: 'frequency' },
      { key: 'note', label: 'Note' },
    ],
    rows: rows.map((r) => {
      const isCapacitor = CAPACITOR_COUNT[r.topology] > 0 && r.need.is !== 'choke-alone'
      return {
        id: r.topology,
        strong: r.topology === chosen.topology,
        use: [{ key: 'topology', text: r.topology }],
        cells: [
          { is: 'word', word: labelOf(r), verdict: r.verdict },
          farads(isCapacitor ? r.least?.markedF : undefined, r.need.is === 'never' ? 'never' : '–'),
          farads(isCapacitor ? r.upper?.markedF : undefined, '–'),
          farads(r.proposal?.valueF, '–'),
          r.service ? { is: 'si', si: r.service.lossDb } : { is: 'none', why: '–' },
          r.service ? { is: 'si', si: r.service.need.hz } : { is: 'none', why: '–' },
          { is: 'word', word: tableNote(r, setup) },
        ],
      }
    }),
  }
}

function tableNote(row: WindowRow, setup: WindowSetup): string {
  if (row.need.is === 'inductor-only' && row.need.leastH !== undefined && row.reasons.includes('never')) {
    return `needs ${formatQuantity(row.need.leastH, 'inductance', 3)}`
  }
  return noteOf(row, setup)
}
