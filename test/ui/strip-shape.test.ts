import { describe, expect, it } from 'vitest'
import type { StripRow } from '../../src/calc/types.ts'
import { textWidth } from '../../src/ui/parts/axis.ts'
import { type Flag, placeFlags } from '../../src/ui/parts/strip-labels.ts'
import {
  limitsOf,
  placeWord,
  rowPieces,
  type StripPicture,
  spokenRow,
  stripSpan,
} from '../../src/ui/parts/strip-shape.ts'
import fc from '../support/property.ts'

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

  it('divides an open row into too small, allowed and excluded, with holes cut to what is allowed', () => {
    const holes = [
      [1e-10, 5e-10],
      [2e-9, 3e-9],
    ] as const
    expect(rowPieces(row({ leastF: 4e-10, mostF: 6.8e-9, holes }), span)).toEqual([
      { fromF: 1e-11, toF: 4e-10, is: 'small' },
      { fromF: 4e-10, toF: 6.8e-9, is: 'allowed' },
      { fromF: 6.8e-9, toF: 1e-6, is: 'excluded' },
      { fromF: 4e-10, toF: 5e-10, is: 'hole' },
      { fromF: 2e-9, toF: 3e-9, is: 'hole' },
    ])
  })

  it('puts care between the figure of a document and what the signal stands: it never lies in what is excluded', () => {
    expect(rowPieces(row({ state: 'half', permittedF: 1e-10, mostF: 4.8e-9 }), span)).toEqual([
      { fromF: 1e-11, toF: 1e-10, is: 'allowed' },
      { fromF: 1e-10, toF: 4.8e-9, is: 'care' },
      { fromF: 4.8e-9, toF: 1e-6, is: 'excluded' },
    ])
    // a need above the document's figure: nothing is allowed without care
    expect(rowPieces(row({ leastF: 2e-9, permittedF: 1e-10, mostF: 4.8e-9 }), span).map(({ is }) => is)).toEqual([
      'small',
      'care',
      'excluded',
    ])
    // nobody knows what the signal stands: above the document's figure no approval is promised
    expect(rowPieces(row({ state: 'none', permittedF: 1e-10 }), span).map(({ is }) => is)).toEqual(['allowed', 'half'])
    // the signal stands less than the document allows: physics wins
    expect(rowPieces(row({ state: 'half', permittedF: 9e-9, mostF: 4.8e-9 }), span).map(({ is }) => is)).toEqual([
      'allowed',
      'excluded',
    ])
  })

  it('calls nothing allowed where a resonance carries the need, or where it was not proved', () => {
    const limits = { leastF: 2e-9, permittedF: 3e-9, mostF: 4.8e-9, isWithCare: true } as const
    expect(rowPieces(row(limits), span).map(({ is }) => is)).toEqual(['small', 'care', 'care', 'excluded'])
  })

  it('tiles the axis from end to end without gap or overlap, whatever is known', () => {
    const farads = fc.option(
      fc.double({ min: -13, max: 1, noNaN: true }).map((power) => 10 ** power),
      { nil: undefined },
    )
    const states = fc.constantFrom('open', 'shut', 'half', 'harmed' as const)
    fc.assert(
      fc.property(farads, farads, farads, states, (leastF, mostF, permittedF, state) => {
        const known = { ...(leastF && { leastF }), ...(mostF && { mostF }), ...(permittedF && { permittedF }) }
        const crossed = leastF !== undefined && mostF !== undefined && leastF > mostF
        const pieces = rowPieces(row({ state: crossed ? 'shut' : state === 'shut' ? 'open' : state, ...known }), span)
        expect(pieces[0]?.fromF).toBe(span.min)
        expect(pieces.at(-1)?.toF).toBe(span.max)
        for (const [index, piece] of pieces.entries()) expect(piece.toF).toBe(pieces[index + 1]?.fromF ?? span.max)
      }),
    )
  })

  it('paints a shut row between the crossed bounds, and says where the ceiling is not known', () => {
    expect(rowPieces(row({ state: 'shut', leastF: 15e-9, mostF: 11e-9 }), span)).toEqual([
      { fromF: 1e-11, toF: 11e-9, is: 'small' },
      { fromF: 11e-9, toF: 15e-9, is: 'shut' },
      { fromF: 15e-9, toF: 1e-6, is: 'excluded' },
    ])
    // what a suppressor takes lies over what is excluded, from the most that is left to the most without it
    expect(rowPieces(row({ leastF: 4e-10, mostF: 6.8e-9, takenToF: 9.1e-9 }), span).at(-1)).toEqual({
      fromF: 6.8e-9,
      toF: 9.1e-9,
      is: 'taken',
    })
    expect(rowPieces(row({ state: 'half', leastF: 2.2e-9 }), span)).toEqual([
      { fromF: 1e-11, toF: 2.2e-9, is: 'small' },
      { fromF: 2.2e-9, toF: 1e-6, is: 'half' },
    ])
    expect(rowPieces(row({ state: 'none' }), span)).toEqual([])
  })

  it('runs the limits of the row it speaks of across the plot, and the value asked about', () => {
    const best = row({ best: true, leastF: 1e-10, mostF: 4.8e-9, permittedF: 2e-10 })
    expect(limitsOf(picture({ rows: [row({ leastF: 9e-12 }), best], chosenF: 1e-8 }))).toEqual([
      { is: 'least', atF: 1e-10 },
      { is: 'permitted', atF: 2e-10 },
      { is: 'most', atF: 4.8e-9 },
      { is: 'chosen', atF: 1e-8 },
    ])
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

describe('the labels of the limits', () => {
  const edges = [40, 294] as const
  const boxes = (flags: readonly Flag[]) =>
    placeFlags(flags, edges).map(({ tier, anchor, textPx }, index) => {
      const { xPx = 0, widthPx = 0 } = flags[index] ?? {}
      const from = anchor === 'start' ? textPx : anchor === 'end' ? textPx - widthPx : textPx - widthPx / 2
      return { tier, xPx, from, to: from + widthPx }
    })
  const flag = fc.record({ xPx: fc.integer({ min: 40, max: 294 }), widthPx: fc.integer({ min: 60, max: 120 }) })

  it('never lie on each other nor leave the plot, on the narrowest phone', () => {
    fc.assert(
      fc.property(fc.array(flag, { maxLength: 4 }), (flags) => {
        const placed = boxes(flags)
        for (const [index, one] of placed.entries()) {
          expect(one.from).toBeGreaterThanOrEqual(edges[0])
          expect(one.to).toBeLessThanOrEqual(edges[1])
          for (const other of placed.slice(index + 1))
            if (one.tier === other.tier) expect(one.from >= other.to || other.from >= one.to).toBe(true)
        }
      }),
    )
  })

  it('stand beside their own line and off those that pass, where that can be', () => {
    const flags = [
      { xPx: 60, widthPx: 110 },
      { xPx: 120, widthPx: 110 },
      { xPx: 290, widthPx: 110 },
    ]
    const placed = boxes(flags)
    for (const one of placed)
      for (const other of placed)
        if (other.tier > one.tier) expect(other.xPx <= one.from || other.xPx >= one.to).toBe(true)
    expect(Math.max(...placed.map(({ tier }) => tier))).toBe(1)
  })
})
