/**
 * How much slower than a desk left alone this machine is at a moment, by what a sample of a page's work costs it then: a
 * text that is laid out, and scripts met for the first time, as a page has them that was just opened. Either alone misleads:
 * of two machines that lay out alike one ran scripts half as fast again as the other. And a machine that is shared is fast
 * and slow by turns of a second or so: what is measured is held against the samples taken beside it. A machine faster than
 * that desk counts as itself: on one on which a sample took 0.56 of its 25 ms, a key took some 0.8 of what it takes there.
 */
import type { CDPSession, Page } from 'playwright-core'
import type { Traced } from './turns.ts'
import { workedMs } from './worked.ts'

/** What the sample costs on the desk the bounds are set for, while nothing else runs on it: the middle of many. */
const DESK_SAMPLE_MS = 25
/** of which the middle one counts for what is beside them */
const BESIDE = 5
/** on a page just opened, the first ones meet styles and scripts that are not */
export const FRESH_SAMPLES = 16
const FUNCTIONS = 240

let samples = 0

/** Functions nobody has met, each called twice: read, compiled and run for the first time, with the objects they leave. */
function freshScript(): string {
  samples += 1
  const own = (i: number): string => `function f${i}(a) {
    const found = { at: a * ${samples + i}, name: 'part ${i} of ${samples}', rows: [a, ${i}, a + ${i}].map((one) => ({ one, is: one > ${i} })) }
    for (const { one, is } of found.rows) found.at += is ? Math.sqrt(one + ${i}) : Math.log1p(one)
    kept.set(found.name, found)
    return found.name.length + (a > ${i} ? f${Math.max(0, i - 1)}(-a) : 0)
  }`
  const all = Array.from({ length: FUNCTIONS }, (_, i) => i)
  return `const kept = new Map(); ${all.map(own).join('\n')}
    let sum = 0; ${all.map((i) => `sum += f${i}(${i}.5) + f${i}(${i}.25)`).join(';')}
    const ordered = [...kept.values()].sort((a, b) => a.at - b.at).map(({ name, at }) => ({ name, at: at / sum }))
    if (ordered.length !== ${FUNCTIONS}) throw new Error('a function was not run')`
}

/** A text that is put into a document, laid out and taken off. Handed to the page as it is written here. */
export function layText(to: Document): void {
  const box = to.body.appendChild(to.createElement('div'))
  box.style.cssText = 'position:fixed;inset-block-start:-9999px;inline-size:300px'
  for (let line = 0; line < 120; line++) {
    const paragraph = box.appendChild(to.createElement('p'))
    for (let word = 0; word < 5; word++) {
      const part = paragraph.appendChild(to.createElement('span'))
      part.textContent = `${line * word} words of some length `
    }
  }
  if (!(box.offsetHeight > 0)) throw new Error('nothing was laid out')
  box.remove()
}

/** A document of its own within the page's process: in the page's, the styles of the app would make the sample dear. */
const putFrame = (page: Page): Promise<number> =>
  page.evaluate(() => {
    performance.mark('sampling')
    const frame = document.body.appendChild(document.createElement('iframe'))
    frame.id = 'sample'
    frame.style.cssText = 'position:fixed;inset-block-start:-9999px;inline-size:300px'
    return document.body.offsetHeight
  })

const takeFrame = (page: Page): Promise<void> => page.evaluate(() => document.getElementById('sample')?.remove())

/** Work of the kind a key and an opening cause: a text put into a document, laid out and taken off, then the scripts. */
const work = (page: Page): Promise<void> =>
  page.evaluate(`(() => {
    performance.mark('sample')
    ;(${layText})(document.getElementById('sample').contentDocument)
    ${freshScript()}
  })()`)

/** Samples, for whoever traces the page meanwhile: what the page notes as `sampling` begins each. */
export async function takeSamples(page: Page, count: number = FRESH_SAMPLES): Promise<void> {
  for (let sample = 0; sample < count; sample++) {
    await putFrame(page)
    await work(page)
    await takeFrame(page)
  }
}

/** How slow the machine was at a moment that was traced, by the samples nearest to it. */
export function slownessAt({ turns, marks }: Traced, atMs: number): number {
  const nearest = samplesIn(marks)
    .toSorted((a, b) => Math.abs(a.atMs - atMs) - Math.abs(b.atMs - atMs))
    .slice(0, BESIDE)
  return slownessBy(costsOf(nearest, turns))
}

export const samplesIn = (marks: Traced['marks']): Traced['marks'] => marks.filter(({ name }) => name === 'sample')

/** What each of these samples cost. */
export const costsOf = (taken: Traced['marks'], turns: Traced['turns']): readonly number[] =>
  taken
    .flatMap(({ atMs }) => turns.filter(({ by, fromMs, toMs }) => by === 'page' && fromMs <= atMs && atMs <= toMs))
    .map(({ workedMs }) => workedMs)

/** How slow it is now, of a page that was just opened, and is counted and not traced. */
export async function slownessNow(page: Page, cdp: CDPSession): Promise<number> {
  const costs: number[] = []
  for (let sample = 0; sample < FRESH_SAMPLES; sample++) {
    await putFrame(page)
    const before = await workedMs(cdp)
    await work(page)
    costs.push((await workedMs(cdp)) - before)
    await takeFrame(page)
  }
  return slownessBy(costs)
}

const slownessBy = (samplesMs: readonly number[]): number => Math.max(1, middle(samplesMs) / DESK_SAMPLE_MS)

export const middle = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN
