import { useEffect, useMemo } from 'preact/hooks'
import { CHECKS } from '../../calc/registry.ts'
import type { Check, Line } from '../../calc/types.ts'
import { createCheck } from '../../state/check.ts'
import type { SavedCheck } from '../../state/complaints.ts'
import { type Desk, keptDesk } from '../../state/desk.ts'
import { expressionReading } from '../../state/expression.ts'
import { Icon } from '../parts/icon.tsx'
import { LineWindow } from '../parts/line-window.tsx'
import { originWords } from '../parts/origin.ts'
import { AnswerSentence } from '../parts/verdict.tsx'
import { factMeaning, factWords, knownFacts } from './known-facts.ts'

type Given = {
  readonly complaintId: string
  readonly line: Line
  /** how the line is called on this screen; empty where there is only one without a name */
  readonly title: string
  readonly checks: readonly SavedCheck[]
  /** what the window is of, where that is not the line as it stands in the complaint */
  readonly windowTitle?: string
}

/** One line of a complaint: its window, the checks opened on it, and its facts with where they come from. */
export function KeptLine({ complaintId, line, title, checks, windowTitle }: Given) {
  const desk = useMemo(() => keptDesk(complaintId, line.id), [complaintId, line.id])
  // Typing in a note changes no line: what a line shows is not even compared then.
  return useMemo(
    () => (
      <>
        <LineWindow desk={desk} title={windowTitle ?? (title ? `Window: ${title}` : 'Window')} />
        <LineChecks desk={desk} title={title} checks={checks.filter(({ lineId }) => lineId === line.id)} />
        <Facts line={line} title={title} />
      </>
    ),
    [desk, line, title, checks, windowTitle],
  )
}

type ChecksGiven = { readonly desk: Desk; readonly title: string; readonly checks: readonly SavedCheck[] }

/** The checks opened on this line, and every other check there is. */
function LineChecks({ desk, title, checks }: ChecksGiven) {
  const isOpened = (check: Check) => checks.some((saved) => saved.check === check.id)
  const opened = CHECKS.filter(isOpened)
  const others = CHECKS.filter((check) => !isOpened(check))
  return (
    <section aria-label={`Checks ${title}`.trim()}>
      <h2>Checks {title && `of ${title}`}</h2>
      {opened.length > 0 && <CheckRows desk={desk} checks={opened} answered />}
      {others.length > 0 && (
        <details class="fold">
          <summary>Open {opened.length > 0 ? 'another' : 'a'} check on this line</summary>
          <CheckRows desk={desk} checks={others} />
        </details>
      )}
    </section>
  )
}

/** `answered`: each says what it answers on this line, in the sentence that stands at its head. */
function CheckRows(given: { readonly desk: Desk; readonly checks: readonly Check[]; readonly answered?: boolean }) {
  const { desk, checks, answered = false } = given
  return (
    <ul class="rows">
      {checks.map((check) => (
        <li key={check.id}>
          <a href={desk.addressOf(check.id)}>
            <span>
              <strong>{check.title}</strong>
              <span class="row-note">{answered ? <KeptAnswer check={check} desk={desk} /> : check.question}</span>
            </span>
            <Icon name="go" />
          </a>
        </li>
      ))}
    </ul>
  )
}

function KeptAnswer({ check, desk }: { readonly check: Check; readonly desk: Desk }) {
  const model = useMemo(() => createCheck(check, desk, expressionReading), [check, desk])
  useEffect(() => model.dispose, [model])
  const answer = model.answer.value
  if (answer.is !== 'done') return check.question
  const { result } = answer
  return result.ok ? <AnswerSentence result={result} /> : (result.issues[0]?.message ?? '')
}

/** Every fact that is known of the line: typed, answered, or taken over from its kind or a check. */
function Facts({ line, title }: { readonly line: Line; readonly title: string }) {
  const known = knownFacts(line)
  return (
    <section aria-label={`Facts ${title}`.trim()}>
      <h2>Facts {title && `of ${title}`}</h2>
      {known.length === 0 && <p class="muted">None yet.</p>}
      <dl class="facts">
        {known.map(({ key, fact }) => (
          <div key={key}>
            <dt>{factMeaning(key)}</dt>
            <dd>
              {factWords(key, fact)} <span class="standing">{originWords(fact.origin)}</span>
              {fact.conflicts.map((other) => (
                <span key={`${other.origin.by}${other.text}`} class="row-note">
                  against it: {factWords(key, other)}, {originWords(other.origin)}
                </span>
              ))}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  )
}
