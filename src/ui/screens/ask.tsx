import { useEffect, useState } from 'preact/hooks'
import { shownNode } from '../../guide/engine.ts'
import type { Guide } from '../../guide/types.ts'
import { guide, loadGuide } from '../../state/guide-content.ts'
import { hashOf } from '../../state/router.ts'
import { restartTriage, triage } from '../../state/session.ts'
import { lazy } from '../lazy.tsx'
import { Screening } from '../parts/cautions.tsx'
import { Icon } from '../parts/icon.tsx'
import { Head } from '../shell/head.tsx'
import { isResumed } from '../shell/start.ts'
import { QuestionView } from './question.tsx'

/** Outcomes compute; questions do not have to wait for that part. */
const OutcomeView = lazy(async () => (await import('./outcome.tsx')).OutcomeView)

/** Triage: the start, a question, or what the answers lead to. */
export function Ask({ nodeId }: { readonly nodeId: string | undefined }) {
  const [isFailed, setFailed] = useState(false)
  useEffect(() => {
    loadGuide().catch(() => setFailed(true))
  }, [])
  const content = guide.value
  if (isFailed && !content) {
    return (
      <>
        <Head title="Ask" />
        <p class="notice" role="alert">
          The guide could not be loaded. Reload the page; your answers are kept.
        </p>
      </>
    )
  }
  if (!content || !isResumed.value)
    return (
      <p class="loading" role="status">
        Opening the guide…
      </p>
    )
  return nodeId === undefined ? <Start guide={content} /> : <Node guide={content} nodeId={nodeId} />
}

function Start({ guide: content }: { readonly guide: Guide }) {
  const { answers } = triage.value
  const { position } = shownNode(content, answers)
  const { trail, current } = position
  const isUnderWay = trail.length > 0
  return (
    <>
      <Head title="What is wrong, and is a filter the cure?" large />
      <div class="stack">
        <p>
          A few questions, two minutes. The safety questions come first. “Don’t know” is an answer everywhere. At the
          end stands what to do next, with its reason, or that a connector filter will not cure it.
        </p>
        {isUnderWay && (
          <div class="resume">
            <p class="muted">
              {trail.length === 1 ? 'One answer' : `${trail.length} answers`} so far. Last: {trail.at(-1)?.label}
            </p>
            <a class="button strong wide" href={hashOf('ask', current.id)}>
              {current.is === 'outcome' ? 'See the result again' : 'Go on where you were'}
            </a>
          </div>
        )}
        {isUnderWay ? (
          <button
            type="button"
            class="button wide"
            onClick={() => {
              restartTriage()
              location.hash = hashOf('ask', content.start)
            }}
          >
            Start afresh
          </button>
        ) : (
          <a class="button strong wide" href={hashOf('ask', content.start)}>
            Start
          </a>
        )}
        <ul class="rows">
          <li>
            <a href="#/check">
              <span>
                <strong>Only a figure?</strong>
                <span class="row-note">Straight to the checks</span>
              </span>
              <Icon name="go" />
            </a>
          </li>
        </ul>
        <Screening />
      </div>
    </>
  )
}

function Node({ guide: content, nodeId }: { readonly guide: Guide; readonly nodeId: string }) {
  const shown = shownNode(content, triage.value.answers, nodeId)
  const { node } = shown
  return node.is === 'question' ? (
    <QuestionView key={node.id} guide={content} question={node} shown={shown} />
  ) : (
    <OutcomeView key={node.id} guide={content} outcome={node} shown={shown} />
  )
}
