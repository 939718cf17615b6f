/** What a rule book and the supply itself say of a capacitor from a power line to chassis. */
import { navyLimit, SMALL_LOAD_W } from '../../../calc/power/navy-rule.ts'
import { lineCurrentRmsA } from '../../../calc/power/supply.ts'
import { formatQuantity } from '../../../calc/quantity/format.ts'
import { DERIVED } from '../../../reference/line-kinds/cite.ts'
import type { LineKind } from '../../../reference/line-kinds.ts'
import type { BookRow } from '../types.ts'

const farads = (si: number): string => formatQuantity(si, 'capacitance')

/** Below, and twice, the load up to which the rule has one figure. */
const LOADS_W = [SMALL_LOAD_W / 2, 2 * SMALL_LOAD_W] as const

/** The line-to-ground rule of MIL-STD-461 4.2.2, where the supply is one it speaks of. */
export function navyRows({ supply }: LineKind): readonly BookRow[] {
  if (supply === undefined) return []
  const limits = LOADS_W.flatMap((loadW) => navyLimit({ supplyHz: supply.nominalHz, loadW }).limitF ?? [])
  const [small, large] = limits
  if (small === undefined || large === undefined) return []
  const figure =
    small === large
      ? `${farads(small)} from a line to ground`
      : `${farads(small)} from a line to ground for a small load, ${farads(large)} for one of ${formatQuantity(LOADS_W[1], 'power')}`
  return [
    {
      label: 'By document',
      text: `The Navy rule of MIL-STD-461 may apply. At most ${figure}.`,
      source: { id: 'S30', clause: '4.2.2', standing: 'read' },
    },
  ]
}

/** Current that the largest step of the ladder sends to chassis all the time, at the worst volts and hertz of the supply. */
export function chassisRows({ supply, trial }: LineKind): readonly BookRow[] {
  if (supply === undefined || supply.nominalHz === 0 || trial === undefined) return []
  const { worstRmsV: workingRmsV, worstHz: supplyHz } = supply
  const currentA = lineCurrentRmsA({ supplyHz, workingRmsV, farads: trial.highF })
  return [
    {
      label: 'To chassis',
      text: `${farads(trial.highF)} carries ${formatQuantity(currentA, 'current')} all the time, at ${formatQuantity(workingRmsV, 'voltage')} and ${formatQuantity(supplyHz, 'frequency')}.`,
      source: DERIVED,
    },
  ]
}
