/**
 * How much slower than a desk left alone this machine is at the moment, by what laying out a text costs a page with all that
 * stands in it: a large page makes it dearer than a small one, so that it says something of large pages alone.
 */
import type { Page } from 'playwright-core'
import type { Traced } from './turns.ts'

/** What laying out the sample costs on the desk the bounds are set for, while nothing else runs on it. */
const DESK_SAMPLE_MS = 5.8
/** on a page just opened, the first ones meet styles and scripts that are not */
const FRESH_SAMPLES = 16

/** A text that is put into the page, laid out and taken off: work of the kind a key causes, the same on every page. */
async function laySample(page: Page): Promise<void> {
  await page.evaluate(() => {
    performance.mark('sample')
    const box = document.body.appendChild(document.createElement('div'))
    box.style.cssText = 'position:fixed;inset-block-start:-9999px;inline-size:300px'
    for (let line = 0; line < 120; line++) {
      const paragraph = box.appendChild(document.createElement('p'))
      for (let word = 0; word < 5; word++) {
        const part = paragraph.appendChild(document.createElement('span'))
        part.textContent = `${line * word} words of some length `
      }
    }
    if (!(box.offsetHeight > 0)) throw new Error('nothing was laid out')
    box.remove()
  })
}

/** Several of them, for whoever traces the page meanwhile. */
export async function laySamples(page: Page): Promise<void> {
  for (let sample = 0; sample < FRESH_SAMPLES; sample++) await laySample(page)
}

/** By the samples laid out while it was traced: programs that share a machine's caches make all work dearer. */
export function slowness({ turns, marks }: Traced): number {
  const samples = marks
    .filter(({ name }) => name === 'sample')
    .flatMap(({ atMs }) => turns.filter(({ by, fromMs, toMs }) => by === 'page' && fromMs <= atMs && atMs <= toMs))
  return Math.min(...samples.map(({ workedMs }) => workedMs)) / DESK_SAMPLE_MS
}
