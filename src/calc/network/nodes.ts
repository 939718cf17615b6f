/** Loss of a filter whose two ends carry capacitance to chassis of their own. */
import { chainLossInto, lossDb } from './chain.ts'
import { type FilterCircuit, type NoiseLoad, type NoiseSource, sourceImpedance } from './circuit.ts'

/** Farads at either end; `…InBare` = that capacitance loads the line without the filter as well. */
export type NodeFarads = {
  readonly sourceF: number
  readonly loadF: number
  readonly sourceInBare: boolean
  readonly loadInBare: boolean
}

const oneHz = new Float64Array(1)
const oneDb = new Float64Array(1)
const ends = {
  sourceReOhm: new Float64Array(1),
  sourceImOhm: new Float64Array(1),
  loadReSie: new Float64Array(1),
  loadImSie: new Float64Array(1),
}

/**
 * 20·log10 |V_load without / V_load with| in dB. The source node turns Zs into Zs/(1 + Zs·Ys) and its voltage by the
 * same factor; the load node adds to the load's admittance:
 *   IL = IL(chain between Zs', YL') + 20·log10 |(1 + Zs·Ys)·(1 + Zs'·YL') / (1 + Zs·Y0)|
 * Valid for farads ≥ 0 and frequencies ≥ 0. Source: Thévenin (derived).
 */
export function lossBetween(
  circuit: FilterCircuit,
  source: NoiseSource,
  load: NoiseLoad,
  frequencyHz: number,
  nodes: NodeFarads,
): number {
  if (nodes.sourceF === 0 && nodes.loadF === 0) return lossDb(circuit, source, load, frequencyHz)
  const w = 2 * Math.PI * frequencyHz
  const [zRe, zIm] = sourceImpedance(source, w)
  const [bs, bl] = [w * nodes.sourceF, w * nodes.loadF]
  const inductive = w * load.parallelH
  const gRe = 1 / load.ohm
  const gIm = w * load.parallelF - (inductive > 0 ? 1 / inductive : 0)
  const [nRe, nIm] = [1 - zIm * bs, zRe * bs]
  const n2 = nRe * nRe + nIm * nIm
  oneHz[0] = frequencyHz
  ends.sourceReOhm[0] = (zRe * nRe + zIm * nIm) / n2
  ends.sourceImOhm[0] = (zIm * nRe - zRe * nIm) / n2
  ends.loadReSie[0] = gRe
  ends.loadImSie[0] = gIm + bl
  chainLossInto(circuit, oneHz, ends, oneDb)
  // (1 + Zs·Ys)(1 + Zs'·YL') = 1 + Zs·(Ys + YL')
  const withIm = gIm + bl + bs
  const bareIm = gIm + (nodes.sourceInBare ? bs : 0) + (nodes.loadInBare ? bl : 0)
  const squared = (im: number) => (1 + zRe * gRe - zIm * im) ** 2 + (zRe * im + zIm * gRe) ** 2
  return (oneDb[0] as number) + 10 * Math.log10(squared(withIm) / squared(bareIm))
}
