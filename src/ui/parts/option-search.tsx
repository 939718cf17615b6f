import { useState } from 'preact/hooks'
import type { Option } from '../../calc/types.ts'
import { LINE_KINDS, lineKindWords } from '../../reference/line-kinds.ts'

const KIND_WORDS: ReadonlyMap<string, string> = new Map(LINE_KINDS.map((kind) => [kind.id, lineKindWords(kind)]))

/** Lower case, marks and blanks folded, so that "arinc429" and "ARINC 429" meet. */
function folded(text: string): string {
  return text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '')
}

/** Options that hold every word of the search in their name, id or the words people use for them. */
export function matching<O extends Option>(options: readonly O[], search: string): readonly O[] {
  const words = search
    .split(/\s+/)
    .map(folded)
    .filter((word) => word !== '')
  return options.filter((option) => {
    const hay = folded(`${option.label} ${option.value} ${KIND_WORDS.get(option.value) ?? ''}`)
    return words.every((word) => hay.includes(word))
  })
}

/** A list to search by typing; the last row stands apart and is always there. */
export function OptionSearch(given: {
  readonly options: readonly Option[]
  readonly chosen: string | undefined
  readonly onPick: (value: string) => void
  readonly last: Option | undefined
}) {
  const [search, setSearch] = useState('')
  const found = matching(given.options, search)
  const row = (option: Option) => (
    <button
      type="button"
      class="answer-row"
      value={option.value}
      aria-pressed={option.value === given.chosen}
      onClick={() => given.onPick(option.value)}
    >
      {option.label}
    </button>
  )
  return (
    <div class="option-search">
      <label class="search">
        <span>Search by name or use</span>
        <input
          type="search"
          value={search}
          autocomplete="off"
          autocapitalize="none"
          spellcheck={false}
          enterkeyhint="search"
          onInput={(event) => setSearch(event.currentTarget.value)}
        />
      </label>
      <p class="muted small" role="status">
        {found.length === 0 ? 'None has these words; try fewer.' : `${found.length} of ${given.options.length}`}
      </p>
      <ul class="answers scroll-y">
        {found.map((option) => (
          <li key={option.value}>{row(option)}</li>
        ))}
      </ul>
      {given.last && row(given.last)}
    </div>
  )
}
