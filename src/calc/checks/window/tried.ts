/** What a trial showed, beside what the window computes: bounds of its own, and what lies outside of what was shown. */
import { isCeiling } from '../../bounds/intersect.ts'
import { hasCapacitor } from '../../network/circuit.ts'
import { formatEstimate, formatExact } from '../../quantity/format.ts'
import type { Bound, Finding, StripMark, Topology } from '../../types.ts'
import {
  DEGRADED,
  degradedBound,
  GOOD,
  goodBound,
  NOT_CLEARED,
  notClearedBound,
  READ,
  READ_UP_TO,
} from '../trial/bounds.ts'
import type { WindowGiven } from './inputs.ts'

/** What a trial showed in full: a part of these, counting its tolerances. Farads per leg. */
export type Shown = { readonly leastF: number; readonly mostF: number }

export function shownOf({ trialLeastF, trialMostF }: WindowGiven): Shown | undefined {
  return trialLeastF === undefined || trialMostF === undefined ? undefined : { leastF: trialLeastF, mostF: trialMostF }
}

/**
 * What did not clear, as a least of a capacitor alone; what degraded, as a most. Where nothing else is known of what the
 * signal stands, what did no harm in a trial stands as the ceiling of a capacitor alone.
 */
export function triedBounds(given: WindowGiven, others: readonly Bound[]): readonly Bound[] {
  const { trialBelowF, trialFromF } = given
  const shown = shownOf(given)
  const isKnown = others.some(isCeiling)
  return [
    ...(trialBelowF === undefined ? [] : [notClearedBound(trialBelowF)]),
    ...(trialFromF === undefined ? [] : [degradedBound(trialFromF)]),
    ...(isKnown || shown === undefined ? [] : [goodBound(shown.mostF)]),
  ]
}

export const isOfTrial = (id: string): boolean => [NOT_CLEARED, DEGRADED, GOOD, READ, READ_UP_TO].includes(id)

/** Whether a trial on the line shows this mark of a capacitor alone; true where it has no say. `least` and `most`: shares in service. */
export function isShown(
  shown: Shown | undefined,
  topology: Topology,
  markedF: number,
  share: { readonly least: number; readonly most: number },
): boolean {
  if (shown === undefined || topology !== 'C' || markedF === 0) return true
  return markedF * share.least >= shown.leastF * ROUNDED && markedF * share.most <= shown.mostF / ROUNDED
}
const ROUNDED = 1 - 1e-9

/** In words that fit after "at most …:" and "at least …:". */
export function triedWhy(id: string, bounds: readonly Bound[]): string {
  if (id === READ) return 'what the readings of the trial leave of the line takes it'
  if (id === READ_UP_TO) return 'above it the part is an inductor by its lead, and the readings say nothing of it'
  const farads = bounds.find((bound) => bound.id === id)?.farads ?? 0
  const shown = formatExact(farads, 'capacitance')
  if (id === NOT_CLEARED) return `in a trial ${shown} a leg did not clear it`
  if (id === GOOD) return `in a trial ${shown} a leg did the signal no harm, and nothing larger is known of it`
  return `in a trial ${shown} a leg degraded the signal`
}

/** What the trial shows of the answer, in a sentence; none without a trial. */
export function triedFindings(
  { shown, bounds }: { readonly shown: Shown | undefined; readonly bounds: readonly Bound[] },
  row: { readonly topology: Topology; readonly isShown: boolean; readonly proposedF: number | undefined },
): readonly Finding[] {
  if (!hasCapacitor(row.topology)) return []
  const tried = bounds.filter(({ id }) => isOfTrial(id) && id !== GOOD)
  const said: Finding[] = tried.map(({ id }) => ({
    verdict: 'ok',
    sentence: `Counted beside what is computed: ${triedWhy(id, bounds)}.`,
  }))
  if (shown === undefined) return said
  const range = `${formatEstimate(shown.leastF, 'capacitance', 'least')} to ${formatEstimate(shown.mostF, 'capacitance', 'most')} a leg`
  if (row.topology !== 'C')
    return [
      ...said,
      {
        verdict: 'unknown',
        sentence: `The trial shows ${range} of a capacitor alone; it says nothing of an inductor beside it.`,
      },
    ]
  if (row.proposedF === undefined) return said
  return row.isShown
    ? [...said, { verdict: 'ok', sentence: `Supported by the trial: it shows ${range}.` }]
    : [
        ...said,
        {
          verdict: 'marginal',
          sentence: `Computed, not shown: the trial shows ${range} and this part may be outside of it. Try this value, or one step between.`,
        },
      ]
}

/** What was tried, on the strip: capacitors of the trial itself, as they stood in the line. */
export function triedMarks({
  shown,
  bounds,
}: {
  readonly shown: Shown | undefined
  readonly bounds: readonly Bound[]
}): readonly StripMark[] {
  const at = (id: string) => bounds.find((bound) => bound.id === id)?.farads
  const mark = (kind: StripMark['kind'], atF: number | undefined, label: string): readonly StripMark[] =>
    atF === undefined ? [] : [{ kind, atF, label: `${label} ${formatEstimate(atF, 'capacitance')}` }]
  return [
    ...mark('failed', at(NOT_CLEARED), 'not cleared by'),
    ...mark('cleared', shown?.leastF, 'cleared from'),
    ...mark('harmed', at(DEGRADED), 'degraded from'),
  ]
}
