/**
 * Prints how far the program is from each golden file and how far it may be, and guards that no file loses a row.
 * What each file is and who says so: README.md beside this file.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { chainLossInto, lossDb } from '../../src/calc/network/chain.ts'
import { BENCH_LOAD, BENCH_SOURCE, type FilterCircuit, NO_SERIES, NO_SHUNT } from '../../src/calc/network/circuit.ts'
import type { Topology } from '../../src/calc/types.ts'
import { CHOKE_FIGURES } from '../support/choke-figures.ts'
import { calculated, type Figure, type GoldenRow } from '../support/golden-rows.ts'
import { LOADING_FIGURES } from '../support/loading-figures.ts'
import { circuitOf, endsOf, TOLERANCE_DB } from '../support/ngspice-row.ts'
import { PAIR_CIRCUITS, PAIR_FIGURES, PRINTED_DB } from '../support/pair-figures.ts'
import { POWER_FIGURES } from '../support/power-figures.ts'
import { DECK_KEYS, DECKS, deckFigures, deckTolerance } from '../support/surge-deck.ts'
import choke from './choke.json' with { type: 'json' }
import published from './filters-published.json' with { type: 'json' }
import worked from './lines-worked.json' with { type: 'json' }
import loading from './loading.json' with { type: 'json' }
import ngspice from './ngspice-filters.json' with { type: 'json' }
import pair from './pair.json' with { type: 'json' }
import power from './power.json' with { type: 'json' }

/** One figure: what the program says, what the file says, how far apart they may be. */
type Compared = { readonly ours: number; readonly theirs: number; readonly tolerance: number; readonly what: string }

function ofRows(rows: readonly GoldenRow[], figures: Readonly<Record<string, Figure>>): Compared[] {
  return rows.map((row) => ({
    ours: calculated(row, figures),
    theirs: row.expected,
    tolerance: row.tolerance,
    what: row.id,
  }))
}

/** Above 120 dB the reference itself is rounding. */
const DEEP_DB = 120
const DEEP_TOLERANCE_DB = 0.01

function ofNgspice(): Compared[] {
  return ngspice.circuits.flatMap((row) => {
    const hz = Float64Array.from(row.results.map((r) => r.f_hz))
    const out = new Float64Array(hz.length)
    chainLossInto(circuitOf(row), hz, endsOf(row, hz), out)
    return row.results.map(({ il_db: theirs, f_hz }, i) => ({
      ours: out[i] ?? Number.NaN,
      theirs,
      tolerance: theirs > DEEP_DB ? DEEP_TOLERANCE_DB : TOLERANCE_DB,
      what: `${row.id} at ${f_hz} Hz`,
    }))
  })
}

function ideal(topology: string, capacitanceF: number, inductanceH: number): FilterCircuit {
  const shunt = { ...NO_SHUNT, capacitanceF }
  const coil = { ...NO_SERIES, inductanceH }
  const isKnown = (t: string): t is Topology => ['C', 'L', 'LC', 'CL', 'PI', 'T'].includes(t)
  if (!isKnown(topology)) throw new Error(`no topology ${topology}`)
  return { topology, shunt1: shunt, shunt2: shunt, series1: coil, series2: coil, bondOhm: 0, bondH: 0 }
}

const bench = (circuit: FilterCircuit, hz: number) => lossDb(circuit, BENCH_SOURCE, BENCH_LOAD, hz)

/** A row of a printed table: one circuit, one loss a frequency, half a unit of the last digit printed. */
function ofTable(
  what: string,
  circuit: FilterCircuit,
  hz: readonly number[],
  db: readonly number[],
  tolerance: number,
) {
  return db.map((theirs, i): Compared => ({ ours: bench(circuit, hz[i] ?? 0), theirs, tolerance, what }))
}

function ofPublished(): Compared[] {
  const { shuntC, seriesL, realC, topologies, bondFloor, points } = published
  const { capacitanceF, inductanceH, hz } = topologies
  return [
    ...shuntC.rows.flatMap((r) => ofTable('shunt C', ideal('C', r.capacitanceF, 0), shuntC.hz, r.lossDb, 5.1e-5)),
    ...seriesL.rows.flatMap((r) => ofTable('series L', ideal('L', 0, r.inductanceH), seriesL.hz, r.lossDb, 5.1e-5)),
    ...realC.rows.flatMap((r) => ofTable('real C', { ...ideal('C', 0, 0), shunt1: r }, realC.hz, r.lossDb, 5.1e-5)),
    ...bondFloor.rows.flatMap((r) =>
      ofTable('bond', { ...ideal('C', 1e3, 0), bondOhm: 2.5e-3, bondH: r.bondH }, bondFloor.hz, r.lossDb, 6e-4),
    ),
    ...topologies.rows.flatMap((r) =>
      Object.entries(r.lossDb).map(([topology, theirs]) => ({
        ours: lossDb(
          ideal(topology, capacitanceF, inductanceH),
          { ohm: r.sourceOhm, seriesH: 0 },
          { ...BENCH_LOAD, ohm: r.loadOhm },
          hz,
        ),
        theirs,
        tolerance: 5.1e-4,
        what: `${topology} in ${r.sourceOhm}/${r.loadOhm} Ω`,
      })),
    ),
    ...points.map((p) => ({
      ours: lossDb(
        ideal(p.topology, p.capacitanceF, p.inductanceH),
        { ohm: p.sourceOhm, seriesH: p.sourceH },
        { ...BENCH_LOAD, ohm: p.loadOhm },
        p.hz,
      ),
      theirs: p.lossDb,
      tolerance: p.tolDb,
      what: p.name,
    })),
  ]
}

function ofPairCircuits(): Compared[] {
  return pair.circuits.flatMap(({ id, results }) =>
    results.map(({ f_hz, value_db }) => ({
      ours: PAIR_CIRCUITS[id]?.(f_hz) ?? Number.NaN,
      theirs: value_db,
      tolerance: PRINTED_DB,
      what: `${id} at ${f_hz} Hz`,
    })),
  )
}

function ofDecks(): Compared[] {
  return DECKS.flatMap((deck) => {
    const ours = deckFigures(deck)
    return DECK_KEYS.flatMap((key) => {
      const theirs = deck.expected[key]
      if (theirs === undefined) return []
      return [
        {
          ours: ours[key],
          theirs,
          tolerance: Math.abs(theirs) * deckTolerance(key, theirs),
          what: `${deck.id} ${key}`,
        },
      ]
    })
  })
}

/** Figures compared, by file, with how many there must be. */
const FILES: readonly { file: string; figures: number; compare: () => Compared[] }[] = [
  { file: 'ngspice-filters.json', figures: 84, compare: ofNgspice },
  { file: 'filters-published.json', figures: 196, compare: ofPublished },
  { file: 'loading.json', figures: 101, compare: () => ofRows(loading.rows, LOADING_FIGURES) },
  { file: 'lines-worked.json', figures: 19, compare: () => ofRows(worked.rows, LOADING_FIGURES) },
  { file: 'power.json', figures: 31, compare: () => ofRows(power.rows, POWER_FIGURES) },
  { file: 'pair.json', figures: 29, compare: () => [...ofRows(pair.rows, PAIR_FIGURES), ...ofPairCircuits()] },
  { file: 'choke.json', figures: 45, compare: () => ofRows(choke.rows, CHOKE_FIGURES) },
  { file: 'surge-decks.json', figures: 61, compare: ofDecks },
]

const table: string[] = []
afterAll(() => {
  console.log(
    ['golden file | figures | worst error | allowed there | share of the allowance | where', ...table].join('\n'),
  )
})

const share = ({ ours, theirs, tolerance }: Compared): number => Math.abs(ours - theirs) / tolerance

describe.each(FILES)('$file', ({ file, figures, compare }) => {
  it('is met within its tolerances at every figure', () => {
    const all = compare()
    expect(all).toHaveLength(figures)
    expect(all.filter((c) => !(share(c) <= 1))).toEqual([])
    const worst = all.reduce((a, b) => (share(b) > share(a) ? b : a))
    const error = Math.abs(worst.ours - worst.theirs).toExponential(1)
    const part = `${Math.round(100 * share(worst))} %`
    table.push(`${file} | ${all.length} | ${error} | ${worst.tolerance} | ${part} | ${worst.what}`)
  })
})

/** How many rows each list of each file must have; a file that is not here is not guarded, and that fails too. */
const ROWS: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  'ngspice-filters.json': { circuits: 14, modeCircuits: 3 },
  'filters-published.json': { shuntC: 9, seriesL: 5, realC: 7, topologies: 5, bondFloor: 4, points: 17 },
  'loading.json': { rows: 101 },
  'lines-worked.json': { rows: 19 },
  'power.json': { rows: 31 },
  'pair.json': { rows: 11, circuits: 3 },
  'choke.json': { rows: 45, circuits: 9 },
  'guide-cases.json': { cases: 51 },
  'surge-decks.json': { circuits: 13 },
  'surge-tables.json': { factors: 12, pinInjection: 25 },
  'touchstone.json': { rows: 11 },
  'schedule.json': { rows: 11 },
}

/** Lengths of the lists of a file: a list itself, or the rows of a table. */
function lengths(file: string): Record<string, number> {
  const data = JSON.parse(readFileSync(join(import.meta.dirname, file), 'utf8')) as Record<string, unknown>
  const found: Record<string, number> = {}
  for (const [key, value] of Object.entries(data)) {
    const list = value !== null && typeof value === 'object' && 'rows' in value ? value.rows : value
    if (Array.isArray(list)) found[key] = list.length
  }
  return found
}

describe('the golden files', () => {
  const files = readdirSync(import.meta.dirname).filter((name) => name.endsWith('.json'))

  it('are all guarded: a new one is added to ROWS and to README.md, and none goes missing', () => {
    expect(files.toSorted()).toEqual(Object.keys(ROWS).toSorted())
    const readme = readFileSync(join(import.meta.dirname, 'README.md'), 'utf8')
    expect(files.filter((name) => !readme.includes(name))).toEqual([])
  })

  it.each(Object.entries(ROWS))('%s has lost no row', (file, rows) => {
    expect(lengths(file)).toEqual(rows)
  })
})
