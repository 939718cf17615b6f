/** The reach of a contact whose box has more corners than any of today's: none of them is dropped. */
import { expect, test } from 'vitest'
import type { Cell } from '../../../src/calc/connector/plate/cells.ts'
import { reachOf } from '../../../src/calc/connector/plate/reach.ts'
import { ALPHA, SHARE } from '../../../src/calc/connector/plate/share.ts'

test('the farthest of 2,048 corners is reached, wherever it stands among them', () => {
  const count = 2048
  for (const farthest of [3, 1023, 1024, 2047]) {
    const shares = new Float64Array(SHARE * count)
    shares[SHARE * farthest + ALPHA] = 5
    const box = { shares, count } as unknown as Cell['box']
    const cell = { box, corners: Array.from({ length: count }, (_, i) => i), turn: 0 } as unknown as Cell
    const [reach] = reachOf([cell], { of: [1, 0], by: [0, 0] })
    expect([farthest, (reach ?? Number.NaN).toFixed(6)]).toEqual([farthest, '5.000000'])
  }
})
