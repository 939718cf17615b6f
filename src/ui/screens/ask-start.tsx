import { START_NODE } from '../../guide/start.ts'
import { hashOf } from '../../state/router.ts'
import { restartTriage, triage, triageBefore, undoTriage } from '../../state/session.ts'
import { lazy } from '../lazy.tsx'
import { Screening } from '../parts/cautions.tsx'
import { Icon } from '../parts/icon.tsx'
import { Head } from '../shell/head.tsx'
import { isResumed } from '../shell/start.ts'

/** Where the triage stood needs the tree; a first visit does not wait for it. */
const Resume = lazy(async () => (await import('./ask-resume.tsx')).Resume)

/** The start of a triage, or the way back into the one under way. */
export function AskStart() {
  const isUnderWay = isResumed.value && Object.keys(triage.value.answers).length > 0
  return (
    <>
      <Head title="What is wrong, and is a filter the cure?" large />
      <div class="stack">
        <p>
          A few questions, two minutes. The safety questions come first. “Don’t know” is an answer everywhere. At the
          end stands what to do next, with its reason, or that a connector filter will not cure it.
        </p>
        {isUnderWay && <Resume />}
        {isUnderWay ? (
          <button
            type="button"
            class="button wide"
            onClick={() => {
              restartTriage()
              location.hash = hashOf('ask', START_NODE)
            }}
          >
            Start afresh
          </button>
        ) : (
          <a class="button strong wide" href={hashOf('ask', START_NODE)}>
            Start
          </a>
        )}
        {isResumed.value && triageBefore.value && (
          <button type="button" class="button wide" onClick={() => undoTriage()}>
            <Icon name="undo" />
            Go back to the triage before, which was not kept
          </button>
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
