/** What the contact table of a sheet rests on, in words: parts, checks, assumptions, trials and open questions. */

import type { SheetBody } from '../../calc/connector/sheet/body.ts'
import type { SheetAssumption } from '../../calc/connector/sheet/grounds.ts'
import { trialSteps } from '../../calc/explain/trial.ts'
import { isUsual } from '../../calc/line/fields.ts'
import type { Trial } from '../../calc/types.ts'
import { VERDICT_RANK } from '../../calc/verdict.ts'
import { Icon } from '../parts/icon.tsx'
import { onContacts } from './connector-table.tsx'
import { Part } from './frame.tsx'
import { assumedReason, inputText } from './sheet-inputs.tsx'

type Given = { readonly body: SheetBody }

/** How many different parts there are to build, and where each goes. */
export function Parts({ body: { parts, rows } }: Given) {
  if (parts.length === 0) return null
  return (
    <Part title={`Parts to build (${parts.length})`} columns={2}>
      {parts.map(({ words, contacts }) => (
        <p key={words} class="row">
          <strong>{words}:</strong> {contacts.length} ×, {onContacts({ contacts, rows })}
        </p>
      ))}
    </Part>
  )
}

/** What the contacts do together, worst first. */
export function Findings({ body: { findings, rows } }: Given) {
  if (findings.length === 0) return null
  const rank = (verdict: keyof typeof VERDICT_RANK | undefined) => (verdict === undefined ? -1 : VERDICT_RANK[verdict])
  const sorted = [...findings].sort((a, b) => rank(b.verdict) - rank(a.verdict))
  return (
    <Part title="The connector as a whole">
      <ul class="findings">
        {sorted.map(({ id, verdict, sentence, contacts }) => (
          <li key={`${id} ${sentence}`} class="finding row">
            {verdict && <Icon name={verdict} />}
            <span>
              {sentence}
              {contacts.length > 0 && contacts.length < rows.length && ` (${onContacts({ contacts, rows })})`}
            </span>
          </li>
        ))}
      </ul>
    </Part>
  )
}

/** What was assumed for the worst case, and what nobody entered: with the contacts it is about where not all of them. */
export function Grounds({ body }: Given) {
  const { assumed, granted, absent, windows } = body.grounds
  const all = new Set(windows.flatMap(({ contacts }) => contacts)).size
  const about = (contacts: readonly string[]): string =>
    contacts.length === all ? '' : `, ${onContacts({ contacts, rows: body.rows })}`
  return (
    <>
      {assumed.length > 0 && (
        <Part title="Worst case: what was assumed">
          {ASSUMED.map(([words, belongs]) => (
            <AssumedLine key={words} words={words} assumed={assumed.filter(belongs)} about={about} />
          ))}
        </Part>
      )}
      {granted.length > 0 && (
        <Part title="Taken for granted">
          <p>{granted.join('; ')}.</p>
        </Part>
      )}
      {absent.length > 0 && (
        <Part title="Not entered, not judged">
          <p>{absent.map(({ label, contacts }) => `${label}${about(contacts)}`).join('; ')}.</p>
        </Part>
      )}
    </>
  )
}

const ASSUMED: readonly (readonly [string, (one: SheetAssumption) => boolean])[] = [
  ['Assumed in your favour', ({ field }) => field.assumed?.favourable === true],
  ['Assumed', ({ field }) => field.assumed?.favourable === false],
  ['Usual values', ({ field }) => field.assumed === undefined && isUsual(field)],
]

function AssumedLine(given: {
  readonly words: string
  readonly assumed: readonly SheetAssumption[]
  readonly about: (contacts: readonly string[]) => string
}) {
  const { words, assumed, about } = given
  if (assumed.length === 0) return null
  return (
    <>
      <h3>{words}</h3>
      <div class="columns-2">
        {assumed.map(({ field, contacts }) => (
          <p key={`${field.key} ${inputText(field)}`} class="row">
            {field.input.label} <strong>{inputText(field)}</strong>
            {assumedReason(field)}
            {about(contacts)}
          </p>
        ))}
      </div>
    </>
  )
}

/** Every trial that was made on a line of this connector. */
export function Trials({ body: { trials, rows } }: Given) {
  if (trials.length === 0) return null
  return (
    <Part title="Trials" columns={2}>
      {trials.map(({ contacts, trial }) => (
        <p key={trial.id} class="row">
          {onContacts({ contacts, rows })}: {trialWords(trial)}
        </p>
      ))}
    </Part>
  )
}

const trialWords = (trial: Trial): string =>
  `${trialSteps(trial).join('; ')}. ${trial.removed === '' ? 'Removal not recorded' : `Removed: ${trial.removed}`}.`

/** What only the maker of the connector can say. */
export function Questions({ body: { questions, rows } }: Given) {
  if (questions.length === 0) return null
  return (
    <Part title="Open questions for the maker">
      <ol class="numbered">
        {questions.map(({ sentence, contacts }) => (
          <li key={sentence}>
            {sentence}
            {contacts.length > 0 && contacts.length < rows.length && ` (${onContacts({ contacts, rows })})`}
          </li>
        ))}
      </ol>
    </Part>
  )
}
