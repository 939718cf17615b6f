import { START_NODE } from '../../guide/start.ts'
import { hashOf } from '../../state/router.ts'

/** Into the triage at its first question. */
export function StartLink() {
  return (
    <a class="button strong wide" href={hashOf('ask', START_NODE)}>
      Start
    </a>
  )
}
