import { useState } from 'preact/hooks'
import type { Bond, BondRow } from '../../../calc/connector/whole/bond.ts'
import { bondVerdict } from '../../../calc/connector/whole/bond-findings.ts'
import { formatEstimate } from '../../../calc/quantity/format.ts'
import { VERDICT_RANK } from '../../../calc/verdict.ts'
import { hashOfContact } from '../../../state/connector-address.ts'
import { VerdictMark } from '../../parts/verdict.tsx'

type Given = { readonly bond: Bond; readonly complaintId: string; readonly connectorId: string }

const SHOWN = 12

const decibels = (si: number, side: 'most' | 'least') => formatEstimate(si, 'decibel', side)
const marginOf = ({ certainDb, neededDb }: BondRow) => certainDb - neededDb

/** Every contact in the shared bond, the one with the least left over first. */
export function WholeBond({ bond, complaintId, connectorId }: Given) {
  const [isAll, setAll] = useState(false)
  const rows = bond.rows
    .filter(({ isBare }) => !isBare)
    .sort((a, b) => VERDICT_RANK[bondVerdict(b)] - VERDICT_RANK[bondVerdict(a)] || marginOf(a) - marginOf(b))
  if (rows.length === 0) return null
  const shown = isAll ? rows : rows.slice(0, SHOWN)
  return (
    <details class="fold">
      <summary>Each contact in the shared bond</summary>
      <ul class="rows bond-rows">
        {shown.map((row) => (
          <li key={`${row.id} ${row.hz}`}>
            <a href={hashOfContact(complaintId, connectorId, row.id)}>
              <span>
                <strong>{row.id}</strong> at {formatEstimate(row.hz, 'frequency')}
              </span>
              <VerdictMark verdict={bondVerdict(row)} />
              <span class="muted bond-figures">
                alone {decibels(row.aloneDb, 'most')}, with all {decibels(row.certainDb, 'most')}, needs{' '}
                {decibels(row.neededDb, 'least')}; quiet it receives {decibels(row.receivedDb, 'least')}
              </span>
            </a>
          </li>
        ))}
      </ul>
      {rows.length > shown.length && (
        <button type="button" class="button" onClick={() => setAll(true)}>
          Show all {rows.length}
        </button>
      )}
    </details>
  )
}
