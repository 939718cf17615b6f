/** The schedule from a worker: the same digits, the same objects of the window, calculations read where the calculator is. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { type Schedule, scheduleOf } from '../../src/calc/connector/schedule.ts'
import type { Line } from '../../src/calc/types.ts'
import { demoConnector } from '../../src/store/demo-connector.ts'
import { run, type ScheduleEnd, type ScheduleJob } from '../../src/worker/schedule.ts'
import { type Order, serve, type Word } from '../../src/worker/serve.ts'
import { connectorOf, contactOf, DISCRETE, finished, lineOf } from '../calc/connector/some-connector.ts'

let words: Word<unknown>[] = []
let orders: Order<ScheduleJob>[] = []

/** A worker in this thread; everything that passes is copied, as between real ones. */
class FakeWorker {
  onmessage: ((event: { data: Word<ScheduleEnd> }) => void) | null = null
  private readonly port = {
    onmessage: null as ((event: MessageEvent<Order<ScheduleJob>>) => void) | null,
    postMessage: (word: Word<ScheduleEnd>) => {
      const data = structuredClone(word)
      words.push(data)
      queueMicrotask(() => this.onmessage?.({ data }))
    },
  }

  constructor() {
    serve(run, this.port)
  }

  postMessage(order: Order<ScheduleJob>): void {
    const data = structuredClone(order)
    orders.push(data)
    queueMicrotask(() => this.port.onmessage?.(new MessageEvent('message', { data })))
  }

  terminate(): void {}
}

beforeEach(() => {
  words = []
  orders = []
  vi.resetModules()
  vi.stubGlobal('window', {})
  vi.stubGlobal('Worker', FakeWorker)
})
afterEach(() => vi.unstubAllGlobals())

/** What is shown, from the first to the last. */
async function shownFor(connector: ScheduleJob['connector'], lines: readonly Line[]): Promise<readonly Schedule[]> {
  const { scheduleRun } = await import('../../src/state/schedule.ts')
  const { state, want } = scheduleRun(connector.id)
  const shown: Schedule[] = []
  await new Promise<void>((resolve, reject) => {
    state.subscribe(({ is, shown: one }) => {
      if (one !== undefined && one !== shown.at(-1)) shown.push(one)
      if (is === 'done') resolve()
      if (is === 'broken') reject(new Error('broken'))
    })
    want(connector, lines)
  })
  return shown
}

describe('a schedule from the worker', () => {
  it('says of a whole box what it says here, digit for digit, of the very lines and contacts that were asked about', async () => {
    const { connector, lines } = demoConnector()
    const [alone, whole, ...more] = await shownFor(connector, lines)
    expect(more).toEqual([])
    let expectedAlone: Schedule | undefined
    const watched = function* () {
      const running = scheduleOf(connector, lines)
      for (;;) {
        const step = running.next()
        if (step.done) return step.value
        expectedAlone ??= step.value.alone
        yield
      }
    }
    const expected = finished(watched())
    expect(whole).toEqual(expected)
    expect(alone).toEqual({ ...expectedAlone, asked: [] })
    for (const [i, row] of (whole?.rows ?? []).entries()) {
      expect(row.contact).toBe(connector.contacts[i])
      if (row.line !== undefined) expect(lines).toContain(row.line)
      expect(row.decided.line).toBe(expected.rows[i]?.decided.line)
    }
  })

  it('comes in pieces, none of more than sixteen contacts with their windows', async () => {
    const { connector, lines } = demoConnector()
    await shownFor(connector, lines)
    const sizes = words.flatMap((word) =>
      word.is === 'under-way' && word.found !== undefined ? [(word.found as { asked?: unknown[] }).asked?.length] : [],
    )
    expect(sizes).toEqual([undefined, 16, 16, 5])
  })

  it('has what was typed as a calculation worked out by the window, and asks for it once', async () => {
    const plain = lineOf('a', { ...DISCRETE, neededDb: '20' })
    const typed = lineOf('a', { ...DISCRETE, neededDb: '2*10' })
    const connector = connectorOf([contactOf('1', 'a')])
    const whole = (await shownFor(connector, [typed])).at(-1)
    const expected = finished(scheduleOf(connector, [plain]))
    expect(whole?.rows[0]?.headline).toBe(expected.rows[0]?.headline)
    expect(whole?.rows[0]?.verdict).toBe('ok')
    expect(orders).toHaveLength(2)
    await shownFor({ ...connector, id: 'j2' }, [{ ...typed, name: 'another' }])
    expect(orders).toHaveLength(3)
  })
})
