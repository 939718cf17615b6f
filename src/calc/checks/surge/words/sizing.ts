/** Classes that would carry the pulse, as a table, or why there is none. */

import { busSurgesOf, SUPPLY_CATEGORIES } from '../../../../reference/bus-surges.ts'
import { printText } from '../../../quantity/format.ts'
import type { SizeRow } from '../../../surge/sizing.ts'
import type { Cell, Picture, Use } from '../../../types.ts'
import { VERDICT_WORDS } from '../../../verdict.ts'
import type { SurgeFound } from '../figures.ts'
import { share, V, volts } from './show.ts'

/** undefined when there is nothing to list. */
export function sizingTable(rows: readonly SizeRow[] | undefined, isBothWays: boolean): Picture | undefined {
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
      ...(row.is === 'works' ? { use: useOf(row, isBothWays) } : {}),
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

/** The class as it would be entered, at its lowest stand-off; figures of one particular part make room for it. */
const useOf = ({ from }: Extract<SizeRow, { is: 'works' }>, isBothWays: boolean): readonly Use[] => [
  { key: 'standoffV', text: printText(from.standoffV, 'voltage') },
  { key: 'ratedPulseW', text: printText(from.ratedPulseW, 'power') },
  { key: 'breakdownV', text: '' },
  { key: 'dynamicOhm', text: '' },
  ...(isBothWays ? [{ key: 'bidirectional', text: 'true' }] : []),
]

/** What the supply brings by what it is built to: where nobody has said, one of these is chosen before a class can be. */
export function supplyTable({ asked, setup, sizes }: SurgeFound): Picture | undefined {
  const supply = setup.kind?.ownPeaks?.surgesOf
  if (sizes !== undefined || supply === undefined || asked.busMaxV !== undefined || asked.supplyCategory !== undefined)
    return undefined
  const rows = Object.entries(SUPPLY_CATEGORIES).flatMap(([category, name]) => {
    const surges = busSurgesOf(supply, category)
    const highest = surges.reduce<(typeof surges)[number] | undefined>(
      (most, row) => (most === undefined || row.peakV > most.peakV ? row : most),
      undefined,
    )
    return highest === undefined ? [] : [{ category, name, highest }]
  })
  if (rows.length === 0) return undefined
  return {
    is: 'table',
    title: 'The line’s own peak decides the class: what is its supply built to?',
    columns: [
      { key: 'category', label: 'Supply' },
      { key: 'peak', label: 'Highest peak', quantity: 'voltage' },
      { key: 'for', label: 'for', quantity: 'time' },
    ],
    rows: rows.map(({ category, name, highest }) => ({
      id: category,
      use: [{ key: 'supplyCategory', text: category }],
      cells: [
        { is: 'word', word: name },
        { is: 'si', si: highest.peakV },
        { is: 'si', si: highest.forSec },
      ],
    })),
  }
}

const whyNot = ({ by, size }: Extract<SizeRow, { is: 'fails' }>): string =>
  by === 'load' ? `${volts(size.loadV)} at the load` : `${share(size.usedFrac)} of the rating`

/** What to enter so that there is a table, or why no class fits. */
export function noTableWords({ asked, setup, judged, sizes }: SurgeFound): string {
  const highV = asked.busMaxV ?? judged.peaks?.highV
  if (sizes === undefined || highV === undefined || setup.withstandV === undefined)
    return 'Enter the highest line peak and what the circuit withstands to list the classes that would carry this pulse.'
  return `No class has a stand-off at ${V(highV)} and a breakdown below ${V(setup.withstandV)}: limit the bus in series, or strengthen the input.`
}
