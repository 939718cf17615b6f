/** The table printed as one grid: a row for each reading, a column for each suspect. For review, never for the screen. */
import type { Evidence, Reading, Suspect } from '../investigation.ts'
import type { Table } from './table.ts'

const SIGNS = { 'rules-out': 'x', against: '-', for: '+', proves: '!' } as const

const cell = (reading: Reading, { id }: Suspect): string => {
  const say = reading.says[id]
  return say === undefined ? '.' : SIGNS[say]
}

function citesOf({ cites = {} }: Reading): string {
  const words = Object.entries(cites).map(([suspect, { id }]) => `${suspect} ${id}`)
  return words.length === 0 ? '' : `  [${words.join(', ')}]`
}

function rowsOf(item: Evidence, suspects: readonly Suspect[], width: number): readonly string[] {
  const opens = item.opens === true ? ', opens' : ''
  return [
    '',
    `${item.id} (${item.kind}, ${item.about}, ${item.minutes} min${opens}): ${item.text}`,
    ...item.options.map((reading) => {
      const name = `  ${reading.id}${reading.retired ? ' (retired)' : ''}`.padEnd(width)
      const stop = reading.stop === undefined ? '' : `  -> ${reading.stop}`
      return `${name}${suspects.map((suspect) => cell(reading, suspect)).join('')}${stop}${citesOf(reading)}`
    }),
  ]
}

/** Columns are numbered; the legend names them with part, how usual, cure and proof. */
export function printGrid({ suspects, evidence }: Table): string {
  const width = 26
  const tens = suspects.map((_, index) => (index % 10 === 0 ? String(Math.floor(index / 10)) : ' ')).join('')
  const ones = suspects.map((_, index) => String(index % 10)).join('')
  const legend = suspects.map(
    ({ id, part, usual, cure, effort, proof, outcome, shows, paths, alone }, index) =>
      `${String(index).padStart(2)} ${id}: ${part}, ${usual}, cure ${cure} (effort ${effort}) -> ${outcome}, proof ${proof}, shows ${shows.join(' ')}${paths === undefined ? '' : `, by ${paths.join(' ') || 'none'}`}${alone === undefined ? '' : `, alone as ${alone.join(' ')}`}`,
  )
  return [
    `${suspects.length} suspects, ${evidence.length} items. x rules out, - against, + for, ! proves; cells without a source are practice.`,
    '',
    ...legend,
    '',
    `${''.padEnd(width)}${tens}`,
    `${''.padEnd(width)}${ones}`,
    ...evidence.flatMap((item) => rowsOf(item, suspects, width)),
    '',
  ].join('\n')
}
