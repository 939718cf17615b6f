/** Steady limits of a supply in normal work, least and most. */
import { memory } from './line-kinds/cite.ts'

export const STEADY_28_VDC = {
  nominalV: 28,
  leastV: 22,
  mostV: 29,
  basis: memory('mil-std-704', 'normal steady state'),
} as const
