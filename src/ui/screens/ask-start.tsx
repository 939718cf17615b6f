import { lazy } from '../lazy.tsx'
import { Icon } from '../parts/icon.tsx'
import { Screening } from '../parts/screening.tsx'
import { Head } from '../shell/head.tsx'
import { SearchBox } from './search-box.tsx'
import { StartLink } from './start-link.tsx'

/** What was going on comes from the store; a first visit does not wait for it. */
const GoingOn = lazy(async () => (await import('./going-on.tsx')).GoingOn, <StartLink />)

/** The start: what this is, a search over everything, the way into a triage, and what was going on. */
export function AskStart() {
  return (
    <>
      <Head title="Stillpin finds what disturbs aircraft wiring, then the cure" windowTitle="Start" large />
      <SearchBox />
      <div class="stack">
        <GoingOn />
        <p class="muted small">
          A few questions, two minutes, safety first. “Don’t know” is an answer everywhere. At the end stands what to do
          next and why, or that no connector filter will cure it.
        </p>
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
