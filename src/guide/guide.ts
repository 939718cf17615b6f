/** The question tree as shipped: chapters in the order they are asked, then every outcome. */
import { COMPLAINT_CHAPTER } from './chapters/complaint.ts'
import { FILTER_OUTCOMES } from './chapters/filters.ts'
import { LINE_CHAPTER } from './chapters/line.ts'
import { NO_FILTER_OUTCOMES } from './chapters/no-filter.ts'
import { PATH_CHAPTER } from './chapters/path.ts'
import { SAFETY_CHAPTER } from './chapters/safety.ts'
import { SOURCE_CHAPTER } from './chapters/source.ts'
import { SURGE_AND_MEASURE_OUTCOMES } from './chapters/surge-and-measure.ts'
import { START_NODE } from './start.ts'
import type { Guide } from './types.ts'

/** The bundled guide: seeded into storage, and the fallback when the stored one is missing or damaged. */
export const GUIDE: Guide = {
  version: 1,
  edition: 'first edition',
  start: START_NODE,
  nodes: [
    ...SAFETY_CHAPTER,
    ...COMPLAINT_CHAPTER,
    ...SOURCE_CHAPTER,
    ...PATH_CHAPTER,
    ...LINE_CHAPTER,
    ...FILTER_OUTCOMES,
    ...NO_FILTER_OUTCOMES,
    ...SURGE_AND_MEASURE_OUTCOMES,
  ],
}
