import { signal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { lazy } from '../lazy.tsx'
import { isSearchWanted } from '../shell/search-wanted.ts'

const load = async () => (await import('./search-hits.tsx')).SearchHits

/** What is searched needs the whole guide; it is fetched when the field is entered. */
const SearchHits = lazy(
  load,
  <p class="muted small" role="status">
    Getting the words…
  </p>,
)

/** As people say it: a bus, a whine, a figure. */
const EXAMPLES = ['bus drops out when we transmit', 'whine follows the engine', '10 nF on CAN at 500 kbit/s'] as const

/** Kept while the app is open, so that coming back shows what was found. */
const sought = signal('')

/** A search over symptoms, lines, checks and notes, with examples of what may be asked. */
export function SearchBox() {
  const text = sought.value
  const field = useRef<HTMLInputElement>(null)
  useEffect(() => {
    if (!isSearchWanted.value) return
    isSearchWanted.value = false
    // after the heading, which takes the focus of a new screen
    field.current?.focus()
  }, [])
  return (
    <search class="find stack">
      <label class="search">
        <span>What do you see or hear, or want to know?</span>
        <input
          ref={field}
          id="search"
          type="search"
          value={text}
          autocomplete="off"
          autocapitalize="none"
          spellcheck={false}
          enterkeyhint="search"
          onFocus={() => void load().catch(() => undefined)}
          onInput={(event) => {
            sought.value = event.currentTarget.value
          }}
        />
      </label>
      {text.trim() === '' ? (
        <ul class="chips" aria-label="Examples">
          {EXAMPLES.map((example) => (
            <li key={example}>
              <button
                type="button"
                class="chip"
                onClick={() => {
                  sought.value = example
                }}
              >
                {example}
              </button>
            </li>
          ))}
        </ul>
      ) : (
        <SearchHits text={text} />
      )}
    </search>
  )
}
