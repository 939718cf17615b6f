/** How well the limit of a trace is known, said beside the answer: its points, its bandwidths, its detectors. */
import {
  DETECTOR_ORDER_SOURCE,
  type MethodLine,
  methodLineById,
  UNCONFIRMED_LINES,
} from '../../../reference/method-lines.ts'
import { STANDING_WORDS } from '../../../reference/standing.ts'
import type { Finding, Source } from '../../types.ts'
import { OWN_LIMIT, type TraceGiven } from './inputs.ts'

export function standingFindings(given: TraceGiven): readonly Finding[] {
  const published = methodLineById(given.limit ?? '')
  if (published !== undefined) return [{ verdict: 'marginal', sentence: publishedWords(published) }]
  if (given.limit !== OWN_LIMIT && given.limit !== undefined) return []
  return UNCONFIRMED_LINES.map(({ name, known, source }): Finding => {
    const where = source === undefined ? '' : ' That is from a secondary source, not from the document.'
    return {
      verdict: 'unknown',
      sentence: `${name}: its points are not confirmed, so it is not in the list. Enter its corners from the document. ${known}${where}`,
    }
  })
}

function publishedWords({ name, source, bandwidthSource, side }: MethodLine): string {
  const points = `The points of ${name} are ${STANDING_WORDS[source.standing]}`
  const how =
    side === 'emission' && bandwidthSource !== undefined
      ? `, the bandwidths of its method and the order of detectors ${STANDING_WORDS[bandwidthSource.standing]}`
      : ''
  return `${points}${how}: the line of your test plan counts.`
}

/** The sources behind limit, bandwidths and the order of detectors. */
export function limitSources(given: TraceGiven): readonly Source[] {
  const published = methodLineById(given.limit ?? '')
  if (published === undefined) return []
  return [
    published.source,
    ...(published.bandwidthSource ? [published.bandwidthSource] : []),
    ...(published.side === 'emission' ? [DETECTOR_ORDER_SOURCE] : []),
  ]
}
