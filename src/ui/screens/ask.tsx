import { useEffect, useState } from 'preact/hooks'
import { isEvidence, shownNode } from '../../guide/engine.ts'
import type { Guide } from '../../guide/types.ts'
import { guide, loadGuide } from '../../state/guide-content.ts'
import { triage } from '../../state/session.ts'
import { lazy } from '../lazy.tsx'
import { Head } from '../shell/head.tsx'
import { isResumed } from '../shell/start.ts'
import { QuestionView } from './question.tsx'

/** Outcomes compute; questions do not have to wait for that part. */
const OutcomeView = lazy(async () => (await import('./outcome.tsx')).OutcomeView)

/** Triage: a question, or what the answers lead to. */
export function Ask({ nodeId }: { readonly nodeId: string }) {
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
  return <Node guide={content} nodeId={nodeId} />
}

function Node({ guide: content, nodeId }: { readonly guide: Guide; readonly nodeId: string }) {
  const shown = shownNode(content, triage.value.answers, nodeId, triage.value.events)
  const { node } = shown
  return isEvidence(node) ? (
    <QuestionView key={node.id} guide={content} question={node} shown={shown} />
  ) : (
    <OutcomeView key={node.id} guide={content} outcome={node} shown={shown} />
  )
}
