import { useRef, useState } from 'preact/hooks'
import { lineKindInput } from '../../../calc/checks/signal-inputs.ts'
import type { WordMeaning } from '../../../calc/connector/kind-words.ts'
import type { Option } from '../../../calc/types.ts'
import { lineKindById } from '../../../reference/line-kinds.ts'
import type { PasteModel, TableWord } from '../../../state/paste.ts'
import { matching } from '../../parts/option-match.ts'
import { PickOne } from './pick-one.tsx'

const TYPES: readonly Option[] = [
  { value: 'type:ground', label: 'a grounded contact' },
  { value: 'type:spare', label: 'a spare contact' },
  { value: 'type:feed-through', label: 'a feed-through contact, never filtered' },
]
const KINDS: readonly Option[] = lineKindInput.type.options
const OPTIONS: readonly Option[] = [...KINDS, ...TYPES]
const OPEN: Option = { value: 'open', label: 'leave the kind open' }

const MOST_OFFERED = 3

/** Words for the kind of line: those nobody knows are asked about, each once; the others can be changed. */
export function KindWords({ model }: { readonly model: PasteModel }) {
  const words = model.words.value
  // what was asked stays where it was asked, so that nothing jumps under the thumb
  const asked = useRef(new Set<string>())
  for (const { word, meaning } of words) if (meaning === undefined) asked.current.add(word)
  const isAsked = ({ word }: TableWord) => asked.current.has(word)
  const known = words.filter((word) => !isAsked(word))
  return (
    <>
      {words.filter(isAsked).map((word) => (
        <Word key={word.word} model={model} word={word} />
      ))}
      {known.length > 0 && (
        <details class="fold">
          <summary>{known.length === 1 ? 'One word' : `${known.length} words`} for the kind of line understood</summary>
          {known.map((word) => (
            <Word key={word.word} model={model} word={word} />
          ))}
        </details>
      )}
    </>
  )
}

const optionOf = (meaning: WordMeaning): string =>
  meaning.is === 'kind' ? meaning.kind : meaning.is === 'type' ? `type:${meaning.type}` : OPEN.value

function meaningOf(value: string): WordMeaning {
  const type = (['ground', 'spare', 'feed-through'] as const).find((one) => value === `type:${one}`)
  if (type !== undefined) return { is: 'type', type }
  return lineKindById(value) === undefined ? { is: 'open' } : { is: 'kind', kind: value }
}

const labelOf = (value: string): string => [...OPTIONS, OPEN].find((option) => option.value === value)?.label ?? value

function Word({ model, word: { word, rows, meaning } }: { readonly model: PasteModel; readonly word: TableWord }) {
  const [offered] = useState(() => matching(KINDS, word).slice(0, MOST_OFFERED))
  const say = (value: string) => model.say(word, meaningOf(value))
  const chosen = meaning && optionOf(meaning)
  const title = `“${word}”, ${rows === 1 ? 'one row' : `${rows} rows`}`
  return (
    <section class="kind-word stack" aria-label={`The word ${word}`}>
      <h2>
        {title}
        {chosen === undefined ? ': what is it?' : ''}
      </h2>
      {chosen === undefined ? (
        <div class="answers">
          {[...offered, OPEN].map((option) => (
            <button
              key={option.value}
              type="button"
              class="answer-row"
              value={option.value}
              onClick={() => say(option.value)}
            >
              {option.label}
            </button>
          ))}
        </div>
      ) : (
        <p>{labelOf(chosen)}</p>
      )}
      <PickOne
        label={chosen === undefined ? 'Another' : 'Change'}
        options={OPTIONS}
        chosen={chosen}
        onPick={say}
        last={OPEN}
      />
    </section>
  )
}
