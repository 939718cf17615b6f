/** What a page's own thread has worked since it was loaded, in time of the processor. */
import type { CDPSession, Page } from 'playwright-core'

/** The page's own session, which counts what its thread works and not what passes on the clock. */
export async function counted(page: Page): Promise<CDPSession> {
  const cdp = await page.context().newCDPSession(page)
  await cdp.send('Performance.enable', { timeDomain: 'threadTicks' })
  return cdp
}

/** Milliseconds: all of the work, or what of it scripts took. */
export async function workedMs(
  cdp: CDPSession,
  of: 'TaskDuration' | 'ScriptDuration' = 'TaskDuration',
): Promise<number> {
  const { metrics } = await cdp.send('Performance.getMetrics')
  return 1000 * (metrics.find(({ name }) => name === of)?.value ?? Number.NaN)
}
