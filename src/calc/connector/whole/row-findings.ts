/** What contacts say by themselves, among what the whole connector says: no whole is better than its contacts. */
import type { Verdict } from '../../types.ts'
import { capital, VERDICT_WORDS } from '../../verdict.ts'
import type { ContactRow } from '../contact-row.ts'
import type { ConnectorFinding } from '../finding.ts'
import { contactsNamed } from './said.ts'

const NO_YES: readonly Verdict[] = ['fails', 'unknown', 'marginal']

/**
 * One finding for each verdict that is no yes, its first contact in its own words. Barred contacts, and those that carry
 * nothing yet or stay bare, are told apart by what counts them.
 */
export function rowFindings(rows: readonly ContactRow[]): readonly ConnectorFinding[] {
  return NO_YES.flatMap((verdict) => {
    const those = rows.filter((row) => row.verdict === verdict && isJudged(row))
    const [first] = those
    if (first === undefined) return []
    const contacts = those.map(({ contact }) => contact.id)
    const own = contacts.length === 1 ? '' : `Contact ${first.contact.id}: `
    return [
      {
        id: `contacts-${verdict}`,
        verdict,
        sentence: `${capital(contactsNamed(contacts))} by ${contacts.length === 1 ? 'itself' : 'themselves'}: ${VERDICT_WORDS[verdict]}. ${own}${first.headline}`,
        contacts,
      },
    ]
  })
}

/** A part that is no plain yes, or no part because none would do. */
const isJudged = ({ contact, decided, verdict }: ContactRow): boolean =>
  contact.type === 'line' && decided.by !== 'barred' && (decided.part !== undefined || verdict === 'fails')
