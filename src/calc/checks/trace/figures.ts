/** The numbers of the trace check: worst excess, what has to come off and where. */

import { bandwidthsAt, methodLineById } from '../../../reference/method-lines.ts'
import { formatQuantity } from '../../quantity/format.ts'
import { type Judged, judge } from '../../trace/judge.ts'
import { isUntried } from '../../trace/mark.ts'
import { gapIn, shortOf } from '../../trace/unread.ts'
import type { Figures, Progress, Refused, Verdict } from '../../types.ts'
import { PRACTICAL_CEILING_DB } from '../need/figures.ts'
import type { TraceGiven } from './inputs.ts'
import { setUpTrace, type TraceSetup, unitOfChoice } from './setup.ts'

export type TraceFigures = Figures & {
  readonly verdict: Verdict
  /** absent = something must still be entered */
  readonly setup?: TraceSetup
  readonly judged?: Judged
  /** nothing is over the limit with its margin, and not all of its span was read */
  readonly isPartial?: true
  /** the points are few of an opened trace, taken under another limit, margin or reading */
  readonly isStale?: true
}

const NOTHING = { bounds: [], rungs: [], values: {} } as const

/** A need that is not known yet is handed on as its frequencies without an attenuation, so that it is not passed over. */
export function* traceFigures(given: TraceGiven): Generator<Progress, TraceFigures | Refused> {
  const found = staled(given, yield* comparedFigures(given))
  const { traceHz, traceDb } = given
  const isOpen = traceHz !== undefined && traceDb !== undefined && given.limit !== undefined && isOfLine(given)
  const isJudged =
    found.lists !== undefined || ('judged' in found && found.judged !== undefined && found.judged.worstAt < 0)
  return isOpen && !isJudged ? { ...found, lists: { traceNeedHz: traceHz } } : found
}

/** The few points of an opened trace stand for all under one limit, margin and reading: under others they are no need. */
function staled(given: TraceGiven, found: TraceFigures | Refused): TraceFigures | Refused {
  if ('ok' in found || !isUntried(given, given.traceSettledFor)) return found
  const { neededDb: _needed, ...values } = found.values
  const { lists: _lists, judged, ...rest } = found
  // none of them over the limit says nothing of the others
  const kept = judged && judged.worstAt >= 0 ? { judged } : {}
  return { ...rest, ...kept, values, verdict: 'unknown', isStale: true }
}

/** A field is a need of a line only after a clamp on its cable made the worst fall. */
function isOfLine({ traceUnit, limit, clamp }: TraceGiven): boolean {
  const units = [unitOfChoice(traceUnit), methodLineById(limit ?? '')?.quantity]
  return clamp === 'dominates' || !units.includes('dBµV/m')
}

function* comparedFigures(given: TraceGiven): Generator<Progress, TraceFigures | Refused> {
  const setup = setUpTrace(given)
  if (setup === 'incomplete') return { ...NOTHING, verdict: 'unknown' }
  if ('issues' in setup) return { ok: false, issues: setup.issues }
  const judged = yield* judge(setup.spectrum, setup.reading)
  const other = otherBandwidth(setup, judged)
  if (other) return other
  const { worstAt, neededAt, neededDb, levelDb, limitDb } = judged
  if (worstAt < 0) return { ...NOTHING, verdict: 'unknown', setup, judged }
  const sign = setup.reading.limit.side === 'emission' ? 1 : -1
  const mostDb = neededAt < 0 ? 0 : (neededDb[neededAt] as number)
  const isKnown = setup.lacks.length === 0
  const rows = [...neededDb.keys()].filter((row) => (neededDb[row] as number) > 0)
  const hz = (row: number) => setup.spectrum.hz[row] as number
  const isPartial = isKnown && mostDb === 0 && !(yield* isRead(given, setup))
  return {
    ...NOTHING,
    verdict: !isKnown ? 'unknown' : mostDb > PRACTICAL_CEILING_DB || isPartial ? 'marginal' : 'ok',
    values: {
      worstExcessDb: sign * ((levelDb[worstAt] as number) - (limitDb[worstAt] as number)),
      worstAtHz: hz(worstAt),
      ...(isKnown ? { neededDb: mostDb } : {}),
    },
    ...(isKnown
      ? { lists: { traceNeedHz: rows.map(hz), traceNeedDb: rows.map((row) => neededDb[row] as number) } }
      : {}),
    setup,
    judged,
    ...(isPartial ? { isPartial } : {}),
  }
}

/** Whether all of the span of the limit was read. Of an opened trace the ends stand among the points, what lies between not. */
function* isRead({ traceRowCount }: TraceGiven, { spectrum, reading }: TraceSetup): Generator<Progress, boolean> {
  if (shortOf(spectrum.hz, reading.limit) !== undefined) return false
  if (traceRowCount !== undefined) return true
  return (yield* gapIn(spectrum.hz, reading.limit, reading.bandwidthHz ?? 0)) === undefined
}

/** A bandwidth that is not the method's, while nobody says how the emission grows with it. */
function otherBandwidth({ spectrum, reading }: TraceSetup, { otherBandwidthAt }: Judged): Refused | undefined {
  if (otherBandwidthAt < 0 || reading.bandwidthHz === undefined) return undefined
  const at = spectrum.hz[otherBandwidthAt] as number
  const wanted = bandwidthsAt(reading.limit, at).map((hz) => formatQuantity(hz, 'frequency'))
  const message = `At ${formatQuantity(at, 'frequency')} the method reads in ${wanted.join(' or ')}, not in ${formatQuantity(reading.bandwidthHz, 'frequency')}. Measure it again in that, or say whether the emission is narrowband, noise or impulsive.`
  return { ok: false, issues: [{ key: 'bandwidthHz', code: 'bandwidth-other', message }] }
}
