/** A choke over a wide span beside a filter of fixed parts: the lowest lies well inside, at a resonance. */
import { expect, it } from 'vitest'
import { worstInBox } from '../../../src/calc/bounds/box.ts'
import { lossDb } from '../../../src/calc/network/chain.ts'
import { BENCH_LOAD, NO_SERIES, NO_SHUNT } from '../../../src/calc/network/circuit.ts'

const source = { ohm: 20, seriesH: 0 }
const load = { ...BENCH_LOAD, ohm: 300 }
const coil = (inductanceH: number) => ({ ...NO_SERIES, inductanceH })
const SPAN = { least: 0.5e-6, most: 8e-6 }

it.each([
  ['source', 'CL'],
  ['source', 'PI'],
  ['load', 'LC'],
  ['load', 'PI'],
] as const)('a choke on the %s side of %s is searched to its lowest', (side, topology) => {
  const part = { ...NO_SERIES, dcrOhm: 0.5, parallelF: 2e-12 }
  const hz = 9e6
  // By reciprocity the mirrored filter between the mirrored ends is the same.
  const ends =
    side === 'source'
      ? ([source, load] as const)
      : ([
          { ohm: 300, seriesH: 0 },
          { ...load, ohm: 20 },
        ] as const)
  const at = (henries: number) =>
    lossDb(
      {
        topology,
        shunt1: { ...NO_SHUNT, capacitanceF: 100e-12 },
        shunt2: { ...NO_SHUNT, capacitanceF: 100e-12 },
        series1: coil(1e-6),
        series2: coil(1e-6),
        bondOhm: 1e-3,
        bondH: 1e-9,
        choke: { part: { ...part, inductanceH: henries }, side },
      },
      ends[0],
      ends[1],
      hz,
    )
  const dense = Array.from({ length: 4001 }, (_, i) => at(SPAN.least * (SPAN.most / SPAN.least) ** (i / 4000)))
  const lowest = Math.min(...dense)
  expect(lowest).toBeLessThan(Math.min(at(SPAN.least), at(SPAN.most)) - 1)
  const around = {
    topology,
    needs: [{ hz, db: 0 }],
    sources: [ends[0]],
    load: ends[1],
    esrOhm: 0,
    eslH: 0,
    bondOhm: 1e-3,
    bondH: 1e-9,
    inductancesH: [1e-6],
  }
  const found = worstInBox({ ...around, choke: { part, side, spanH: SPAN } }, { least: 1, most: 1 }, 100e-12).db
  expect(found).toBeLessThanOrEqual(lowest + 1e-6)
  expect(found).toBeGreaterThan(lowest - 1e-3)
})
