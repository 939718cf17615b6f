import { optionsOf } from '../../guide/engine.ts'
import type { Guide, GuideOption, Question, Shown } from '../../guide/types.ts'
import { give } from '../../state/ask.ts'
import { goTo, hashOf } from '../../state/router.ts'
import { Cautions } from '../parts/cautions.tsx'
import { OptionSearch } from '../parts/option-search.tsx'
import { Head } from '../shell/head.tsx'
import { Trail } from './trail.tsx'

type Given = { readonly guide: Guide; readonly question: Question; readonly shown: Shown }

/** One question, largest on the screen; every answer a full-width row, "don't know" the last of them. */
export function QuestionView({ guide, question, shown }: Given) {
  const pick = (optionId: string) => {
    const position = give(guide, question.id, optionId)
    goTo(hashOf('ask', position.current.id))
  }
  return (
    <>
      <Head title={question.text} large>
        <p class="chapter muted">{question.chapter}</p>
      </Head>
      {shown.notice && (
        <p class="notice" role="status">
          {shown.notice}{' '}
          <a class="link" href="#/ask">
            Go to where they lead.
          </a>
        </p>
      )}
      <div class="stack">
        {question.picker ? (
          <Picker question={question} chosen={shown.chosen} onPick={pick} />
        ) : (
          <ul class="answers">
            {question.options.map((option) => (
              <li key={option.id}>
                <AnswerRow option={option} isChosen={shown.chosen === option.id} onPick={pick} />
              </li>
            ))}
          </ul>
        )}
        <Cautions ids={question.cautions ?? []} open={(question.cautions ?? []).length <= 2} />
        <details class="fold">
          <summary>Why ask?</summary>
          <p>{question.why}</p>
        </details>
        <details class="fold">
          <summary>How to find out</summary>
          <p>{question.findOut}</p>
        </details>
        <Trail position={shown.position} hereId={question.id} />
      </div>
    </>
  )
}

function AnswerRow(given: {
  readonly option: GuideOption
  readonly isChosen: boolean
  readonly onPick: (optionId: string) => void
}) {
  const { option, isChosen, onPick } = given
  return (
    <button
      type="button"
      class="answer-row"
      value={option.id}
      aria-pressed={isChosen}
      onClick={() => onPick(option.id)}
    >
      <span>{option.label}</span>
      {option.hint && <span class="row-note">{option.hint}</span>}
    </button>
  )
}

/** The kinds of line, searchable; the question's own answers, such as "don't know", stay under them. */
function Picker(given: {
  readonly question: Question
  readonly chosen: string | undefined
  readonly onPick: (optionId: string) => void
}) {
  const own = new Set(given.question.options.map((option) => option.id))
  const kinds = optionsOf(given.question).filter((option) => !own.has(option.id))
  const rest = given.question.options
  const last = rest.at(-1)
  return (
    <>
      <OptionSearch
        options={kinds.map((option) => ({ value: option.id, label: option.label }))}
        chosen={given.chosen}
        onPick={given.onPick}
        last={last ? { value: last.id, label: last.label } : undefined}
      />
      {rest.length > 1 && (
        <ul class="answers">
          {rest.slice(0, -1).map((option) => (
            <li key={option.id}>
              <AnswerRow option={option} isChosen={given.chosen === option.id} onPick={given.onPick} />
            </li>
          ))}
        </ul>
      )}
    </>
  )
}
