/** The guide as shipped: suspects, evidence in list order, then every outcome. */
import { CAUSE_OUTCOMES } from './chapters/causes.ts'
import { FILTER_OUTCOMES } from './chapters/filters.ts'
import { NO_FILTER_OUTCOMES } from './chapters/no-filter.ts'
import { PULSE_OUTCOMES } from './chapters/pulses.ts'
import { STOPS } from './chapters/safety.ts'
import { SURGE_AND_MEASURE_OUTCOMES } from './chapters/surge-and-measure.ts'
import { EVIDENCE } from './evidence/evidence.ts'
import { START_NODE } from './start.ts'
import { SUSPECTS } from './suspects/suspects.ts'
import type { Guide } from './types.ts'

/** The bundled guide: seeded into storage, and the fallback when the stored one is missing or damaged. */
export const GUIDE: Guide = {
  version: 5,
  edition: 'second edition',
  start: START_NODE,
  suspects: SUSPECTS,
  evidence: EVIDENCE,
  outcomes: [
    ...STOPS,
    ...FILTER_OUTCOMES,
    ...NO_FILTER_OUTCOMES,
    ...CAUSE_OUTCOMES,
    ...SURGE_AND_MEASURE_OUTCOMES,
    ...PULSE_OUTCOMES,
  ],
}
