/**
 * Every truth asked to its end by honest answerers who know nothing of the table but their own complaint, with nothing,
 * a third and most of it unknown. The printed table is test/golden/guide-simulation.txt; UPDATE=1 writes it anew.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { EVIDENCE } from '../../../src/guide/evidence/evidence.ts'
import { MOST_ANSWERS } from '../../../src/guide/investigate/next.ts'
import type { Table } from '../../../src/guide/investigate/table.ts'
import { SUSPECTS } from '../../../src/guide/suspects/suspects.ts'
import { rightCures, truths } from './honest.ts'
import { seeded, walk } from './walk.ts'

const TABLE: Table = { suspects: SUSPECTS, evidence: EVIDENCE }
const SEED = 20_261_126
const REPEATS = 4
const GOLDEN = join(import.meta.dirname, '../../golden/guide-simulation.txt')

type Count = {
  readonly unknown: number
  walks: number
  right: number
  wrongProven: number
  wrongLikely: number
  measure: number
  /** ended by the cap on answers, not because nothing would decide any more */
  capped: number
  readonly lengths: number[]
  readonly toCard: number[]
  readonly wrong: string[]
}

function run(unknown: number, most = MOST_ANSWERS): Count {
  const random = seeded(SEED + Math.round(100 * unknown))
  const count: Count = {
    unknown,
    walks: 0,
    right: 0,
    wrongProven: 0,
    wrongLikely: 0,
    measure: 0,
    capped: 0,
    lengths: [],
    toCard: [],
    wrong: [],
  }
  for (const truth of truths(SUSPECTS))
    for (let repeat = 0; repeat < REPEATS; repeat++) {
      const { found, asked, toCard, isCapped } = walk(TABLE, truth, { unknown, random, most })
      count.walks += 1
      count.lengths.push(asked.length)
      count.toCard.push(toCard)
      if (isCapped) count.capped += 1
      if (found === undefined) count.measure += 1
      else if (rightCures(truth).includes(found.cure.suspect.id)) count.right += 1
      else {
        count[found.sure === 'proven' ? 'wrongProven' : 'wrongLikely'] += 1
        count.wrong.push(`${truth.members.map(({ id }) => id).join('+')} ${truth.symptom} -> ${found.cure.suspect.id}`)
      }
    }
  count.lengths.sort((a, b) => a - b)
  count.toCard.sort((a, b) => a - b)
  return count
}

const percent = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)} %`.padStart(8)
const at = (sorted: readonly number[], share: number): number => sorted[Math.ceil(share * sorted.length) - 1] ?? 0

const UNKNOWN = [0, 0.3, 0.6]
const counts = UNKNOWN.map((unknown) => run(unknown))
/** The same walks with no cap: what the questions come to by themselves. */
const uncapped = UNKNOWN.map((unknown) => run(unknown, Number.POSITIVE_INFINITY))

const HEAD =
  ' unknown   walks     right  wrong proven, likely   measure    capped  median   90 %  most  to a card: median  most'

const rowOf = (count: Count): string =>
  [
    percent(count.unknown, 1),
    String(count.walks).padStart(6),
    percent(count.right, count.walks),
    String(count.wrongProven).padStart(6),
    String(count.wrongLikely).padStart(6),
    percent(count.measure, count.walks),
    percent(count.capped, count.walks),
    String(at(count.lengths, 0.5)).padStart(6),
    String(at(count.lengths, 0.9)).padStart(4),
    String(at(count.lengths, 1)).padStart(4),
    String(at(count.toCard, 0.5)).padStart(17),
    String(at(count.toCard, 1)).padStart(4),
  ].join('  ')

function printed(): string {
  return [
    `${truths(SUSPECTS).length} truths, ${REPEATS} walks each, seed ${SEED}. Answers counted up to the cause, safety questions included.`,
    `Capped: after ${MOST_ANSWERS} answers the guide stops asking and lists the open tests, though one of them would still decide.`,
    '',
    HEAD,
    ...counts.map(rowOf),
    '',
    'The same without the cap:',
    HEAD,
    ...uncapped.map(rowOf),
    '',
    ...counts.flatMap(({ unknown, wrong }) =>
      wrong.map((line) => `likely but wrong at ${percent(unknown, 1).trim()}: ${line}`),
    ),
    '',
  ].join('\n')
}

describe('the guide against honest answerers', () => {
  it.each(counts)('never proves another cure ($unknown unknown)', ({ wrongProven }) => {
    expect(wrongProven).toBe(0)
  })

  it('reaches the right cure in at least 95 % when everything can be answered', () => {
    const [whole] = counts
    expect((whole?.right ?? 0) / (whole?.walks ?? 1)).toBeGreaterThanOrEqual(0.95)
  })

  it('takes at most nine answers in the median, and never more than sixteen', () => {
    expect(at(counts[0]?.lengths ?? [], 0.5)).toBeLessThanOrEqual(9)
    for (const { lengths } of counts) expect(at(lengths, 1)).toBeLessThanOrEqual(16)
  })

  it('takes at most ten answers in the median to a decision or a card, whatever is unknown', () => {
    for (const { toCard } of counts) expect(at(toCard, 0.5)).toBeLessThanOrEqual(10)
  })

  it('is bitten by its cap in one walk of twenty at most when everything can be answered', () => {
    const [whole] = counts
    expect((whole?.capped ?? 0) / (whole?.walks ?? 1)).toBeLessThanOrEqual(0.05)
    for (const { wrongProven } of uncapped) expect(wrongProven).toBe(0)
  })

  it('ends in measuring when nothing at all is known', () => {
    const oneEach = new Map(truths(SUSPECTS).map((truth) => [truth.symptom, truth]))
    for (const truth of oneEach.values())
      expect(walk(TABLE, truth, { unknown: 1, random: seeded(1) }).found).toBeUndefined()
  })

  it('prints the table that was reviewed', () => {
    if (process.env['UPDATE'] === '1') writeFileSync(GOLDEN, printed())
    expect(printed()).toBe(readFileSync(GOLDEN, 'utf8'))
  })
})
