/**
 * What a connector of many contacts asks of its screen: 128 that differ opened until each has its mark, and a list of 128
 * and of 256 scrolled. Counted is the time the page's own thread works, which a busy machine does not change; the longest
 * turn as a ratio to a loop of a million complex multiply–adds run in the same page, of which a desk does 20 in 50 ms.
 * How long the opening works is printed beside it.
 */
import type { CDPSession, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Connector } from '../../src/calc/connector/types.ts'
import type { Fact, FactKey, Line } from '../../src/calc/types.ts'
import { LINE_KINDS } from '../../src/reference/line-kinds.ts'
import { demoComplaint } from '../../src/store/demo.ts'
import setup from '../e2e/support/built-site.ts'
import { busyDuring } from '../e2e/support/busy.ts'
import { putConnector } from '../e2e/support/put-connector.ts'
import { DESK, openSite, PHONE, type Site, type Visit } from '../e2e/support/site.ts'

const STEPS = 1_000_000
/** 50 ms of a desk */
const UNITS_TURN = 20
const FRAME_MS = 16
const FRAMES = 60
const ROUNDS = 2

let site: Site

beforeAll(async () => {
  setup()
  site = await openSite()
}, 120_000)
afterAll(() => site.close())

type Opened = { readonly visit: Visit; readonly page: Page; readonly cdp: CDPSession; readonly hash: string }

const kinds = LINE_KINDS.filter(({ barredWhy }) => barredWhy === undefined)

/** A connector of so many contacts, each with a line of its own and no two alike. */
function differing(count: number): { readonly connector: Connector; readonly lines: readonly Line[] } {
  const lines = Array.from({ length: count }, (_, i): Line => {
    const texts: Partial<Record<FactKey, string>> = {
      lineKind: kinds[i % kinds.length]?.id ?? '',
      bitRateHz: '110k',
      noiseHz: i % 3 === 0 ? '118M;137M' : '118M',
      neededDb: (9 + (i % 17) * (1 + i / 97)).toPrecision(4),
      noiseSourceOhm: i % 2 === 0 ? '1;10;50;150' : String(20 + i / 97),
      noiseLoadOhm: String(70 + i / 97),
    }
    const facts = Object.fromEntries(
      Object.entries(texts).map(([key, text]) => [key, { text, origin: { by: 'user' } } satisfies Fact]),
    )
    return { id: `l${i}`, name: `J1-${i + 1}`, gate: 'clear', trials: [], facts }
  })
  const connector: Connector = {
    ...{ id: 'j1', name: 'J1', shape: 'ring', texts: {}, suppressors: [], adjacent: [] },
    contacts: lines.map(({ id }, i) => ({ id: String(i + 1), type: 'line', lineId: id, texts: {} })),
    shared: { bondOhm: '1m', bondH: '20p' },
  }
  return { connector, lines }
}

/** A page at the Log of a device that holds a connector of so many contacts. */
async function withConnector(count: number, viewport: typeof DESK | typeof PHONE): Promise<Opened> {
  const visit = await site.visit({ viewport, serviceWorkers: 'block' })
  const { page } = visit
  const cdp = await visit.context.newCDPSession(page)
  await cdp.send('Performance.enable', { timeDomain: 'threadTicks' })
  await page.goto(visit.at('#/log'))
  await page.getByRole('button', { name: /demo/i }).waitFor()
  const complaint = { ...demoComplaint(), isDemo: false }
  const hash = await putConnector(page, { complaint, ...differing(count) })
  await page.reload()
  await page.getByRole('link', { name: complaint.title }).waitFor()
  return { visit, page, cdp, hash }
}

/** Milliseconds the page's thread has worked since it was loaded. */
async function workedMs(cdp: CDPSession): Promise<number> {
  const { metrics } = await cdp.send('Performance.getMetrics')
  return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN)
}

/** z ← z·q + c, |q| < 1, a million times; the least of several. */
async function unitMs({ page, cdp }: Opened): Promise<number> {
  const spent: number[] = []
  for (let i = 0; i < 8; i++) {
    const from = await workedMs(cdp)
    const sum = await page.evaluate((steps) => {
      let re = 0.3
      let im = 0.1
      for (let i = 0; i < steps; i++) {
        const next = re * 0.61 - im * 0.37 + 0.11
        im = re * 0.37 + im * 0.61 + 0.07
        re = next
      }
      return re + im
    }, STEPS)
    if (!(sum > 0)) throw new Error('nothing was calculated')
    spent.push((await workedMs(cdp)) - from)
  }
  return Math.min(...spent)
}

const rows = (page: Page) => page.locator('ul[aria-label="Contacts"] > li')

/** From the Log, with everything loaded, to a mark that was worked out on the first contact. */
async function paint({ visit, page, hash }: Opened): Promise<void> {
  await page.goto(visit.at(hash))
  await rows(page).first().waitFor()
  await rows(page).first().locator('.contact-row:is(.ok, .fails, .unknown, .marginal)').waitFor()
}

test('128 different contacts are opened in turns below 50 ms', {
  timeout: 300_000,
}, async () => {
  const ratios: { openMs: number; turnMs: number; unit: number }[] = []
  for (let round = 0; round < ROUNDS; round++) {
    const opened = await withConnector(128, DESK)
    const from = await workedMs(opened.cdp)
    await paint(opened)
    const openMs = (await workedMs(opened.cdp)) - from
    const unit = await unitMs(opened)
    await site.leave()
    // in a visit of its own: to trace is work, too
    const traced = await withConnector(128, DESK)
    const { longestMs } = await busyDuring(traced.page, () => paint(traced))
    await site.leave()
    ratios.push({ openMs, turnMs: longestMs, unit })
  }
  const least = (of: (one: (typeof ratios)[number]) => number) => Math.min(...ratios.map(of))
  const [open, turn] = [least(({ openMs, unit }) => openMs / unit), least(({ turnMs, unit }) => turnMs / unit)]
  console.log(
    `bench, a screen of 128 contacts: painted after ${least(({ openMs }) => openMs).toFixed(0)} ms of the page's thread ` +
      `(${open.toPrecision(3)} units), longest turn ${least(({ turnMs }) => turnMs).toFixed(0)} ms (${turn.toPrecision(3)}), ` +
      `unit ${least(({ unit }) => unit).toPrecision(3)} ms`,
  )
  expect(turn).toBeLessThan(UNITS_TURN)
})

test.each([128, 256])(
  'a list of %d contacts is scrolled within a frame of work',
  { timeout: 300_000 },
  async (count) => {
    const opened = await withConnector(count, PHONE)
    const { page, cdp } = opened
    await paint(opened)
    await page.getByText('Working out every contact').waitFor({ state: 'detached', timeout: 120_000 })
    const from = await workedMs(cdp)
    const movedPx = await page.evaluate(async (frames) => {
      const at = scrollY
      for (let i = 0; i < frames; i++) {
        scrollBy(0, 120)
        await new Promise((done) => requestAnimationFrame(done))
      }
      return scrollY - at
    }, FRAMES)
    const frameMs = ((await workedMs(cdp)) - from) / FRAMES
    console.log(`bench, ${count} contacts scrolled: ${frameMs.toPrecision(3)} ms of the page's thread a frame`)
    await site.leave()
    expect(movedPx).toBeGreaterThan(3000)
    expect(frameMs).toBeLessThan(FRAME_MS)
  },
)
