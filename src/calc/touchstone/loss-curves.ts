/** The loss a measured filter has on the bench and between a line's own ends, over frequency. */
import type { Complex } from '../connector/complex.ts'
import { chainAt, chainLossDb } from './two-port.ts'
import type { Network } from './types.ts'

export type LossCurves = {
  readonly hz: Float64Array
  /** −20·log10|S21| in the reference of the file */
  readonly benchDb: Float64Array
  /** the least over all sources given, into the load; undefined while an end is not known */
  readonly ownDb: Float64Array | undefined
}

/** Deeper than this a network analyser measured its own noise. */
const DEEPEST_DB = 200

export function lossCurves(network: Network, sourceOhm: readonly number[], loadOhm: number | undefined): LossCurves {
  const rows = [...network.hz.keys()].filter((row) => (network.hz[row] as number) > 0)
  const chains = rows.map((row) => chainAt(network, row))
  const [r1 = 50, r2 = 50] = network.referenceOhm
  const loss = (source: Complex, load: Complex) =>
    Float64Array.from(chains, (chain) => Math.min(DEEPEST_DB, chainLossDb(chain, source, load)))
  const all = loadOhm === undefined ? [] : sourceOhm.map((ohm) => loss([ohm, 0], [loadOhm, 0]))
  const [first, ...rest] = all
  return {
    hz: Float64Array.from(rows, (row) => network.hz[row] as number),
    benchDb: loss([r1, 0], [r2, 0]),
    ownDb: first && rest.reduce((least, one) => least.map((db, i) => Math.min(db, one[i] as number)), first),
  }
}
