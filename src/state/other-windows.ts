/**
 * The other windows of the app on this device.
 *
 * `tell(news)`       what this window has just written, or done
 * `onNews(listen)`   called with what another window tells
 */
import { openChannel } from '../store/browser-storage.ts'
import { isRecord } from '../store/plain.ts'

/** `changed`: a complaint, or one line of it; `connector`: one of its connectors; `triage`, `scratch`: what is under way; `log`: much of it; `erased`: nothing is left. */
export type News =
  | { readonly is: 'changed'; readonly id: string; readonly lineId?: string | undefined }
  | { readonly is: 'connector'; readonly id: string }
  | { readonly is: (typeof WHOLE)[number] }

const WHOLE = ['triage', 'scratch', 'log', 'erased'] as const

const listeners = new Set<(news: News) => void>()

const channel = openChannel('log', (message) => {
  const news = readNews(message)
  if (news !== undefined) for (const listen of listeners) listen(news)
})

/** Another window may be of another version: what it says is read, not trusted. */
function readNews(message: unknown): News | undefined {
  if (!isRecord(message)) return undefined
  const { is, id, lineId } = message
  for (const known of WHOLE) if (is === known) return { is: known }
  if (typeof id !== 'string') return undefined
  if (is === 'connector') return { is, id }
  if (is !== 'changed') return undefined
  return { is, id, lineId: typeof lineId === 'string' ? lineId : undefined }
}

/** What is to be told, by its text: many keys that were written as one are one piece of news. */
const untold = new Map<string, News>()

export function tell(news: News): void {
  if (untold.size === 0) queueMicrotask(tellAll)
  untold.set(JSON.stringify(news), news)
}

function tellAll(): void {
  for (const news of untold.values()) channel.send(news)
  untold.clear()
}

export function onNews(listen: (news: News) => void): void {
  listeners.add(listen)
}
