import { effect, signal } from '@preact/signals'
import { offlineReady } from '../../offline/updates.ts'
import { loadComplaints } from '../../state/complaints.ts'
import { loadGuide } from '../../state/guide-content.ts'
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
  // Seeds the stored guide once its part comes from the offline copy, so that the first screen does not wait for it.
  effect(() => {
    if (offlineReady.value) void loadGuide().catch(() => undefined)
  })
  void resumeSession().finally(() => {
    isResumed.value = true
  })
}
