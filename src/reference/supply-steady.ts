/** What a supply may sink to in normal work, all the time. Its usual and highest volts stand in its line kind. */
import { memory } from './line-kinds/cite.ts'

export const STEADY_28_VDC = {
  leastV: 22,
  basis: memory('mil-std-704', 'normal steady state'),
} as const
