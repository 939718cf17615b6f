import { casePageId } from '../../../guide/book/cases/all.ts'
import { casesLike } from '../../../guide/book/cases/match.ts'
import type { Answers } from '../../../guide/types.ts'
import { hashOf } from '../../../state/router.ts'

/** Documented cases that answer alike. They prove nothing here; they say what was found there. */
export function CasesLike({ answers }: { readonly answers: Answers }) {
  const found = casesLike(answers)
  if (found.length === 0) return null
  return (
    <details class="fold">
      <summary>
        {found.length === 1 ? 'A documented case like this' : `${found.length} documented cases like this`}
      </summary>
      <ul class="plain">
        {found.map((one) => (
          <li key={one.source}>
            <a class="link" href={hashOf('notes', casePageId(one))}>
              {one.title}
            </a>
            <span class="row-note">{one.cause}</span>
          </li>
        ))}
      </ul>
      <p class="muted small">Like in its answers only: what it was there is a hint where to look, and no proof here.</p>
    </details>
  )
}
