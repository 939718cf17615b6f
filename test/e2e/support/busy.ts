/** What a page works for something, in time of its processor: what else runs on this machine does not count. */
import type { Page } from 'playwright-core'

export type Busy = {
  /** of the page and of its workers together */
  readonly busyMs: number
  /** the longest turn of the page itself */
  readonly longestMs: number
}

type TraceEvent = {
  readonly name: string
  readonly ph: string
  readonly pid: number
  readonly tid: number
  readonly tdur?: number
  readonly args?: { readonly name?: string }
}

/** Runs `job` and tells what the page was busy with meanwhile. */
export async function busyDuring(page: Page, job: () => Promise<unknown>): Promise<Busy> {
  const browser = page.context().browser()
  if (browser === null) throw new Error('this page has no browser of its own')
  await browser.startTracing(page, { categories: ['toplevel', '__metadata'] })
  await job()
  const text = (await browser.stopTracing()).toString('utf8')
  const { traceEvents } = JSON.parse(text) as { readonly traceEvents: readonly TraceEvent[] }
  const nameOf = new Map(
    traceEvents
      .filter(({ name }) => name === 'thread_name')
      .map(({ pid, tid, args }) => [`${pid} ${tid}`, args?.name ?? '']),
  )
  const turns = traceEvents.flatMap(({ name, ph, pid, tid, tdur }) =>
    ph === 'X' && tdur !== undefined && /RunTask$/.test(name)
      ? [{ thread: nameOf.get(`${pid} ${tid}`) ?? '', ms: tdur / 1000 }]
      : [],
  )
  const main = turns.filter(({ thread }) => thread === 'CrRendererMain')
  const workers = turns.filter(({ thread }) => /^DedicatedWorker/.test(thread))
  if (main.length === 0) throw new Error('no turn of the page was traced')
  return {
    busyMs: [...main, ...workers].reduce((sum, { ms }) => sum + ms, 0),
    longestMs: Math.max(...main.map(({ ms }) => ms)),
  }
}
