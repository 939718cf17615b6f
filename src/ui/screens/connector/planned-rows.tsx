import type { Change } from '../../../calc/connector/paste-changes.ts'
import type { PlannedRow } from '../../../calc/connector/paste-plan.ts'

/** Sign, word and weight: none of them alone. */
const STATES: Readonly<Record<PlannedRow['state'], readonly [sign: string, word: string]>> = {
  new: ['+', 'new'],
  changed: ['≠', 'changed'],
  same: ['=', 'the same'],
}

/** The rows of a table with all that each changes. */
export function PlannedRows({ rows }: { readonly rows: readonly PlannedRow[] }) {
  return (
    <ul class="rows planned-rows" aria-label="Rows of the table">
      {rows.map((row) => (
        <Row key={row.id} row={row} />
      ))}
    </ul>
  )
}

function Row({ row: { id, state, changes, pair } }: { readonly row: PlannedRow }) {
  const [sign, word] = STATES[state]
  return (
    <li class={`planned ${state}`} data-state={state}>
      <p>
        <strong>{id}</strong>{' '}
        <span class="planned-state">
          <span aria-hidden="true">{sign}</span> {word}
          {pair && `, leg ${pair.leg} of a pair with ${pair.mate}`}
        </span>
      </p>
      <dl>
        {changes
          .filter(({ what }) => what !== 'Leg')
          .map((change) => (
            <Changed key={change.what} change={change} />
          ))}
      </dl>
    </li>
  )
}

function Changed({ change: { what, before, after } }: { readonly change: Change }) {
  return (
    <div>
      <dt>{what}</dt>
      <dd>
        {before !== '' && (
          <>
            <del>{before}</del> <span aria-hidden="true">→</span>{' '}
          </>
        )}
        {after}
      </dd>
    </div>
  )
}
