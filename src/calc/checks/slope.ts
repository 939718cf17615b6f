/** Final slope of an ideal filter. */
import { ELEMENT_COUNT } from '../network/circuit.ts'
import type { Topology } from '../types.ts'

const PER_ELEMENT_DB = 20

/** 20 dB/decade for each reactive element. Source: application note on insertion loss, S1 (read in part). */
export function asymptoteDbPerDecade(topology: Topology): number {
  return PER_ELEMENT_DB * ELEMENT_COUNT[topology]
}
