/** The Navy line-to-ground rule in words. */
import type { NavyLimit } from '../power/navy-rule.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Source } from '../types.ts'

export const NAVY_SOURCE: Source = { id: 'S30', clause: '4.2.2', standing: 'read' }

type Supply = { readonly supplyHz: number; readonly loadW?: number | undefined }

const RULE = 'MIL-STD-461 4.2.2 (Navy only)'

/** The limit with its numbers, or what must be entered before there is one. */
export function navyWhy(limit: NavyLimit, { supplyHz, loadW = 0 }: Supply): string {
  const hertz = formatQuantity(supplyHz, 'frequency', 3)
  if (limit.limitF === undefined)
    return limit.lacks === 'load'
      ? 'Enter the connected load: on DC the Navy rule is 75 nF per kW, at most 30 nF below 500 W.'
      : `The Navy rule prints figures for DC, 60 Hz and 400 Hz only; none is for ${hertz}.`
  const load = formatQuantity(loadW, 'power', 3)
  if (limit.form === 'small-load') return `${RULE}: at most 30 nF from each line to ground below 500 W (load ${load})`
  if (limit.form !== 'by-frequency') return `${RULE}: 75 nF per kW from each line to ground, load ${load}`
  const printed = formatQuantity(limit.printedHz, 'frequency', 3)
  const taken = supplyHz === limit.printedHz ? '' : `, taken here for ${hertz}`
  return `${RULE}: ${formatQuantity(limit.limitF, 'capacitance', 2)} from each line to ground at ${printed}${taken}`
}
