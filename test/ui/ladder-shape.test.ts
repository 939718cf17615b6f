import { describe, expect, it } from 'vitest'
import type { LadderRung } from '../../src/calc/types.ts'
import { LINE_PX, layOutLadder } from '../../src/ui/parts/ladder-shape.ts'
import fc from '../support/property.ts'

const names = [
  'working peak',
  'long bus surge',
  'clamp at the surge current',
  'what rings up behind the filter',
  'stand-off',
]

describe('the ladder', () => {
  it('never lets labels of one rail collide or leave the picture, however close the volts are', () => {
    const rung = fc.record({ name: fc.constantFrom(...names), volts: fc.double({ min: 5, max: 3000, noNaN: true }) })
    fc.assert(
      fc.property(fc.array(rung, { minLength: 1, maxLength: 9 }), (rungs) => {
        const made = rungs.map(
          ({ name, volts }, index): LadderRung => ({
            id: `r${index}`,
            label: name,
            side: 'comes',
            minV: volts,
            maxV: volts,
          }),
        )
        const { placed, heightPx } = layOutLadder({ is: 'ladder', title: '', rungs: made, faults: [] }, 10)
        const boxes = placed
          .map(({ labelPx, lines }) => ({ labelPx, halfPx: ((lines.length + 1) * LINE_PX) / 2 }))
          .sort((a, b) => a.labelPx - b.labelPx)
        for (const [index, box] of boxes.entries()) {
          const before = boxes[index - 1]
          if (before) expect(box.labelPx - before.labelPx).toBeGreaterThanOrEqual(box.halfPx + before.halfPx)
          expect(box.labelPx + box.halfPx).toBeLessThanOrEqual(heightPx)
          expect(box.labelPx - box.halfPx).toBeGreaterThanOrEqual(22)
        }
      }),
    )
  })

  it('puts more volts higher and marks the rung that exceeds what must hold it', () => {
    const { placed } = layOutLadder(
      {
        is: 'ladder',
        title: '',
        rungs: [
          { id: 'ring', label: 'behind the filter', side: 'comes', minV: 61, maxV: 88, exceeds: 'holds' },
          { id: 'holds', label: 'circuit', side: 'holds', minV: 60, maxV: 60 },
        ],
        faults: [],
      },
      12,
    )
    const [ring, holds] = placed
    expect(ring).toMatchObject({ faulty: true, volts: '61–88\u00a0V' })
    expect(ring?.highPx).toBeLessThan(holds?.highPx ?? 0)
    expect(ring?.lowPx).toBeGreaterThan(ring?.highPx ?? 0)
  })
})
