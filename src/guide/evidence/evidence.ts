/** Every item of evidence, in list order. */
import type { Evidence } from '../investigation.ts'
import { ABA_EVIDENCE } from './aba.ts'
import { COMPLAINT_EVIDENCE } from './complaint.ts'
import { LINE_EVIDENCE } from './line.ts'
import { PATH_EVIDENCE } from './path.ts'
import { PULSE_EVIDENCE } from './pulses.ts'
import { SAFETY_EVIDENCE } from './safety.ts'
import { SOURCE_EVIDENCE } from './source.ts'
import { SURGE_EVIDENCE } from './surge.ts'
import { VICTIM_EVIDENCE } from './victim.ts'

/** The table; ids are permanent. */
export const EVIDENCE: readonly Evidence[] = [
  ...SAFETY_EVIDENCE,
  ...COMPLAINT_EVIDENCE,
  ...SOURCE_EVIDENCE,
  ...ABA_EVIDENCE,
  ...PATH_EVIDENCE,
  ...VICTIM_EVIDENCE,
  ...LINE_EVIDENCE,
  ...SURGE_EVIDENCE,
  ...PULSE_EVIDENCE,
]
