import { useMemo } from 'preact/hooks'
import { type Complaint, complaints } from '../../state/complaints.ts'
import { goTo, hashOf } from '../../state/router.ts'
import { type Hit, type HitKind, searchFor } from '../../state/search.ts'
import { startWith } from '../../state/start-with.ts'
import { RowLink, RowWords } from '../parts/row-link.tsx'
import { isResumed } from '../shell/start.ts'
import { useFound } from './use-found.ts'

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

const MOST_COMPLAINTS = 3
const NO_LOG: readonly Complaint[] = []
/** Fewer letters are in nearly every complaint. */
const LEAST_LETTERS = 3

/** What was found, the best first, each with what it is and where it leads. */
export function SearchHits({ text }: { readonly text: string }) {
  const hits = useMemo(() => searchFor(text), [text])
  const log = text.trim().length < LEAST_LETTERS ? NO_LOG : (complaints.value ?? NO_LOG)
  const { exact, alike } = useFound(log, text)
  const kept = [...exact, ...alike]
  const count = hits.length + kept.length
  return (
    <>
      <p class="muted small" role="status">
        {count === 0 ? 'Nothing has these words; try others, or start the questions.' : `${count} found`}
      </p>
      {kept.length > 0 && <Kept complaints={kept} />}
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

/** Complaints of the Log that hold every word, or one spelt nearly so: few, since the Log has a search of its own. */
function Kept({ complaints: found }: { readonly complaints: readonly Complaint[] }) {
  return (
    <ul class="rows hits" aria-label="Found in the Log">
      {found.slice(0, MOST_COMPLAINTS).map(({ id, title, aircraft }) => (
        <li key={id}>
          <RowLink href={hashOf('log', id)} title={title || 'Untitled'}>
            <span class="tag">Log</span> {aircraft}
          </RowLink>
        </li>
      ))}
    </ul>
  )
}

function Row({ hit }: { readonly hit: Hit }) {
  const { kind, title, note, to } = hit
  const words = (
    <RowWords title={title}>
      <span class="tag">{KIND_WORDS[kind]}</span> {note}
    </RowWords>
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
