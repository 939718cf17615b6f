/**
 * The line-to-ground capacitance rule of MIL-STD-461 4.2.2 "Filtering (Navy only)", as quoted in a secondary copy:
 * DC of submarines and aircraft 0.075 µF per kW of connected load, at most 0.03 µF below 0.5 kW;
 * 400 Hz 0.02 µF per line, 60 Hz 0.1 µF per line. Off unless the user chooses it.
 */
import { formatQuantity } from '../quantity/format.ts'
import type { Source } from '../types.ts'

export type NavyLimit = { readonly limitF: number; readonly why: string } | { readonly ask: string }

export const NAVY_SOURCE: Source = { id: 'S30', clause: '4.2.2', standing: 'read' }

const DC_FARADS_PER_WATT = 0.075e-6 / 1e3
const SMALL_LOAD_W = 500
const SMALL_LOAD_F = 0.03e-6
const AC_RULES = [
  { fromHz: 45, toHz: 66, limitF: 0.1e-6, printedHz: 60 },
  { fromHz: 360, toHz: 800, limitF: 0.02e-6, printedHz: 400 },
] as const

/** Most line-to-ground capacitance in F of one line, or what must be asked first. supplyHz ≥ 0 (0 = DC), loadW > 0. */
export function navyLimit({ supplyHz, loadW }: { supplyHz: number; loadW?: number | undefined }): NavyLimit {
  if (supplyHz === 0) return dcLimit(loadW)
  const rule = AC_RULES.find((row) => supplyHz >= row.fromHz && supplyHz <= row.toHz)
  if (rule === undefined)
    return {
      ask: `The Navy rule prints figures for DC, 60 Hz and 400 Hz only; none fits ${formatQuantity(supplyHz, 'frequency', 3)}.`,
    }
  const limit = formatQuantity(rule.limitF, 'capacitance', 2)
  const printed = formatQuantity(rule.printedHz, 'frequency', 3)
  const taken = supplyHz === rule.printedHz ? '' : `, taken here for ${formatQuantity(supplyHz, 'frequency', 3)}`
  return {
    limitF: rule.limitF,
    why: `MIL-STD-461 4.2.2 (Navy only): ${limit} from each line to ground at ${printed}${taken}`,
  }
}

function dcLimit(loadW: number | undefined): NavyLimit {
  if (loadW === undefined || loadW <= 0)
    return { ask: 'Enter the connected load: on DC the Navy rule is 0.075 µF per kW, at most 0.03 µF below 0.5 kW.' }
  const load = formatQuantity(loadW, 'power', 3)
  if (loadW < SMALL_LOAD_W)
    return {
      limitF: SMALL_LOAD_F,
      why: `MIL-STD-461 4.2.2 (Navy only): at most 0.03 µF from each line to ground below 0.5 kW (load ${load})`,
    }
  return {
    limitF: DC_FARADS_PER_WATT * loadW,
    why: `MIL-STD-461 4.2.2 (Navy only): 0.075 µF per kW from each line to ground, load ${load}`,
  }
}
