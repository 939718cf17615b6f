/** How far a proof goes: as deep as it has room for, and what it has not shown by then stays open. */
import { expect, test } from 'vitest'
import { prove } from '../../../src/calc/bounds/certify.ts'
import { CORNER, makeFrame } from '../../../src/calc/bounds/frame.ts'

test('a box that no halving decides is open at the end of the depth: neither kept nor short', () => {
  // |N|² = |D|² everywhere, four times as much asked for; five parts over three decades, and no point of them can be
  const frame = makeFrame()
  frame.axes = 5
  for (let axis = 0; axis < frame.axes; axis++) {
    frame.part[axis] = axis
    frame.low[axis] = 1
    frame.high[axis] = 1000
    frame.weight[axis] = 1
  }
  frame.corners = new Float64Array(CORNER << frame.axes)
  for (let corner = 0; corner < 1 << frame.axes; corner++) frame.corners.set([1, 0, 1, 0], CORNER * corner)
  const hasExtent = (low: Float64Array, high: Float64Array) => high.some((most, i) => most > (low[i] as number))
  const effort = { boxes: 10_000 }
  expect(prove(frame, 4, new Float64Array(frame.axes), effort, hasExtent)).toBe('open')
  // it ended by its depth: of the effort nearly all is left
  expect(effort.boxes).toBeGreaterThan(9000)
})
