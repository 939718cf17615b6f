import { signal } from '@preact/signals'
import { loadComplaints } from '../../state/complaints.ts'
import { resumeSession } from '../../state/session.ts'
import { startTheme } from '../../state/theme.ts'
import { watchInstall } from './install-event.ts'
import { watchPrinting } from './paper.ts'

/** True once the triage of the last visit is back: an answer given before that would be overwritten by it. */
export const isResumed = signal(false)

let isStarted = false

/** Theme, work under way and the Log, once; each shows a notice of its own when the storage fails. */
export function startOnce(): void {
  if (isStarted) return
  isStarted = true
  watchInstall()
  watchPrinting()
  void startTheme()
  void loadComplaints()
  void resumeSession().finally(() => {
    isResumed.value = true
  })
}
