import { useState } from 'preact/hooks'
import { resolve } from '../../calc/line/resolver.ts'
import { checkById } from '../../calc/registry.ts'
import type { Check } from '../../calc/types.ts'
import { decisionSentence } from '../../guide/decision-sentence.ts'
import { isEvidence, nodeById } from '../../guide/engine.ts'
import { advise } from '../../guide/rules.ts'
import { adviceTexts, outcomeTexts, withCautions } from '../../guide/screen-texts.ts'
import type { Advice, AdviceItem, Guide, Outcome, OutcomeClass, Shown } from '../../guide/types.ts'
import { complaints } from '../../state/complaints.ts'
import { triageDesk } from '../../state/desk.ts'
import { expressionReading } from '../../state/expression.ts'
import { createFromTriage } from '../../state/new-complaint.ts'
import { hashOf } from '../../state/router.ts'
import { attachComplaint, restartTriage, triage } from '../../state/session.ts'
import { lazy } from '../lazy.tsx'
import { TermList, TermsIn, Text } from '../parts/book/terms.tsx'
import { FoldedCautions } from '../parts/cautions.tsx'
import { Icon, type IconName } from '../parts/icon.tsx'
import { KeptLink } from '../parts/kept-link.tsx'
import { LineWindow } from '../parts/line-window.tsx'
import { OpenTests } from '../parts/open-tests.tsx'
import { PrintHead } from '../parts/print-head.tsx'
import { Screening } from '../parts/screening.tsx'
import { PrintButton, ShareButton } from '../parts/share-button.tsx'
import { cautionLines } from '../parts/shared-words.ts'
import { SuspectBoard } from '../parts/suspect-board.tsx'
import { Sources } from '../parts/working.tsx'
import { Head } from '../shell/head.tsx'
import { AfterRepair } from './after-repair.tsx'
import { Earlier, Reasons, Sure, ThinkOn, Withheld } from './decision.tsx'
import { Trail } from './trail.tsx'

const CasesLike = lazy(async () => (await import('../parts/book/cases-like.tsx')).CasesLike, null)

const InTheBook = lazy(async () => (await import('../parts/book/in-the-book.tsx')).InTheBook, null)

const CLASS_WORDS: Readonly<
  Record<OutcomeClass, { readonly word: string; readonly icon: IconName; readonly tone: string }>
> = {
  filter: { word: 'A part on this line is the likely cure', icon: 'ok', tone: 'ok' },
  suppressor: { word: 'A suppressor, not only a filter', icon: 'marginal', tone: 'marginal' },
  'not-a-filter': { word: 'A connector filter will not cure this', icon: 'fails', tone: 'marginal' },
  stop: { word: 'Stop', icon: 'fails', tone: 'fails' },
  measure: { word: 'Measure first', icon: 'unknown', tone: 'unknown' },
}

type Given = { readonly guide: Guide; readonly outcome: Outcome; readonly shown: Shown }

/** What the answers lead to: the decision, why, what to do now, the window, the checks, and how to prove it. */
export function OutcomeView({ guide, outcome, shown }: Given) {
  const line = triageDesk.line.value
  const { gate, answers } = shown.position
  const advice = advise({ guide, outcome, line, gate, answers, express: expressionReading })
  const decision = decisionSentence(outcome, advice)
  const look = CLASS_WORDS[outcome.class]
  // Where another check comes first, its link does too: the window is then only what the part takes room of.
  const leadsToWindow = outcome.checks[0]?.check === 'window'
  return (
    <TermsIn
      texts={withCautions(
        [outcome.reason, ...advice.steps, ...outcomeTexts(outcome).slice(1), ...adviceTexts(advice.items)],
        outcome.cautions,
      )}
    >
      <Head title={outcome.headline} large>
        <p class={`chapter verdict-mark ${look.tone}`}>
          <Icon name={look.icon} />
          <span>{look.word}</span>
        </p>
      </Head>
      <PrintHead />
      {shown.notice && (
        <p class="notice" role="status">
          {shown.notice}{' '}
          <a class="link" href="#/ask">
            Go to where they lead.
          </a>
        </p>
      )}
      <div class="panes outcome">
        <div class="pane stack">
          <section class="answer" aria-label="Result">
            {decision !== `${outcome.headline}.` && <p class="headline">{decision}</p>}
            {shown.onPath && <Sure guide={guide} position={shown.position} />}
            <p>
              <Text of={outcome.reason} />
            </p>
            <details class="fold">
              <summary>Source</summary>
              <Sources sources={outcome.sources} />
            </details>
          </section>
          <Withheld guide={guide} outcome={outcome} position={shown.position} isAllowed={advice.mayAdviseParts} />
          <Steps advice={advice} />
          <section aria-label="Next measurement">
            <h2>Next measurement</h2>
            <p>
              <Text of={outcome.nextMeasurement} />
            </p>
          </section>
          {outcome.class === 'stop' && <ThinkOn position={shown.position} />}
          {outcome.class === 'measure' && (
            <OpenTests tests={shown.position.openTests} title="Open tests, the best first" />
          )}
          {shown.onPath && outcome.class !== 'stop' && (
            <AfterRepair guide={guide} outcome={outcome} position={shown.position} />
          )}
        </div>
        <div class="pane stack">
          {!leadsToWindow && <CheckLinks outcome={outcome} />}
          {outcome.checks.some((each) => each.check === 'window') && <LineWindow desk={triageDesk} />}
          <StillToAnswer guide={guide} items={advice.items} />
          <Items items={advice.items} />
          {leadsToWindow && <CheckLinks outcome={outcome} />}
          {shown.onPath && <Reasons position={shown.position} />}
          <FoldedCautions ids={outcome.cautions} open={outcome.class === 'stop'} />
          {shown.onPath && outcome.class !== 'stop' && <SuspectBoard guide={guide} position={shown.position} />}
          {shown.onPath && outcome.class !== 'stop' && <CasesLike answers={answers} />}
          {shown.onPath && <Earlier position={shown.position} />}
        </div>
      </div>
      <Keep guide={guide} outcome={outcome} advice={advice} />
      <TermList />
      <InTheBook end={`item/${outcome.id}`} />
      <Trail position={shown.position} hereId={outcome.id} />
      <Screening />
    </TermsIn>
  )
}

function Steps({ advice }: { readonly advice: Advice }) {
  if (advice.steps.length === 0) return null
  return (
    <section aria-label="Do now">
      <h2>Do now, in this order</h2>
      <ol class="numbered">
        {advice.steps.map((step) => (
          <li key={step}>
            <Text of={step} />
          </li>
        ))}
      </ol>
    </section>
  )
}

/** What the advice misses and the guide can ask: each a link to its question, unfolded, so that it is one tap. */
function StillToAnswer({ guide, items }: { readonly guide: Guide; readonly items: readonly AdviceItem[] }) {
  const questions = [...new Set(items.flatMap(({ asks }) => asks ?? []))].flatMap((id) => nodeById(guide, id) ?? [])
  if (questions.length === 0) return null
  return (
    <section aria-label="Still to answer">
      <h2>Still to answer</h2>
      <ul class="plain">
        {questions.filter(isEvidence).map(({ id, text, why }) => (
          <li key={id}>
            <a class="link" href={hashOf('ask', id)}>
              {text}
            </a>
            <span class="row-note">{why}</span>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** Items shown unfolded; the rest is one tap away, so that the checks are not far down. */
const OPEN_ITEMS = 3

function Items({ items }: { readonly items: readonly AdviceItem[] }) {
  if (items.length === 0) return null
  return (
    <section aria-label="Advice" class="advice">
      <h2>Advice for this line</h2>
      {items.map((item, index) => (
        <details key={item.rule} class="fold" open={index < OPEN_ITEMS}>
          <summary>{item.title}</summary>
          <p>
            <Text of={item.text} />
          </p>
          {item.missing.length > 0 && (
            <p class="muted small">To say it with numbers, find out: {item.missing.join('; ')}.</p>
          )}
          <div class="small">
            <Sources sources={item.basis} />
          </div>
        </details>
      ))}
    </section>
  )
}

/** What an outcome says of a check's inputs goes to the line as its answer, where nothing is known and nothing is usual. */
function state(outcome: Outcome, check: Check, prefill: Readonly<Record<string, string>>): void {
  const resolution = resolve(triageDesk.line.peek(), expressionReading)
  for (const { key, fact, defaultText } of check.inputs) {
    const text = prefill[key]
    if (text === undefined || text === defaultText || resolution.claims(fact).length > 0) continue
    triageDesk.write(fact, { text, origin: { by: 'answer', node: outcome.id } })
  }
}

/** The checks of an outcome, each on the line of this triage. */
function CheckLinks({ outcome }: { readonly outcome: Outcome }) {
  const links = outcome.checks.flatMap(({ check: id, prefill, why }) => {
    const check = checkById(id)
    return check ? [{ check, why, prefill }] : []
  })
  if (links.length === 0) return null
  return (
    <section aria-label="Checks">
      <h2>Checks, with what is known filled in</h2>
      <ul class="rows">
        {links.map(({ check, why, prefill }) => (
          <li key={check.id}>
            <a
              href={triageDesk.addressOf(check.id)}
              onClick={() => {
                state(outcome, check, prefill)
                triageDesk.enter()
              }}
            >
              <span>
                <strong>{check.title}</strong>
                <span class="row-note">{why}</span>
              </span>
              <Icon name="go" />
            </a>
          </li>
        ))}
      </ul>
    </section>
  )
}

function Keep({
  guide,
  outcome,
  advice,
}: {
  readonly guide: Guide
  readonly outcome: Outcome
  readonly advice: Advice
}) {
  const { complaintId, answers, events, tables } = triage.value
  const line = triageDesk.line.value
  const kept = complaints.value?.find((complaint) => complaint.id === complaintId)
  const [isFresh, setFresh] = useState(false)
  const keep = () => {
    const made = createFromTriage({
      title: outcome.headline,
      answers,
      ...(events && { events }),
      ...(tables && { tables }),
      guideVersion: guide.version,
      line,
    })
    attachComplaint(made.id)
    setFresh(true)
  }
  const words = [
    decisionSentence(outcome, advice),
    outcome.reason,
    ...advice.steps.map((step, index) => `${index + 1}. ${step}`),
    ...cautionLines(outcome.cautions),
  ].join('\n')
  return (
    <div class="actions">
      {kept ? (
        <KeptLink id={kept.id} isFresh={isFresh} />
      ) : (
        <button type="button" class="button strong" onClick={keep}>
          <Icon name="keep" />
          Keep in the log
        </button>
      )}
      <ShareButton title={outcome.headline} words={words} hash={hashOf('ask', outcome.id)} />
      <PrintButton />
      <button
        type="button"
        class="button"
        onClick={() => {
          restartTriage()
          location.hash = hashOf('ask')
        }}
      >
        Start afresh
      </button>
    </div>
  )
}
