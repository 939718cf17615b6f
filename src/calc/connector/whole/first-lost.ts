/** Up to which inductance something holds, looked for in slices. */
import type { Progress } from '../../types.ts'

const LEAST_H = 1e-12
const STEPS_PER_DECADE = 6
const HALVINGS = 16

/**
 * From 0 on: 0 = nowhere, `mostH` = everywhere looked. Six steps a decade, then the first crossing halved to 1e-5 of its
 * step: what holds again beyond a resonance does not count.
 */
export function* firstLostIn(
  holds: (henries: number) => Generator<Progress, boolean>,
  mostH: number,
): Generator<Progress, number> {
  if (!(yield* holds(0))) return 0
  let below = 0
  const steps = Math.ceil(STEPS_PER_DECADE * Math.log10(mostH / LEAST_H))
  for (let i = 0; i <= steps; i++) {
    const henries = LEAST_H * (mostH / LEAST_H) ** (i / steps)
    if (yield* holds(henries)) {
      below = henries
      continue
    }
    let above = henries
    for (let k = 0; k < HALVINGS; k++) {
      const middle = (above + below) / 2
      if (yield* holds(middle)) below = middle
      else above = middle
    }
    return below
  }
  return mostH
}
