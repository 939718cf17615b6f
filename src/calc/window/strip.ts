/** The window drawn: one row a topology on a log capacitance axis, and the six side by side as a table. */
import { formatQuantity } from '../quantity/format.ts'
import { stripAxis } from '../strip-axis.ts'
import type { Cell, Picture, StripRow, Verdict } from '../types.ts'
import type { WindowRow } from './row.ts'

/** Strip picture of all rows. */
export function stripOf(rows: readonly WindowRow[], chosen: WindowRow, verdict: Verdict): Picture {
  const values = rows.flatMap((r) => [
    r.leastF,
    r.upper?.markedF,
    r.upper?.bareF,
    r.proposal?.valueF,
    r.permitted?.markedF,
  ])
  return {
    is: 'strip',
    title: 'Window, one capacitor as marked',
    ...stripAxis(values),
    rows: rows.map((r) => stripRow(r, r.topology === chosen.topology, verdict)),
    marks: [],
    ...(chosen.proposal ? { chosenF: chosen.proposal.valueF } : {}),
  }
}

function stripRow(row: WindowRow, best: boolean, verdict: Verdict): StripRow {
  const { leastF, upper, permitted, proposal } = row
  const crossed = leastF !== undefined && upper !== undefined && leastF > upper.markedF
  const state =
    row.least.is === 'inductor-only' || row.least.is === 'never'
      ? 'none'
      : leastF === undefined || upper === undefined
        ? leastF === undefined && upper === undefined
          ? 'none'
          : 'half'
        : crossed
          ? 'shut'
          : 'open'
  return {
    topology: row.topology,
    label: row.label,
    best,
    state,
    ...(leastF === undefined ? {} : { leastF }),
    ...(upper === undefined ? {} : { mostF: upper.markedF }),
    ...(upper?.bareF === undefined ? {} : { takenToF: upper.bareF }),
    ...(permitted === undefined ? {} : { permittedF: permitted.markedF }),
    ...(proposal === undefined ? {} : { proposedF: proposal.valueF }),
    holes: row.holes,
    verdict: best ? verdict : row.verdict,
    note: row.note,
  }
}

/** The six topologies at the frequency that governs each, with the proposed value (or the least) in its worst corner. */
export function topologyTable(rows: readonly WindowRow[], chosen: WindowRow): Picture {
  const farads = (si: number | undefined, why: string): Cell =>
    si === undefined ? { is: 'none', why } : { is: 'si', si }
  return {
    is: 'table',
    title: 'Six topologies side by side, worst case',
    columns: [
      { key: 'topology', label: 'Topology' },
      { key: 'least', label: 'At least', quantity: 'capacitance' },
      { key: 'most', label: 'At most', quantity: 'capacitance' },
      { key: 'proposed', label: 'Proposed', quantity: 'capacitance' },
      { key: 'loss', label: 'Attenuation', quantity: 'decibel' },
      { key: 'at', label: 'at', quantity: 'frequency' },
      { key: 'note', label: 'Note' },
    ],
    rows: rows.map((r) => ({
      id: r.topology,
      strong: r.topology === chosen.topology,
      cells: [
        { is: 'word', word: r.label, verdict: r.verdict },
        farads(r.leastF, r.least.is === 'never' ? 'never' : '–'),
        farads(r.upper?.markedF, '–'),
        farads(r.proposal?.valueF, '–'),
        r.service ? { is: 'si', si: r.service.lossDb } : { is: 'none', why: '–' },
        r.service ? { is: 'si', si: r.service.need.hz } : { is: 'none', why: '–' },
        { is: 'word', word: noteOf(r) },
      ],
    })),
  }
}

function noteOf(row: WindowRow): string {
  if (row.least.is === 'inductor-only' && row.least.leastH !== undefined && row.verdict === 'fails') {
    return `needs ${formatQuantity(row.least.leastH, 'inductance', 3)}`
  }
  return row.note
}
