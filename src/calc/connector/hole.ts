/** Contacts without a part beside filtered ones: each is a hole in the wall, and what its signal would stand. */

import { E6 } from '../../reference/preferred-values.ts'
import { NARROW_RATIO } from '../bounds/intersect.ts'
import { valuesInside } from '../bounds/preferred.ts'
import { windowRow } from '../checks/window/row.ts'
import { formatEstimate, formatExact } from '../quantity/format.ts'
import type { Verdict } from '../types.ts'
import type { OpenAnswer } from './contact-line.ts'
import type { Asked, ContactPart, ContactRow } from './contact-row.ts'
import type { ConnectorFinding } from './finding.ts'

/** Larger capacitors than this are not offered to close a hole: what rides on a bare contact is radio frequency. Practice. */
const MOST_OFFERED_F = 100e-9

/** The row with its hole named, where it has no part and others do. */
export const holed = (one: Asked, isAnyFiltered: boolean): ContactRow =>
  isAnyFiltered && one.row.decided.part === undefined ? named(one) : one.row

function named({ row, open }: Asked): ContactRow {
  const { contact, decided, choice } = row
  const hole = (sentence: string, verdict?: Verdict): ContactRow => ({
    ...row,
    findings: [...row.findings, findingOf(contact.id, sentence, verdict)],
  })
  switch (contact.type) {
    case 'ground':
      return row
    case 'spare':
      return {
        ...hole(
          'A bare spare beside filtered contacts is a hole in the wall: tie it to the plate, or leave no wire on it on either side.',
          'marginal',
        ),
        verdict: 'marginal',
      }
    case 'feed-through':
      return hole(
        'Passes as it is, on purpose: whatever rides on it goes through the wall. Its shield or its own filter has to stop it.',
      )
    case 'line':
      break
  }
  if (decided.by === 'barred')
    return hole(
      'Barred, so it stays bare: a hole in the wall that only its shield and its place among the contacts can close.',
    )
  const offer = open === undefined ? undefined : offerOf(open)
  const what = choice?.isBare ? 'Bare by choice' : 'Bare'
  const sentence =
    offer === undefined
      ? `${what} beside filtered contacts: a hole in the wall. What its signal stands is not known, so nothing is offered yet.`
      : `${what} beside filtered contacts: a hole in the wall. Its signal stands ${formatEstimate(offer.mostF, 'capacitance', 'most')}: offered is ${formatExact(offer.part.valueF ?? 0, 'capacitance')} to the plate.`
  return {
    ...hole(sentence, row.verdict === 'fails' || row.verdict === 'unknown' ? undefined : 'marginal'),
    ...(row.verdict === 'ok' ? { verdict: 'marginal' as const } : {}),
    ...(offer === undefined ? {} : { offer: offer.part }),
  }
}

const findingOf = (id: string, sentence: string, verdict: Verdict | undefined): ConnectorFinding => ({
  id: 'hole',
  sentence,
  contacts: [id],
  ...(verdict === undefined ? {} : { verdict }),
})

/** The largest E6 value well below what the signal and its documents stand; undefined where that is not known or nothing fits. */
export function offerOf({
  rows,
  setup,
}: OpenAnswer): { readonly part: ContactPart; readonly mostF: number } | undefined {
  const row = rows.find(({ topology }) => topology === 'C') ?? windowRow('C', setup)
  const ceilingF = Math.min(
    row.most?.markedF ?? Number.POSITIVE_INFINITY,
    row.upper?.markedF ?? Number.POSITIVE_INFINITY,
  )
  if (!Number.isFinite(ceilingF)) return undefined
  const mostF = Math.min(ceilingF, row.permitted?.markedF ?? ceilingF)
  const topF = Math.min(mostF / NARROW_RATIO, MOST_OFFERED_F)
  const [valueF] = topF > 1e-12 ? valuesInside(E6, topF, 1e-12, topF) : []
  return valueF === undefined ? undefined : { part: { topology: 'C', valueF }, mostF }
}
