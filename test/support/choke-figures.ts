/** How each figure named in the golden file of common-mode chokes is calculated by the program. */
import { lossDb } from '../../src/calc/network/chain.ts'
import {
  type Choke,
  type ChokeCurrent,
  chokeConversionRatio,
  chokePart,
  worstChokeConversion,
  worstChokeConversionHz,
} from '../../src/calc/network/choke.ts'
import { type ChokedPair, chokedConversionRatio, worstChokedConversion } from '../../src/calc/network/choked-pair.ts'
import { BENCH_LOAD, NO_SERIES, NO_SHUNT } from '../../src/calc/network/circuit.ts'
import { ratioDb } from '../../src/calc/pair.ts'
import type { Figure, Given, Numbers } from './golden-rows.ts'

const choke = (n: Numbers, given: Given): Choke => ({
  windingH: n('windingH'),
  leakageH: n('leakageH'),
  windingOhm: n('windingOhm'),
  acrossF: n('acrossF'),
  mismatchFrac: given['mismatchFrac'] === undefined ? 0 : n('mismatchFrac'),
})
const ends = (n: Numbers) => ({ sourceOhm: n('sourceOhm'), loadOhm: n('loadOhm') })

/** Loss in dB of the choke alone in one leg, between resistances of that leg. */
export function chokeLossDb(
  one: Choke,
  current: ChokeCurrent,
  { sourceOhm, loadOhm }: ReturnType<typeof ends>,
  hz: number,
): number {
  const series1 = chokePart(one, current)
  const alone = { topology: 'L', shunt1: NO_SHUNT, shunt2: NO_SHUNT, series1, series2: NO_SERIES } as const
  return lossDb({ ...alone, bondOhm: 0, bondH: 0 }, { ohm: sourceOhm, seriesH: 0 }, { ...BENCH_LOAD, ohm: loadOhm }, hz)
}

const pair = (n: Numbers, given: Given): ChokedPair => ({
  legF: n('legF'),
  leg2F: n('leg2F'),
  legOhm: n('legOhm'),
  choke: choke(n, given),
})

export const CHOKE_FIGURES: Readonly<Record<string, Figure>> = {
  common: (n, _, given) => chokeLossDb(choke(n, given), 'common', ends(n), n('hz')),
  differential: (n, _, given) => chokeLossDb(choke(n, given), 'differential', ends(n), n('hz')),
  conversion: (n, _, given) => ratioDb(chokeConversionRatio(choke(n, given), ends(n), n('hz'))),
  worst: (n, _, given) => ratioDb(worstChokeConversion(choke(n, given), ends(n))),
  worstHz: (n, _, given) => worstChokeConversionHz(choke(n, given), ends(n)) ?? Number.NaN,
  pair: (n, _, given) => ratioDb(chokedConversionRatio(pair(n, given), n('hz'))),
  pairWorst: (n, _, given) => ratioDb(worstChokedConversion(pair(n, given)).ratio),
  pairWorstHz: (n, _, given) => worstChokedConversion(pair(n, given)).hz ?? Number.NaN,
}
