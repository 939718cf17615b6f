/** Classes that would carry the pulse, as a table, or why there is none. */

import type { SizeRow } from '../../../surge/sizing.ts'
import type { Cell, Picture } from '../../../types.ts'
import { VERDICT_WORDS } from '../../../verdict.ts'
import type { SurgeFound } from '../figures.ts'
import { percent, V } from './show.ts'

/** undefined when there is nothing to list. */
export function sizingTable(rows: readonly SizeRow[] | undefined): Picture | undefined {
  if (rows === undefined || rows.length === 0) return undefined
  const si = (value: number): Cell => ({ is: 'si', si: value })
  const none: Cell = { is: 'none', why: '–' }
  const first = rows.find((row) => row.is === 'works')
  return {
    is: 'table',
    title: 'Classes that would carry it with margin, smallest first',
    columns: [
      { key: 'power', label: '10/1000 µs power', quantity: 'power' },
      { key: 'verdict', label: 'Verdict' },
      { key: 'from', label: 'Stand-off, least', quantity: 'voltage' },
      { key: 'to', label: 'Stand-off, most', quantity: 'voltage' },
      { key: 'ohmFrom', label: 'Dynamic resistance, least', quantity: 'resistance' },
      { key: 'ohmTo', label: 'Dynamic resistance, most', quantity: 'resistance' },
      { key: 'load', label: 'Load peak at the lowest', quantity: 'voltage' },
      { key: 'used', label: 'Rating used', quantity: 'fraction' },
    ],
    rows: rows.map((row) => ({
      id: `w${row.ratedPulseW}`,
      strong: row === first,
      cells:
        row.is === 'fails'
          ? [
              si(row.ratedPulseW),
              { is: 'word', word: `${VERDICT_WORDS.fails}: ${whyNot(row)}`, verdict: 'fails' },
              none,
              none,
              none,
              none,
              none,
              none,
            ]
          : [
              si(row.ratedPulseW),
              { is: 'word', word: VERDICT_WORDS.ok, verdict: 'ok' },
              si(row.from.standoffV),
              si(row.to.standoffV),
              si(row.from.dynamicOhm),
              si(row.to.dynamicOhm),
              si(row.from.loadV),
              si(row.from.usedFrac),
            ],
    })),
  }
}

const whyNot = ({ by, size }: Extract<SizeRow, { is: 'fails' }>): string =>
  by === 'load' ? `${V(size.loadV)} at the load` : `${percent(size.usedFrac)} of the rating`

/** What to enter so that there is a table, or why no class fits. */
export function noTableWords({ asked, setup, judged, sizes }: SurgeFound): string {
  const highV = asked.busMaxV ?? judged.peaks?.highV
  if (sizes === undefined || highV === undefined || setup.withstandV === undefined)
    return 'Enter the highest line peak and what the circuit withstands to list the classes that would carry this pulse.'
  return `No class has a stand-off at ${V(highV)} and a breakdown below ${V(setup.withstandV)}: limit the bus in series, or strengthen the input.`
}
