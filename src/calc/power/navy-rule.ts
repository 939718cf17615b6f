/**
 * The line-to-ground capacitance rule of MIL-STD-461 4.2.2 "Filtering (Navy only)", as quoted in a secondary copy:
 * DC of submarines and aircraft 0.075 µF per kW of connected load, at most 0.03 µF below 0.5 kW;
 * 400 Hz 0.02 µF per line, 60 Hz 0.1 µF per line. Off unless the user chooses it. Numbers only.
 */
import type { Bound } from '../types.ts'

/** Most line-to-ground capacitance of one line, or the fact that is missing for it. */
export type NavyLimit =
  | { readonly limitF: number; readonly form: 'by-load' | 'small-load' }
  | { readonly limitF: number; readonly form: 'by-frequency'; readonly printedHz: number }
  | { readonly limitF: undefined; readonly lacks: 'load' | 'printed-frequency' }

const DC_FARADS_PER_WATT = 0.075e-6 / 1e3
/** Below this load the rule gives one figure for all. */
export const SMALL_LOAD_W = 500
const SMALL_LOAD_F = 0.03e-6
const AC_RULES = [
  { fromHz: 45, toHz: 66, limitF: 0.1e-6, printedHz: 60 },
  { fromHz: 360, toHz: 800, limitF: 0.02e-6, printedHz: 400 },
] as const

/** Most line-to-ground capacitance in F of one line. supplyHz ≥ 0 (0 = DC); loadW > 0, asked for on DC only. */
export function navyLimit({ supplyHz, loadW }: { supplyHz: number; loadW?: number | undefined }): NavyLimit {
  if (supplyHz === 0) {
    if (loadW === undefined || loadW <= 0) return { limitF: undefined, lacks: 'load' }
    return loadW < SMALL_LOAD_W
      ? { limitF: SMALL_LOAD_F, form: 'small-load' }
      : { limitF: DC_FARADS_PER_WATT * loadW, form: 'by-load' }
  }
  const rule = AC_RULES.find((row) => supplyHz >= row.fromHz && supplyHz <= row.toHz)
  return rule === undefined
    ? { limitF: undefined, lacks: 'printed-frequency' }
    : { limitF: rule.limitF, form: 'by-frequency', printedHz: rule.printedHz }
}

/** The rule as a bound on each line to ground: who chooses it fails above it, so it stands as what works. */
export const navyBound = (limitF: number): Bound => ({
  id: 'navy-4.2.2',
  by: { is: 'document', document: 'S30' },
  side: 'most',
  nature: 'works',
  farads: limitF,
  per: 'leg',
  topology: 'any',
})
