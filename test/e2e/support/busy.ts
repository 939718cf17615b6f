/** What a page works for something, in time of its processor: what else runs on this machine does not count. */
import type { Page } from 'playwright-core'
import { tracedDuring } from './turns.ts'

export type Busy = {
  /** of the page and of its workers together */
  readonly busyMs: number
  /** the longest turn of the page itself */
  readonly longestMs: number
}

/** Runs `job` and tells what the page was busy with meanwhile. */
export async function busyDuring(page: Page, job: () => Promise<unknown>): Promise<Busy> {
  const { turns } = await tracedDuring(page, job)
  return {
    busyMs: turns.reduce((sum, { workedMs }) => sum + workedMs, 0),
    longestMs: Math.max(...turns.filter(({ by }) => by === 'page').map(({ workedMs }) => workedMs)),
  }
}
