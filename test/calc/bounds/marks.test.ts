/** Where a part of a mark lies: from its least to its most, in proportion to its place. */
import { expect, test } from 'vitest'
import { demandsOf } from '../../../src/calc/bounds/demand.ts'
import { placeValues } from '../../../src/calc/bounds/marks.ts'

test('a part of 2 nF ±20 % beside a coil of 1 to 3 µH lies as far along as its place says', () => {
  const around = {
    topology: 'LC' as const,
    needs: [{ hz: 0, db: 1 }],
    sources: [{ ohm: 50, seriesH: 0 }],
    load: { ohm: 50, parallelF: 0, parallelH: Number.POSITIVE_INFINITY },
    esrOhm: 0,
    eslH: 0,
    bondOhm: 0,
    bondH: 0,
    inductancesH: [1e-6, 3e-6],
  }
  const [demand] = demandsOf(around, { least: 0.8, most: 1.2 })
  if (demand === undefined) throw new Error('no demand')
  const values = new Float64Array(demand.ranges.length)
  for (const [place, farads, henries] of [
    [0, 1.6e-9, 1e-6],
    [0.25, 1.8e-9, 1.5e-6],
    [0.5, 2e-9, 2e-6],
    [1, 2.4e-9, 3e-6],
  ] as const) {
    placeValues(
      demand,
      demand.ranges.map(() => place),
      2e-9,
      values,
    )
    expect([...values].map((value) => Number(value.toPrecision(12)))).toEqual([farads, henries])
  }
})
