/** The turns of a page and of its workers, in time of the processor: what else runs on this machine does not count. */
import type { Page } from 'playwright-core'

export type Turn = {
  readonly by: 'page' | 'worker'
  readonly fromMs: number
  readonly toMs: number
  /** what the processor worked in it */
  readonly workedMs: number
}

/** What the page itself noted with `performance.mark`. */
export type Mark = { readonly name: string; readonly atMs: number }

export type Traced = { readonly turns: readonly Turn[]; readonly marks: readonly Mark[] }

type TraceEvent = {
  readonly name: string
  readonly cat?: string
  readonly ph: string
  readonly pid: number
  readonly tid: number
  readonly ts: number
  readonly dur?: number
  readonly tdur?: number
  readonly args?: { readonly name?: string }
}

const byThread = (thread: string): Turn['by'] | undefined =>
  thread === 'CrRendererMain' ? 'page' : /^DedicatedWorker/.test(thread) ? 'worker' : undefined

/** Runs `job` and tells what the page did meanwhile. */
export async function tracedDuring(page: Page, job: () => Promise<unknown>): Promise<Traced> {
  const browser = page.context().browser()
  if (browser === null) throw new Error('this page has no browser of its own')
  await browser.startTracing(page, { categories: ['toplevel', 'blink.user_timing', '__metadata'] })
  await job()
  const text = (await browser.stopTracing()).toString('utf8')
  const { traceEvents } = JSON.parse(text) as { readonly traceEvents: readonly TraceEvent[] }
  const nameOf = new Map(
    traceEvents
      .filter(({ name }) => name === 'thread_name')
      .map(({ pid, tid, args }) => [`${pid} ${tid}`, args?.name ?? '']),
  )
  const turns = traceEvents.flatMap(({ name, ph, pid, tid, ts, dur, tdur }) => {
    const by = byThread(nameOf.get(`${pid} ${tid}`) ?? '')
    return by !== undefined && ph === 'X' && dur !== undefined && tdur !== undefined && /RunTask$/.test(name)
      ? [{ by, fromMs: ts / 1000, toMs: (ts + dur) / 1000, workedMs: tdur / 1000 }]
      : []
  })
  if (!turns.some(({ by }) => by === 'page')) throw new Error('no turn of the page was traced')
  const marks = traceEvents
    .filter(({ cat }) => cat === 'blink.user_timing')
    .map(({ name, ts }) => ({ name, atMs: ts / 1000 }))
  return { turns, marks: marks.toSorted((a, b) => a.atMs - b.atMs) }
}
