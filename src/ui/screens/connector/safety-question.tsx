import { editMany, waitingContacts } from '../../../calc/connector/edit-many.ts'
import { BARRED_LINES } from '../../../guide/chapters/safety.ts'
import { changeConnector } from '../../../state/connectors.ts'
import { newLine } from '../../../store/line.ts'
import type { ViewGiven } from './connector.tsx'

/** The safety question of every line nobody answered it for, asked once for all of them; figures stand without it. */
export function SafetyQuestion({ complaint, connector }: ViewGiven) {
  const ids = waitingContacts(connector, complaint.lines)
  if (ids.length === 0) return null
  const clear = () => {
    const change = { is: 'gate', gate: 'clear' } as const
    const { contacts, lines } = editMany({ connector, lines: complaint.lines, ids, change, newLine })
    changeConnector(complaint.id, connector.id, { contacts }, lines)
  }
  return (
    <section class="notice" aria-label="Safety question">
      <p>
        <strong>Before a part is advised:</strong> is{' '}
        {ids.length === 1 ? `contact ${ids[0]}` : `one of these ${ids.length} contacts`}, read on the wiring diagram,
        one that never gets a part? If so, choose it under “Edit several” and say so there.
      </p>
      <details class="fold">
        <summary>What never gets a part</summary>
        <ul class="plain">
          {BARRED_LINES.map(({ id, label, hint }) => (
            <li key={id}>
              {label}
              {hint !== undefined && <span class="row-note">{hint}</span>}
            </li>
          ))}
        </ul>
      </details>
      <button type="button" class="button" onClick={clear}>
        None of {ids.length === 1 ? 'that' : 'these'}, checked on the diagram
      </button>
    </section>
  )
}
