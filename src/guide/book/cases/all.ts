/** Every documented case, by what it is about. */
import { AUDIO_CASES } from './audio.ts'
import { BOXES_CASES } from './boxes.ts'
import { SWITCHING_CASES } from './switching.ts'
import { TRANSMITTING_CASES } from './transmitting.ts'
import type { CaseRecord } from './types.ts'
import { WEATHER_CASES } from './weather.ts'

export const CASES: readonly CaseRecord[] = [
  ...AUDIO_CASES,
  ...TRANSMITTING_CASES,
  ...WEATHER_CASES,
  ...SWITCHING_CASES,
  ...BOXES_CASES,
]

/** Id of the page of a case. */
export const casePageId = ({ source }: CaseRecord): string => `case-${source.toLowerCase()}`
