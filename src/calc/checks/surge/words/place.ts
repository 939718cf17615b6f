/** Where in its box of tolerances a surge is worst, in words. */
import type { AxisKey } from '../../../surge/box.ts'
import type { WorstAt } from '../../../surge/worst.ts'
import { show } from './show.ts'

const SAID: readonly (readonly [AxisKey, (value: number) => string])[] = [
  ['capacitanceF', (v) => show(v, 'capacitance')],
  ['capacitance2F', (v) => `${show(v, 'capacitance')} at the load`],
  ['inductanceH', (v) => show(v, 'inductance')],
  ['inductance2H', (v) => `${show(v, 'inductance')} at the load`],
  ['suppressorF', (v) => `${show(v, 'capacitance')} of the suppressor`],
  ['lineH', (v) => `${show(v, 'inductance')} of cable`],
  ['ringHz', (v) => `a ring of ${show(v, 'frequency')}`],
]

/** "at 26.7 nF, 1 µH and a ring of 974 kHz (inside the box)". */
export function placeWords({ place, isCorner }: WorstAt): string {
  const parts = SAID.flatMap(([key, say]) => {
    const value = place[key]
    return value === undefined ? [] : [say(value)]
  })
  const last = parts.at(-1)
  if (last === undefined) return ''
  const list = parts.length === 1 ? last : `${parts.slice(0, -1).join(', ')} and ${last}`
  return `${list}${isCorner ? '' : ', inside the box of tolerances'}`
}
