import { counted } from '../../calc/quantity/counted.ts'
import type { Complaint } from '../../state/complaints.ts'
import type { KeptConnector } from '../../store/connector.ts'
import type { Kept } from '../../store/gate.ts'

const MOST_ROWS = 20
const MOST_CHARACTERS = 200

const shown = ({ at, value }: Kept): string => {
  const text = JSON.stringify(value)
  return `${at === '' ? 'the record' : at}: ${text.length > MOST_CHARACTERS ? `${text.slice(0, MOST_CHARACTERS - 1)}…` : text}`
}

const titled = (kept: readonly Kept[], name: string): readonly string[] => kept.map((one) => `${name}${shown(one)}`)

/** What of a complaint this version did not understand: that it is still there, what it is, and who will read it. */
export function PartsAside({
  complaint,
  connectors,
}: {
  readonly complaint: Complaint
  readonly connectors: readonly KeptConnector[]
}) {
  const all = [
    ...titled(complaint.kept, ''),
    ...complaint.lines.flatMap(({ kept, name }) => titled(kept, `line ${name || 'without a name'}, `)),
    ...connectors.flatMap(({ kept, name }) => titled(kept, `connector ${name || 'without a name'}, `)),
  ]
  return (
    <section class="notice" aria-label="Not understood by this version">
      <p>
        {counted(all.length, 'part')} of this complaint {all.length === 1 ? 'is' : 'are'} not understood by this
        version, so {all.length === 1 ? 'it is' : 'they are'} neither shown nor computed with. Nothing of that is lost:
        it stays as it was written, goes into every file saved here, and comes back in a version that reads it. Reload
        while online to get the newest.
      </p>
      <details class="fold">
        <summary>What was set aside</summary>
        <ul>
          {all.slice(0, MOST_ROWS).map((text) => (
            <li key={text}>
              <code>{text}</code>
            </li>
          ))}
        </ul>
        {all.length > MOST_ROWS && <p class="muted">and {all.length - MOST_ROWS} more</p>}
      </details>
      <div class="actions">
        <button type="button" class="button" onClick={() => location.reload()}>
          Reload
        </button>
      </div>
    </section>
  )
}
