/** A filter of the model as network parameters: what is fitted to a measurement, and what is exported. */
import { chainMatrixAt } from '../network/chain.ts'
import type { FilterCircuit } from '../network/circuit.ts'
import { type Chain, entriesOf } from './two-port.ts'
import type { Network } from './types.ts'

/** Every part of the model passes alike in both directions. */
const RECIPROCAL = [1, 0] as const
const NOTHING = [0, 0] as const

export function chainOf(circuit: FilterCircuit, hz: number): Chain {
  const [a = NOTHING, b = NOTHING, c = NOTHING, d = NOTHING, q = NOTHING] = chainMatrixAt(circuit, hz)
  return { a, b, c, d, q, det: RECIPROCAL }
}

/** S-parameters of a filter, port 1 the source side, both ports at `ohm`. */
export function networkOf(circuit: FilterCircuit, hz: Float64Array, ohm: number): Network {
  const re = new Float64Array(4 * hz.length)
  const im = new Float64Array(4 * hz.length)
  for (let k = 0; k < hz.length; k++)
    entriesOf(chainOf(circuit, hz[k] as number), 'S', [ohm, ohm]).forEach(([x, y], i) => {
      re[4 * k + i] = x
      im[4 * k + i] = y
    })
  return { parameter: 'S', portCount: 2, hz, re, im, referenceOhm: [ohm, ohm] }
}
