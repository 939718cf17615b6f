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

/** When a message left one thread, and when `to` took it up. */
export type Message = { readonly to: Turn['by']; readonly sentMs: number; readonly heardMs: number }

/** In the order of time. */
export type Traced = {
  readonly turns: readonly Turn[]
  readonly marks: readonly Mark[]
  /** where `more` asks for `devtools.timeline` */
  readonly messages: readonly Message[]
}

type TraceEvent = {
  readonly name: string
  readonly cat?: string
  readonly ph: string
  readonly pid: number
  readonly tid: number
  readonly ts: number
  readonly dur?: number
  readonly tdur?: number
  readonly args?: { readonly name?: string; readonly data?: { readonly traceId?: number } }
}

const byThread = (thread: string): Turn['by'] | undefined =>
  thread === 'CrRendererMain' ? 'page' : /^(Dedicated|Service)Worker/.test(thread) ? 'worker' : undefined

/** Runs `job` and tells what the page did meanwhile. `more`: what is traced besides. */
export async function tracedDuring(
  page: Page,
  job: () => Promise<unknown>,
  more: readonly string[] = [],
): Promise<Traced> {
  const browser = page.context().browser()
  if (browser === null) throw new Error('this page has no browser of its own')
  await browser.startTracing(page, { categories: ['toplevel', 'blink.user_timing', '__metadata', ...more] })
  await job()
  const text = (await browser.stopTracing()).toString('utf8')
  const traced = JSON.parse(text) as { readonly traceEvents: readonly TraceEvent[] }
  // they come thread by thread
  const traceEvents = traced.traceEvents.toSorted((a, b) => a.ts - b.ts)
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
  const sent = new Map(
    traceEvents
      .filter(({ name }) => name === 'SchedulePostMessage')
      .map(({ args, ts }) => [args?.data?.traceId, ts / 1000]),
  )
  const messages = traceEvents.flatMap(({ name, pid, tid, ts, args }) => {
    const to = byThread(nameOf.get(`${pid} ${tid}`) ?? '')
    const sentMs = sent.get(args?.data?.traceId)
    return name === 'HandlePostMessage' && to !== undefined && sentMs !== undefined
      ? [{ to, sentMs, heardMs: ts / 1000 }]
      : []
  })
  return { turns, marks, messages }
}
