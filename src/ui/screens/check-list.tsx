import { useEffect } from 'preact/hooks'
import { CHECKS } from '../../calc/registry.ts'
import { scratchDesk } from '../../state/desk.ts'
import { startFromNothing } from '../../state/opening.ts'
import { loadRecents, recents, saidOf } from '../../state/recents.ts'
import { Icon } from '../parts/icon.tsx'
import { Head } from '../shell/head.tsx'
import { LineBefore } from './line-before.tsx'
import { dayAndTime } from './moment.ts'

/** Every check with the question it answers; all of them work on the Line under way. */
export function CheckList() {
  const factCount = Object.keys(scratchDesk.line.value.facts).length
  return (
    <>
      <Head title="Check">
        <p class="muted">Quick answers for one line.</p>
      </Head>
      <ul class="rows">
        {CHECKS.map((check) => (
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
      <Lately />
    </>
  )
}

/** The checks done last on this device; each opens as its address would, on a line of its own. */
function Lately() {
  useEffect(() => void loadRecents(), [])
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
            <a href={address}>
              <span>
                <strong>{check.title}</strong>
                <span class="row-note">
                  {words === '' ? 'nothing entered' : words} · {dayAndTime(at)}
                </span>
              </span>
              <Icon name="go" />
            </a>
          </li>
        ))}
      </ul>
    </section>
  )
}
