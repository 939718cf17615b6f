import { useEffect } from 'preact/hooks'
import checks from '../../state/check-titles.ts?built'
import { scratchDesk } from '../../state/desk.ts'
import { startFromNothing } from '../../state/fresh-line.ts'
import { loadRecents, recents } from '../../state/recents.ts'
import { lazy } from '../lazy.tsx'
import { Icon } from '../parts/icon.tsx'
import { Head } from '../shell/head.tsx'
import { LineBefore } from './line-before.tsx'

/** What a check done lately was about needs the checks themselves. */
const Lately = lazy(async () => (await import('./checked-lately.tsx')).CheckedLately, null)

/** Every check with the question it answers; all of them work on the Line under way. */
export function CheckList() {
  useEffect(() => void loadRecents(), [])
  const factCount = Object.keys(scratchDesk.line.value.facts).length
  return (
    <>
      <Head title="Check">
        <p class="muted">Quick answers for one line.</p>
      </Head>
      <ul class="rows">
        {checks.map((check) => (
          <li key={check.id}>
            <a href={scratchDesk.addressOf(check.id)}>
              <span>
                <strong>{check.title}</strong>
                <span class="row-note">{check.question}</span>
              </span>
              <Icon name="go" />
            </a>
          </li>
        ))}
      </ul>
      {factCount > 0 && (
        <div class="actions">
          <p class="muted small">
            The checks start from the {factCount === 1 ? 'one fact' : `${factCount} facts`} you typed last.
          </p>
          <button type="button" class="button" onClick={startFromNothing}>
            Start from nothing
          </button>
        </div>
      )}
      <LineBefore />
      {(recents.value ?? []).length > 0 && <Lately />}
    </>
  )
}
