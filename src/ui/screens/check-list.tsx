import { CHECKS } from '../../calc/registry.ts'
import type { Check, Line } from '../../calc/types.ts'
import { pairsForLine } from '../../state/check.ts'
import { hashOf } from '../../state/router.ts'
import { restartScratch, scratch } from '../../state/session.ts'
import { Icon } from '../parts/icon.tsx'
import { Head } from '../shell/head.tsx'

/** Every check with the question it answers; a check starts from the facts typed last. */
export function CheckList() {
  const line = scratch.value
  const factCount = Object.keys(line.facts).length
  return (
    <>
      <Head title="Check">
        <p class="muted">Quick answers for one line.</p>
      </Head>
      <ul class="rows">
        {CHECKS.map((check) => (
          <li key={check.id}>
            <a href={addressFor(check, line)}>
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
          <button type="button" class="button" onClick={() => restartScratch()}>
            Start from nothing
          </button>
        </div>
      )}
    </>
  )
}

function addressFor(check: Check, line: Line): string {
  const known = check.inputs.some((input) => line.facts[input.fact] !== undefined)
  return hashOf('check', check.id, known ? pairsForLine(check, line, {}) : [])
}
