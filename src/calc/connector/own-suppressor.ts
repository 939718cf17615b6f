/** A suppressor that was entered for a line, against what the line reaches by itself: below that it is no suppressor. */
import { COLD_SOAK_C } from '../../reference/suppressors.ts'
import type { Express } from '../line/fields.ts'
import { resolve } from '../line/resolver.ts'
import { formatEstimate, formatExact } from '../quantity/format.ts'
import { breakdownAt, breakdownOfClass } from '../surge/suppressor.ts'
import type { Line } from '../types.ts'
import { capital, VERDICT_WORDS, worse } from '../verdict.ts'
import type { ContactRow } from './contact-row.ts'
import { reachOf } from './place.ts'

/**
 * The row with a suppressor that conducts on its own line named, and then no yes: cold breakdown (of a class its least)
 * at or below the line's own peak, long surges of its supply included. Source: as for the ladder of the surge check.
 */
export function withOwnSuppressor(row: ContactRow, line: Line | undefined, express?: Express): ContactRow {
  if (line === undefined) return row
  const resolution = resolve(line, express)
  const volts = (key: 'breakdownV' | 'standoffV') => resolution.numbers(resolution.fact(key), 'voltage')[0]
  const standoffV = volts('standoffV')
  const breakdownV = volts('breakdownV') ?? (standoffV === undefined ? undefined : breakdownOfClass(standoffV).leastV)
  const reach = breakdownV === undefined ? undefined : reachOf(line, express)
  if (breakdownV === undefined || reach === undefined) return row
  const coldV = breakdownAt({ breakdownV, tempC: COLD_SOAK_C })
  if (coldV > reach.highV) return row
  const sentence = `Its suppressor breaks down at ${formatEstimate(coldV, 'voltage', 'most')} cold, and the line reaches ${formatExact(reach.highV, 'voltage')} by itself.`
  const verdict = worse(row.verdict ?? 'fails', 'fails')
  return {
    ...row,
    verdict,
    headline: `${capital(VERDICT_WORDS[verdict])}: ${sentence.charAt(0).toLowerCase()}${sentence.slice(1)} By itself: ${row.headline}`,
    findings: [
      ...row.findings,
      { id: `suppressor-${row.contact.id}`, verdict: 'fails', sentence, contacts: [row.contact.id] },
    ],
  }
}
