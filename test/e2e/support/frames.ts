/**
 * A page that the browser stopped drawing. On two runs in some thousand pages one page alone got no more frames: its
 * scripts went on, whatever waits for a frame (a tap, a click) waited in vain, and its neighbours were drawn. Why is
 * not known: the run tells of it, and of what brought frames back; where nothing does, the test fails.
 */
import type { BrowserContext, Page } from 'playwright-core'

/** Seconds that a page whose clock runs may be without the frame it asked for. */
const PATIENCE_S = 3
/** What each way to a new surface is given. */
const MOST_MS = 2_000

declare global {
  interface Window {
    noteNoFrame?: () => void
  }
}

const isDrawn = (page: Page): Promise<boolean> =>
  page.evaluate(
    (mostMs) =>
      new Promise<boolean>((done) => {
        setTimeout(() => done(false), mostMs)
        requestAnimationFrame(() => done(true))
      }),
    MOST_MS,
  )

const within = (work: Promise<unknown>): Promise<unknown> =>
  Promise.race([work, new Promise((done) => setTimeout(done, MOST_MS))])

/** From the mildest: a picture taken, the page put in front, its window made one pixel taller and back. */
const WAYS: Readonly<Record<string, (page: Page) => Promise<unknown>>> = {
  'a moment': () => Promise.resolve(),
  'a picture': async (page) => {
    const session = await page.context().newCDPSession(page)
    await session.send('Page.captureScreenshot', { format: 'jpeg', quality: 1 })
    await session.detach()
  },
  'the front': (page) => page.bringToFront(),
  'another size': async (page) => {
    const size = page.viewportSize()
    if (size === null) return
    // two sizes within one frame are none
    const taken = page.evaluate(
      (mostMs) =>
        new Promise((done) => {
          addEventListener('resize', done, { once: true })
          setTimeout(done, mostMs)
        }),
      MOST_MS / 2,
    )
    await Promise.all([taken, page.setViewportSize({ ...size, height: size.height + 1 })])
    await page.setViewportSize(size)
  },
}

/** What brought the frames of a page back. */
async function revive(page: Page): Promise<string> {
  for (const [way, go] of Object.entries(WAYS)) {
    await within(go(page))
    if (await isDrawn(page)) return `${way} brought them back`
  }
  return 'nothing brought them back'
}

/** Watches every page of a context for frames, and tells of one that gets none. */
export async function keepDrawn(context: BrowserContext, tell: (text: string) => void): Promise<void> {
  await context.exposeBinding('noteNoFrame', async ({ page }) => {
    // the page may be closed while its frames are looked for
    const found = await revive(page).catch(() => 'it was left meanwhile')
    tell(`${new URL(page.url()).hash || page.url()}: the browser drew no frame for ${PATIENCE_S} s; ${found}`)
  })
  await context.addInitScript((patience) => {
    if (window !== window.top) return
    let owed = 0
    setInterval(() => {
      if (document.visibilityState !== 'visible') return
      if (owed === 0) {
        owed = 1
        requestAnimationFrame(() => {
          owed = 0
        })
      } else if (++owed === patience + 1) window.noteNoFrame?.()
    }, 1000)
  }, PATIENCE_S)
}
