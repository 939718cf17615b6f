/** How each figure and circuit named in the golden file of pairs is calculated by the program. */
import { bandLossDb } from '../../src/calc/loading/band.ts'
import {
  conversionRatio,
  pairCommonF,
  pairDifferentialF,
  ratioDb,
  worstConversionHz,
  worstConversionRatio,
} from '../../src/calc/pair.ts'
import type { Figure, Numbers } from './golden-rows.ts'

const circuit = (n: Numbers) => ({ legF: n('legF'), leg2F: n('leg2F'), legOhm: n('legOhm') })

export const PAIR_FIGURES: Readonly<Record<string, Figure>> = {
  conversion: (n) => ratioDb(conversionRatio(circuit(n), n('hz'))),
  worst: (n) => ratioDb(worstConversionRatio(circuit(n))),
  worstHz: (n) => worstConversionHz(circuit(n)) ?? Number.NaN,
  // Small-signal form: taken a million times lower in frequency, where R·C no longer matters.
  lowRatio: (n) => 1e6 * conversionRatio({ legF: n('differenceF'), leg2F: 0, legOhm: n('legOhm') }, n('hz') / 1e6),
}

/** What each ngspice circuit is in closed form; the parts are those of its netlist. */
export const PAIR_CIRCUITS: Readonly<Record<string, (hz: number) => number>> = {
  M15: (hz) => ratioDb(conversionRatio({ legF: 1.2e-9, leg2F: 0.8e-9, legOhm: 50 }, hz)),
  M16: (hz) => bandLossDb({ ohm: 25, farads: pairDifferentialF({ legF: 1e-9, leg2F: 1e-9 }), hz }),
  M17: (hz) => bandLossDb({ ohm: 25, farads: pairCommonF({ legF: 1e-9, leg2F: 1e-9 }), hz }),
}

/** Half a unit of the last digit the netlist run printed. */
export const PRINTED_DB = 6e-7
