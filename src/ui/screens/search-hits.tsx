import { useMemo } from 'preact/hooks'
import { goTo } from '../../state/router.ts'
import { type Hit, type HitKind, searchFor } from '../../state/search.ts'
import { startWith } from '../../state/start-with.ts'
import { Icon } from '../parts/icon.tsx'
import { isResumed } from '../shell/start.ts'

const KIND_WORDS: Readonly<Record<HitKind, string>> = {
  symptom: 'Ask',
  answer: 'Answer',
  cause: 'Cause',
  line: 'Line',
  question: 'Question',
  check: 'Check',
  word: 'Word',
  lines: 'Line card',
  sounds: 'Sound',
  tests: 'Test',
  notes: 'Note',
  drawings: 'Drawing',
  tables: 'Table',
  cases: 'Case',
}

/** What was found, the best first, each with what it is and where it leads. */
export function SearchHits({ text }: { readonly text: string }) {
  const hits = useMemo(() => searchFor(text), [text])
  return (
    <>
      <p class="muted small" role="status">
        {hits.length === 0 ? 'Nothing has these words; try others, or start the questions.' : `${hits.length} found`}
      </p>
      <ul class="rows hits" aria-label="Found">
        {hits.map((hit) => (
          <li key={hit.id}>
            <Row hit={hit} />
          </li>
        ))}
      </ul>
    </>
  )
}

function Row({ hit }: { readonly hit: Hit }) {
  const { kind, title, note, to } = hit
  const words = (
    <>
      <span>
        <strong>{title}</strong>
        <span class="row-note">
          <span class="tag">{KIND_WORDS[kind]}</span> {note}
        </span>
      </span>
      <Icon name="go" />
    </>
  )
  if ('hash' in to) return <a href={to.hash}>{words}</a>
  return (
    <button
      type="button"
      class="row-button"
      disabled={!isResumed.value}
      onClick={() => void startWith(to.start).then(goTo)}
    >
      {words}
    </button>
  )
}
