import type { ConnectorFinding } from '../../../calc/connector/finding.ts'
import type { Verdict } from '../../../calc/types.ts'
import { VERDICT_WORDS, worse } from '../../../calc/verdict.ts'
import { hashOfContact } from '../../../state/connector-address.ts'
import { Icon } from '../../parts/icon.tsx'
import { VerdictMark } from '../../parts/verdict.tsx'
import { Working } from '../../parts/working.tsx'

type Placed = { readonly complaintId: string; readonly connectorId: string }
type Given = Placed & { readonly findings: readonly ConnectorFinding[] }

/** Contacts named as links before the rest is only counted. */
const LINKED = 8

/** The worst of all, and how many findings stand so. */
export function WholeVerdict({ findings }: { readonly findings: readonly ConnectorFinding[] }) {
  const judged = findings.flatMap(({ verdict }) => (verdict === undefined ? [] : [verdict]))
  if (judged.length === 0) return <p class="whole-verdict">Nothing is judged so far.</p>
  const worst = judged.reduce<Verdict>(worse, 'ok')
  const count = judged.filter((one) => one === worst).length
  return (
    <p class="whole-verdict">
      <output class="verdict" data-output="whole-verdict" data-verdict={worst} aria-live="off">
        <VerdictMark verdict={worst} />
      </output>
      {worst === 'ok'
        ? `: all ${judged.length} checks of the whole connector stand.`
        : `: ${count} of ${judged.length} checks of the whole connector ${count === 1 ? 'says' : 'say'} so.`}
    </p>
  )
}

/** Each finding as one sentence with its mark; its workings and its contacts in one tap. */
export function Findings({ findings, ...placed }: Given) {
  return (
    <ul class="findings">
      {findings.map((finding) => (
        <li key={finding.id} class={`finding ${finding.verdict ?? 'told'}`}>
          <Icon name={finding.verdict ?? 'about'} />
          <div class="finding-body">
            <p>
              {finding.verdict !== undefined && <span class="spoken">{VERDICT_WORDS[finding.verdict]}: </span>}
              {finding.sentence}
            </p>
            <More finding={finding} {...placed} />
          </div>
        </li>
      ))}
    </ul>
  )
}

function More({
  finding: { contacts, basis },
  complaintId,
  connectorId,
}: Placed & { readonly finding: ConnectorFinding }) {
  if (basis === undefined && contacts.length === 0) return null
  const linked = contacts.slice(0, LINKED)
  return (
    <details class="fold">
      <summary>{basis === undefined ? 'Contacts' : 'Workings'}</summary>
      {basis !== undefined && <Working basis={basis} />}
      {linked.length > 0 && (
        <ul class="chips" aria-label="Contacts">
          {linked.map((id) => (
            <li key={id}>
              <a class="chip" href={hashOfContact(complaintId, connectorId, id)}>
                {id}
              </a>
            </li>
          ))}
          {contacts.length > linked.length && <li class="muted">and {contacts.length - linked.length} more</li>}
        </ul>
      )}
    </details>
  )
}
