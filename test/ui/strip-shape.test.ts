import { describe, expect, it } from 'vitest'
import type { StripRow } from '../../src/calc/types.ts'
import { textWidth } from '../../src/ui/parts/axis.ts'
import { placeWord, rowPieces, type StripPicture, spokenRow, stripSpan } from '../../src/ui/parts/strip-shape.ts'

const row = (part: Partial<StripRow>): StripRow => ({
  topology: 'C',
  label: 'C',
  best: false,
  state: 'open',
  holes: [],
  verdict: 'ok',
  note: '',
  ...part,
})
const picture = (part: Partial<StripPicture>): StripPicture => ({
  is: 'strip',
  title: 'Window',
  minF: 1e-11,
  maxF: 1e-6,
  rows: [],
  marks: [],
  ...part,
})
const span = { min: 1e-11, max: 1e-6 }

describe('the window strip', () => {
  it('spans 10 pF to 1 µF and grows by whole decades to hold every value', () => {
    expect(stripSpan(picture({}))).toEqual({ min: 1e-11, max: 1e-6 })
    const grown = stripSpan(picture({ chosenF: 3.3e-12, rows: [row({ mostF: 2.2e-6 })] }))
    expect(grown.min).toBeCloseTo(1e-12, 20)
    expect(grown.max).toBeCloseTo(1e-5, 12)
  })

  it('paints an open row from its least to its most, with holes cut to it', () => {
    const holes = [
      [1e-10, 5e-10],
      [2e-9, 3e-9],
    ] as const
    expect(rowPieces(row({ leastF: 4e-10, mostF: 6.8e-9, holes }), span)).toEqual([
      { fromF: 4e-10, toF: 6.8e-9, is: 'open' },
      { fromF: 4e-10, toF: 5e-10, is: 'hole' },
      { fromF: 2e-9, toF: 3e-9, is: 'hole' },
    ])
  })

  it('paints a shut row between the crossed bounds and half a row to the end of the axis', () => {
    expect(rowPieces(row({ state: 'shut', leastF: 15e-9, mostF: 11e-9 }), span)).toEqual([
      { fromF: 11e-9, toF: 15e-9, is: 'shut' },
    ])
    // what a suppressor takes lies between the most that is left and the most without it
    expect(rowPieces(row({ leastF: 4e-10, mostF: 6.8e-9, takenToF: 9.1e-9, holes: [] }), span)[0]).toEqual({
      fromF: 6.8e-9,
      toF: 9.1e-9,
      is: 'taken',
    })
    expect(rowPieces(row({ state: 'half', leastF: 2.2e-9 }), span)).toEqual([{ fromF: 2.2e-9, toF: 1e-6, is: 'half' }])
    expect(rowPieces(row({ state: 'none' }), span)).toEqual([])
  })

  it('puts the word inside its piece, beside it, or on its other side, and never over the edge', () => {
    const edgesPx = [40, 340] as const
    const at = (fromPx: number, toPx: number) => placeWord({ fromPx, toPx, edgesPx, word: 'shut', sizePx: 12 })
    expect(at(100, 170)).toEqual({ xPx: 135, anchor: 'middle' })
    expect(at(100, 106)).toEqual({ xPx: 112, anchor: 'start' })
    expect(at(330, 336)).toEqual({ xPx: 324, anchor: 'end' })
    expect(at(41, 338).anchor).toBe('middle')
    expect(at(330, 336).xPx - textWidth('shut', 12)).toBeGreaterThan(40)
  })

  it('speaks of the best row, else of the first that has a bound', () => {
    const best = row({ topology: 'PI', best: true })
    const none = row({ topology: 'L', state: 'none' })
    expect(spokenRow(picture({ rows: [none, row({}), best] }))).toBe(best)
    expect(spokenRow(picture({ rows: [none, row({})] }))?.topology).toBe('C')
  })
})
