import type { ComponentChildren } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Option } from '../../calc/types.ts'
import { LINE_KINDS, lineKindGroup } from '../../reference/line-kinds.ts'
import { matching } from './option-match.ts'

const GROUPS: ReadonlyMap<string, string> = new Map(LINE_KINDS.map((kind) => [kind.id, lineKindGroup(kind)]))

type Given = {
  readonly options: readonly Option[]
  readonly chosen: string | undefined
  readonly onPick: (value: string) => void
  readonly last: Option | undefined
}

/** A list to search by typing, under headings while nothing is searched; the last row stands apart and is always there. */
export function OptionSearch({ options, chosen, onPick, last }: Given) {
  const [search, setSearch] = useState('')
  const found = matching(options, search)
  const row = (option: Option) => (
    <button
      type="button"
      class="answer-row"
      value={option.value}
      aria-pressed={option.value === chosen}
      onClick={() => onPick(option.value)}
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
        {found.length === 0 ? 'None has these words; try fewer.' : `${found.length} of ${options.length}`}
      </p>
      <Scrolled key={search}>
        {grouped(found, search.trim() === '').map(({ heading, members }) => (
          <li key={heading}>
            {heading !== '' && <h2>{heading}</h2>}
            <ul class="answers">
              {members.map((option) => (
                <li key={option.value}>{row(option)}</li>
              ))}
            </ul>
          </li>
        ))}
      </Scrolled>
      {last && row(last)}
    </div>
  )
}

type Group = { readonly heading: string; readonly members: readonly Option[] }

/** Options under the headings of their kinds, in the order of their first member; what was searched stays in its order. */
function grouped(found: readonly Option[], isWhole: boolean): readonly Group[] {
  if (!isWhole) return [{ heading: '', members: found }]
  const groups = new Map<string, Option[]>()
  for (const option of found) {
    const heading = GROUPS.get(option.value) ?? ''
    groups.set(heading, [...(groups.get(heading) ?? []), option])
  }
  return [...groups].map(([heading, members]) => ({ heading, members }))
}

/** A list that scrolls inside itself, and says so for as long as there is more below. */
function Scrolled({ children }: { readonly children: ComponentChildren }) {
  const list = useRef<HTMLUListElement>(null)
  const [isMore, setMore] = useState(false)
  const look = () => {
    const { scrollTop, clientHeight, scrollHeight } = list.current ?? document.documentElement
    setMore(scrollTop + clientHeight < scrollHeight - 8)
  }
  useEffect(look, [])
  return (
    <div class="scrolled">
      <ul ref={list} class="answers scroll-y" onScroll={look}>
        {children}
      </ul>
      <p class={isMore ? 'more-below' : 'more-below none'} aria-hidden="true">
        more below
      </p>
    </div>
  )
}
