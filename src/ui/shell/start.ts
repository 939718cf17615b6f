import { effect, signal } from '@preact/signals'
import { offlineReady } from '../../offline/updates.ts'
import { nextTurn } from '../../state/next-turn.ts'
import { startTheme } from '../../state/theme.ts'
import { holdRest } from '../rest.ts'
import { watchInstall } from './install-event.ts'

/** True once the triage of the last visit is back: an answer given before that would be overwritten by it. */
export const isResumed = signal(false)

let isStarted = false
/** From the first script on: before the first drawing is painted nothing else holds the rest back. */
const release = holdRest()

/** Theme, work under way and the Log, once; each shows a notice of its own when the storage fails. */
export function startOnce(): void {
  if (isStarted) return
  isStarted = true
  watchInstall()
  void begin().finally(release)
}

/** One thing a turn: together they would hold up what the screen itself waits for. */
async function begin(): Promise<void> {
  await nextTurn()
  void startTheme()
  await nextTurn()
  const resumed = resume()
  await nextTurn()
  void import('./paper.ts').then(({ watchPrinting }) => watchPrinting())
  void import('./listen.ts').then(
    ({ listen }) => listen(),
    () => undefined,
  )
  await resumed
}

/**
 * What was stored is fetched beside the first screen, which does not wait for it. Where that part cannot be fetched
 * nothing is taken for read: an answer given then would go over what is there.
 */
async function resume(): Promise<void> {
  const part = await import('../../state/resume.ts').catch(() => undefined)
  if (part === undefined) return
  await part.resumeWork()
  isResumed.value = true
  // Seeds the stored guide once its part comes from the offline copy.
  effect(() => {
    if (offlineReady.value) void part.seedGuide()
  })
}
