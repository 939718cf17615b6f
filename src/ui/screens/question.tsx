import { useMemo, useState } from 'preact/hooks'
import { optionsOf, stopAfter } from '../../guide/engine.ts'
import type { Event, Evidence, Reading } from '../../guide/investigation.ts'
import { itemTexts, readTexts, withCautions } from '../../guide/screen-texts.ts'
import type { Guide, Shown } from '../../guide/types.ts'
import { give, giveFrequency, lastEvent } from '../../state/ask.ts'
import { goTo, hashOf } from '../../state/router.ts'
import { photoOwners } from '../../state/session.ts'
import { lazy } from '../lazy.tsx'
import { TermList, TermsIn, Text } from '../parts/book/terms.tsx'
import { FoldedCautions } from '../parts/cautions.tsx'
import { FrequencyField } from '../parts/frequency-field.tsx'
import { Icon } from '../parts/icon.tsx'
import { OptionSearch } from '../parts/option-search.tsx'
import { Repeats } from '../parts/repeats.tsx'
import { SuspectBoard } from '../parts/suspect-board.tsx'
import { TestCard } from '../parts/test-card.tsx'
import { Head } from '../shell/head.tsx'
import { Trail } from './trail.tsx'

const SoundsOf = lazy(async () => (await import('../parts/book/sounds-of.tsx')).SoundsOf, null)
const CasesLike = lazy(async () => (await import('../parts/book/cases-like.tsx')).CasesLike, null)
const DrawingView = lazy(async () => (await import('../parts/drawing.tsx')).DrawingView)
const FillInTable = lazy(async () => (await import('../parts/fill-in.tsx')).FillInTable)
const InTheBook = lazy(async () => (await import('../parts/book/in-the-book.tsx')).InTheBook, null)
const Photos = lazy(async () => (await import('../parts/photos.tsx')).Photos)

type Given = { readonly guide: Guide; readonly question: Evidence; readonly shown: Shown }

/** Where an answer leads: the stop it asks for, or what is asked next. */
function goOn(guide: Guide, nodeId: string, optionId: string, nextId: string): void {
  goTo(hashOf('ask', stopAfter(guide, nodeId, optionId)?.id ?? nextId))
}

/** One item, largest on the screen: a question, a look, or a test with its card. */
export function QuestionView({ guide, question, shown }: Given) {
  const isTest = question.kind !== 'ask'
  const before = lastEvent(question.id)
  const [reading, setReading] = useState(before?.reading ?? '')
  const [repeats, setRepeats] = useState<Event['repeats']>(before?.repeats)
  const pick = (optionId: string) => {
    const beside = { ...(reading.trim() !== '' && { reading: reading.trim() }), ...(repeats && { repeats }) }
    const position = give(guide, question.id, optionId, isTest ? beside : {})
    goOn(guide, question.id, optionId, position.current.id)
  }
  const isWaiting = question.opens === true && shown.position.gate !== 'clear'
  const texts = useMemo(
    () => [...readTexts(question), ...withCautions(itemTexts(question), question.cautions)],
    [question],
  )
  return (
    <TermsIn texts={texts}>
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
        <Way guide={guide} shown={shown} hereId={question.id} />
        {isWaiting && <Waiting />}
        <TestCard item={question} />
        {isTest && question.picture !== undefined && <DrawingView id={question.picture} />}
        {isTest && question.card?.unit !== undefined && (
          <div class="field wide">
            <label for="reading">Reading, in {question.card.unit}</label>
            <input
              id="reading"
              type="text"
              inputmode="decimal"
              autocomplete="off"
              value={reading}
              onInput={(event) => setReading(event.currentTarget.value)}
            />
          </div>
        )}
        {isTest && <Repeats value={repeats} onPick={setRepeats} />}
        {question.id === 'frequency' && (
          <FrequencyField onGive={(text) => goTo(hashOf('ask', giveFrequency(guide, text).current.id))} />
        )}
        <Answers question={question} chosen={shown.chosen} onPick={pick} />
        {question.fillIn !== undefined && <FillInTable id={question.fillIn} />}
        {isTest && <Photos owners={photoOwners()} evidence={question.id} titleOf={() => question.text} />}
        <FoldedCautions ids={question.cautions ?? []} open={(question.cautions ?? []).length <= 2} />
        <details class="fold">
          <summary>Why ask?</summary>
          <p>
            <Text of={question.why} />
          </p>
        </details>
        <details class="fold">
          <summary>How to find out</summary>
          <p>
            <Text of={question.findOut} />
          </p>
          {!isTest && question.picture !== undefined && <DrawingView id={question.picture} />}
          {question.note !== undefined && (
            <p>
              <a class="link" href={hashOf('notes', question.note)}>
                The field note on it
              </a>
            </p>
          )}
        </details>
        <SoundsOf item={question.id} />
        {shown.onPath && <CasesLike answers={shown.position.answers} />}
        <TermList />
        <InTheBook end={`item/${question.id}`} />
        <Trail position={shown.position} hereId={question.id} />
      </div>
    </TermsIn>
  )
}

/** Back to the question before, and how many causes still fit. */
function Way({ guide, shown, hereId }: { readonly guide: Guide; readonly shown: Shown; readonly hereId: string }) {
  const { trail } = shown.position
  const at = trail.findIndex(({ node }) => node.id === hereId)
  const previous = at < 0 ? trail.at(-1) : trail[at - 1]
  return (
    <>
      <a class="up" href={previous === undefined ? hashOf('ask') : hashOf('ask', previous.node.id)}>
        <Icon name="back" />
        Back
      </a>
      {trail.length > 2 && <SuspectBoard guide={guide} position={shown.position} />}
    </>
  )
}

function Waiting() {
  return (
    <p class="notice" role="status">
      This opens or loads a circuit. It waits until the safety questions say that it may; set it aside until then.
    </p>
  )
}

type Picked = {
  readonly question: Evidence
  readonly chosen: string | undefined
  readonly onPick: (optionId: string) => void
}

function Answers({ question, chosen, onPick }: Picked) {
  if (question.picker !== undefined) return <Picker question={question} chosen={chosen} onPick={onPick} />
  const offered = question.options.filter(
    ({ id, retired }) => (!retired || id === chosen) && !(question.id === 'frequency' && id === 'exact'),
  )
  return (
    <ul class="answers">
      {offered.map((option) => (
        <li key={option.id}>
          <AnswerRow
            option={option}
            says={question.kind === 'ask' ? undefined : option.means}
            isChosen={chosen === option.id}
            onPick={onPick}
          />
        </li>
      ))}
      {question.kind !== 'ask' && (
        <li>
          <AnswerRow
            option={{ id: 'set-aside', label: 'Cannot be done now', says: {}, means: '' }}
            says="It stays in the list of open tests."
            isChosen={chosen === 'set-aside'}
            onPick={onPick}
          />
        </li>
      )}
    </ul>
  )
}

function AnswerRow(given: {
  readonly option: Reading
  readonly says: string | undefined
  readonly isChosen: boolean
  readonly onPick: (optionId: string) => void
}) {
  const { option, says, isChosen, onPick } = given
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
      {says && <span class="row-note">{says}</span>}
    </button>
  )
}

/** The kinds of line, searchable; the item's own answers, such as "don't know", stay under them. */
function Picker({ question, chosen, onPick }: Picked) {
  const own = new Set(question.options.map((option) => option.id))
  const kinds = optionsOf(question).filter((option) => !own.has(option.id))
  const last = question.options.at(-1)
  return (
    <OptionSearch
      options={kinds.map((option) => ({ value: option.id, label: option.label }))}
      chosen={chosen}
      onPick={onPick}
      last={last ? { value: last.id, label: last.label } : undefined}
    />
  )
}
