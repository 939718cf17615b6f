/**
 * How much slower than a desk left alone this machine is at the moment, by what laying out a text costs a page with all that
 * stands in it: a large page makes it dearer than a small one, so that it says something of large pages alone.
 */
import type { Page } from 'playwright-core'
import { costsOf, FRESH_SAMPLES, layText, samplesIn } from './slowness.ts'
import type { Traced } from './turns.ts'

/** What laying out the text costs on the desk the bounds are set for, while nothing else runs on it: the least of many. */
const DESK_TEXT_MS = 5.8

/** Texts laid out in the page itself, for whoever traces it meanwhile. */
export async function laySamples(page: Page): Promise<void> {
  const lay = `performance.mark('sample'); (${layText})(document)`
  for (let sample = 0; sample < FRESH_SAMPLES; sample++) await page.evaluate(lay)
}

/** By the texts laid out while it was traced: programs that share a machine's caches make all work dearer. */
export const slowness = ({ turns, marks }: Traced): number =>
  Math.min(...costsOf(samplesIn(marks), turns)) / DESK_TEXT_MS
