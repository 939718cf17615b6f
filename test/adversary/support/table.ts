/** Fights a stretch of windows, counts, and prints the table. */
import type { Verdict } from '../../../src/calc/types.ts'
import { type Fought, fight } from './battle.ts'
import { LINES } from './lines.ts'
import { randomWindow } from './random-window.ts'
import { simplest } from './simplify.ts'

export const SEED = Number(process.env['SEED'] ?? 70_425)
export const WINDOWS = Number(process.env['WINDOWS'] ?? 2000)

export type Refutation = {
  readonly index: number
  readonly verdict: Verdict
  readonly why: string
  readonly address: string
}
export type Tally = {
  readonly count: Readonly<Record<Verdict, number>>
  /** yes with a part that was searched, no for noise inside the band, assumptions doubted */
  readonly fitted: number
  readonly inBand: number
  readonly doubts: number
  /** a choke that does it alone; openers followed, and those of them by a choke or a line-to-line capacitor */
  readonly chokesAlone: number
  readonly openers: number
  readonly modeOpeners: number
  readonly refuted: readonly Refutation[]
}

/** A tenth of it when the machine is quiet. */
export const TIMEOUT_MS = Math.max(600_000, 600 * WINDOWS)

const SIMPLIFIED = 8

export const addressOf = (texts: Readonly<Record<string, string>>): string =>
  `window?${Object.entries(texts)
    .filter(([, text]) => text !== '')
    .map(([key, text]) => `${key}=${encodeURIComponent(text)}`)
    .join('&')}`

/** Every window from `first` on in steps of `step`, up to the number asked for. */
export function battle(first: number, step: number): Tally {
  const began = Date.now()
  const count: Record<Verdict, number> = { ok: 0, marginal: 0, fails: 0, unknown: 0 }
  const refuted: Refutation[] = []
  const byLimit = new Map<string, Record<Verdict, number>>()
  let [fitted, inBand, doubts, chokesAlone, openers, modeOpeners] = [0, 0, 0, 0, 0, 0]
  for (let index = first; index < WINDOWS; index += step) {
    const window = randomWindow(SEED, index)
    const fought: Fought = fight(window)
    count[fought.verdict]++
    const rule = LINES[window.facts.lineKind]?.limit.is ?? ''
    const row = byLimit.get(rule) ?? { ok: 0, marginal: 0, fails: 0, unknown: 0 }
    row[fought.verdict]++
    byLimit.set(rule, row)
    if (fought.isFitted) fitted++
    if (fought.isInBand && fought.verdict === 'fails') inBand++
    doubts += fought.doubts
    if (fought.isChokeAlone) chokesAlone++
    openers += fought.openers
    modeOpeners += fought.modeOpeners
    if (fought.refutation !== undefined)
      refuted.push({
        index,
        verdict: fought.verdict,
        why: fought.refutation,
        // a shorter one only while there are few: each costs as much as dozens of windows
        address: addressOf(refuted.length < SIMPLIFIED ? simplest(window, fought.refutation) : window.texts),
      })
  }
  const line = (name: string, c: Record<Verdict, number>) =>
    `${name.padEnd(12)} ok ${c.ok}  marginal ${c.marginal}  fails ${c.fails}  unknown ${c.unknown}`
  console.log(
    [
      `windows ${first} + ${step}·n below ${WINDOWS}, seed ${SEED}, ${((Date.now() - began) / 1000).toFixed(1)} s`,
      line('all', count),
      ...[...byLimit].map(([name, c]) => line(`  ${name}`, c)),
      `yes with a part, searched: ${fitted}; no, in band: ${inBand}; contraries tried: ${doubts}; a choke alone: ${chokesAlone}; openers followed: ${openers}, ${modeOpeners} of them chokes or line to line; refuted: ${refuted.length}`,
      ...refuted.slice(0, 40).map(({ index, verdict, why, address }) => `#${index} ${verdict}: ${why}\n   ${address}`),
    ].join('\n'),
  )
  return { count, fitted, inBand, doubts, chokesAlone, openers, modeOpeners, refuted }
}
