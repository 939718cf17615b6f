/** The contact table on paper: a row is never cut, its headings stand on every page, and a verdict is a mark and a word. */
import { contactList } from '../../calc/connector/sheet/contact-list.ts'
import { NONE, type SheetRow } from '../../calc/connector/sheet/rows.ts'
import { Icon } from '../parts/icon.tsx'

const HEADINGS = [
  ['contact', 'Contact'],
  ['function', 'Function'],
  ['kind', 'Kind'],
  ['needs', 'Needs'],
  ['topology', 'Topology'],
  ['value', 'Value'],
  ['suppressor', 'Suppressor'],
  ['place', 'Placement'],
  ['verdict', 'Verdict'],
] as const

export function ContactTable({ rows }: { readonly rows: readonly SheetRow[] }) {
  return (
    <table class="contacts">
      <colgroup>
        {HEADINGS.map(([key]) => (
          <col key={key} class={`of-${key}`} />
        ))}
      </colgroup>
      <thead>
        <tr>
          {HEADINGS.map(([key, heading]) => (
            <th key={key} scope="col">
              {heading}
            </th>
          ))}
        </tr>
      </thead>
      {rows.map((row) => (
        <ContactRows key={row.id} row={row} />
      ))}
    </table>
  )
}

/** The contact, and under it what is to be remarked; the two stay together. */
function ContactRows({ row }: { readonly row: SheetRow }) {
  const remarks = [row.why, row.remark].filter((text) => text !== '' && text !== NONE)
  return (
    <tbody>
      <tr>
        <th scope="row">{row.id}</th>
        <td>{row.function}</td>
        <td>{row.kind}</td>
        <td>{row.needs}</td>
        <td>{row.topology}</td>
        <td>
          {row.value === NONE ? NONE : <strong>{row.value}</strong>}
          {row.build !== NONE && ` ${row.build};`}
          {row.spread !== NONE && ` ${row.spread}`}
        </td>
        <td>{row.suppressor}</td>
        <td>{row.place}</td>
        <td class="verdict-cell">
          {row.verdict !== undefined && <Icon name={row.verdict} />} {row.word}
        </td>
      </tr>
      {remarks.length > 0 && (
        <tr class="remarks">
          <td />
          <td colspan={HEADINGS.length - 1}>{remarks.join(' Remark: ')}</td>
        </tr>
      )}
    </tbody>
  )
}

type OnGiven = { readonly contacts: readonly string[]; readonly rows: readonly SheetRow[] }

/** "contact 4" or "contacts 4 to 7", in the order of the connector. */
export const onContacts = ({ contacts, rows }: OnGiven): string =>
  `contact${contacts.length === 1 ? '' : 's'} ${contactList(
    contacts,
    rows.map(({ id }) => id),
  )}`
