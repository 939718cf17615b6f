import { saidOf } from '../../state/recent-words.ts'
import { recents } from '../../state/recents.ts'
import { RowLink } from '../parts/row-link.tsx'
import { dayAndTime } from './moment.ts'

/** The checks done last on this device; each opens as its address would, on a line of its own. */
export function CheckedLately() {
  const rows = (recents.value ?? []).flatMap((recent) => {
    const said = saidOf(recent)
    return said === undefined ? [] : [{ ...recent, ...said }]
  })
  if (rows.length === 0) return null
  return (
    <section aria-label="Checked lately">
      <h2>Checked lately, on this device</h2>
      <ul class="rows">
        {rows.map(({ check, words, address, at, lineId }) => (
          <li key={`${lineId} ${check.id}`}>
            <RowLink href={address} title={check.title}>
              {words === '' ? 'nothing entered' : words} · {dayAndTime(at)}
            </RowLink>
          </li>
        ))}
      </ul>
    </section>
  )
}
