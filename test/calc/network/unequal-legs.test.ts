/** Unequal legs solved together: against the closed form of two capacitors, coupled windings alone, and a worked table. */
import { describe, expect, it } from 'vitest'
import { chokeConversionRatio, coupledOf } from '../../../src/calc/network/choke.ts'
import { chokedConversionRatio } from '../../../src/calc/network/choked-pair.ts'
import { BENCH_LOAD, type FilterCircuit, NO_SERIES, NO_SHUNT } from '../../../src/calc/network/circuit.ts'
import { legConversionRatio } from '../../../src/calc/network/unequal-legs.ts'

const leg = (capacitanceF: number, change: Partial<FilterCircuit> = {}): FilterCircuit => ({
  topology: 'C',
  shunt1: { ...NO_SHUNT, capacitanceF },
  shunt2: { ...NO_SHUNT, capacitanceF },
  series1: NO_SERIES,
  series2: NO_SERIES,
  bondOhm: 0,
  bondH: 0,
  ...change,
})
const db = (ratio: number) => 20 * Math.log10(ratio)
const OPEN = { ...BENCH_LOAD, ohm: 1e12 }

describe('1.2 and 0.8 nF behind 50 Ω in each leg', () => {
  const at = (hz: number) =>
    db(legConversionRatio({ first: leg(1.2e-9), second: leg(0.8e-9), source: { ohm: 50, seriesH: 0 }, load: OPEN }, hz))

  // Worked in the handbook of the pair check; ngspice has the same to six decimals.
  it.each([
    [100e3, -38.0247],
    [1e6, -18.8589],
    [3.248737e6, -13.9794],
    [10e6, -18.4808],
  ])('at %d Hz turn %d dB', (hz, expected) => {
    expect(at(hz)).toBeCloseTo(expected, 3)
  })
})

describe('the windings of a choke', () => {
  const choke = { windingH: 1e-3, leakageH: 8e-6, windingOhm: 0.3, acrossF: 5e-12, mismatchFrac: 0.02 }

  it.each(['source', 'load'] as const)(
    'alone on the %s side turn as much as two coupled coils between the ends',
    (side) => {
      for (const hz of [1e4, 1e6, 30e6])
        expect(
          legConversionRatio(
            {
              first: leg(0),
              second: leg(0),
              choke: { windings: coupledOf(choke), side },
              source: { ohm: 100, seriesH: 0 },
              load: { ...BENCH_LOAD, ohm: 70 },
            },
            hz,
          ),
        ).toBeCloseTo(chokeConversionRatio(choke, { sourceOhm: 100, loadOhm: 70 }, hz), 10)
    },
  )

  it('before unequal capacitors turn as much as the pair check says, either winding the larger', () => {
    for (const mismatchFrac of [0.03, -0.03])
      for (const hz of [2e4, 3e5, 5e6]) {
        const unlike = { ...choke, mismatchFrac }
        const found = legConversionRatio(
          {
            first: leg(1.2e-9),
            second: leg(0.8e-9),
            choke: { windings: coupledOf(unlike), side: 'source' },
            source: { ohm: 50, seriesH: 0 },
            load: OPEN,
          },
          hz,
        )
        const expected = chokedConversionRatio({ legF: 1.2e-9, leg2F: 0.8e-9, legOhm: 50, choke: unlike }, hz)
        expect(found / expected).toBeCloseTo(1, 5)
      }
  })
})

it('equal legs turn nothing, whatever they stand on', () => {
  const same = leg(2e-9, { topology: 'PI', series1: { ...NO_SERIES, inductanceH: 1e-6 }, bondH: 3e-9, bondOhm: 0.01 })
  expect(
    legConversionRatio({ first: same, second: same, source: { ohm: 50, seriesH: 1e-7 }, load: BENCH_LOAD }, 7e6),
  ).toBeLessThan(1e-12)
})

it('ten times the larger leg from line to line takes it down about as much', () => {
  const cross = { ...NO_SHUNT, capacitanceF: 24e-9 }
  const at = (first: FilterCircuit) =>
    legConversionRatio({ first, second: leg(0.8e-9), source: { ohm: 50, seriesH: 0 }, load: OPEN }, 3.248737e6)
  // The wires then see 12 nF + 0.48 nF between them instead of 0.48: about 26 times less while 2·R is the larger.
  expect(at(leg(1.2e-9)) / at(leg(1.2e-9, { cross }))).toBeGreaterThan(10)
})
