/** A circuit of the ngspice golden file as the solver takes it, ends included. */
import type { Terminations } from '../../src/calc/network/chain.ts'
import {
  type FilterCircuit,
  NO_SERIES,
  NO_SHUNT,
  type SeriesPart,
  type ShuntPart,
} from '../../src/calc/network/circuit.ts'
import type { Topology } from '../../src/calc/types.ts'
import type golden from '../golden/ngspice-filters.json'
import { type Complex, inverse, parallel, series } from './complex.ts'

export type Row = (typeof golden.circuits)[number]

/** Worst difference today is 5e-7 dB: the last digit the golden file prints. */
export const TOLERANCE_DB = 6e-7

function capacitor(e: Row['elements'][number]): ShuntPart {
  return { capacitanceF: e.C ?? 0, esrOhm: e.ESR ?? 0, eslH: e.ESL ?? 0 }
}
function inductor(e: Row['elements'][number]): SeriesPart {
  return {
    inductanceH: e.L ?? 0,
    dcrOhm: e.Rdc ?? 0,
    parallelOhm: e.Rpar ?? Number.POSITIVE_INFINITY,
    parallelF: e.Cpar ?? 0,
  }
}

export function circuitOf(row: Row): FilterCircuit {
  const caps = row.elements.filter((e) => e.kind === 'C').map(capacitor)
  const coils = row.elements.filter((e) => e.kind === 'L').map(inductor)
  return {
    topology: row.topology as Topology,
    shunt1: caps[0] ?? NO_SHUNT,
    shunt2: caps[1] ?? NO_SHUNT,
    series1: coils[0] ?? NO_SERIES,
    series2: coils[1] ?? NO_SERIES,
    bondOhm: row.bond?.r_ohm ?? 0,
    bondH: row.bond?.l_h ?? 0,
  }
}

const R = (ohm: number): Complex => ({ re: ohm, im: 0 })
const L = (h: number, w: number): Complex => ({ re: 0, im: w * h })
const C = (f: number, w: number): Complex => ({ re: 0, im: -1 / (w * f) })

/** The two circuits with reactive ends, as their netlists wire them. */
const REACTIVE: Record<string, { source: (w: number) => Complex; load: (w: number) => Complex }> = {
  F12: {
    source: (w) => series(R(2), L(1e-7, w)),
    load: (w) => {
      const supply = parallel(R(0.001), series(R(5), C(8e-6, w)))
      return parallel(series(C(2.5e-7, w), parallel(R(50), R(1000))), series(L(5e-5, w), supply))
    },
  },
  X13: { source: (w) => series(R(0.5), L(5e-6, w)), load: () => R(100) },
}

export function endsOf(row: Row, hz: Float64Array): Terminations {
  const ends = {
    sourceReOhm: new Float64Array(hz.length),
    sourceImOhm: new Float64Array(hz.length),
    loadReSie: new Float64Array(hz.length),
    loadImSie: new Float64Array(hz.length),
  }
  hz.forEach((f, i) => {
    const w = 2 * Math.PI * f
    const wired = REACTIVE[row.id]
    const source = wired ? wired.source(w) : R(Number(row.source_ohm))
    const load = inverse(wired ? wired.load(w) : R(Number(row.load_ohm)))
    ends.sourceReOhm[i] = source.re
    ends.sourceImOhm[i] = source.im
    ends.loadReSie[i] = load.re
    ends.loadImSie[i] = load.im
  })
  return ends
}
