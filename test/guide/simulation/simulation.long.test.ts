/**
 * Every truth asked to its end by honest answerers who know nothing of the table but their own complaint, with nothing,
 * a third and most of it unknown. The printed table is test/golden/guide-simulation.txt; UPDATE=1 writes it anew.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { EVIDENCE } from '../../../src/guide/evidence/evidence.ts'
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
  readonly lengths: number[]
  readonly wrong: string[]
}

function run(unknown: number): Count {
  const random = seeded(SEED + Math.round(100 * unknown))
  const count: Count = {
    unknown,
    walks: 0,
    right: 0,
    wrongProven: 0,
    wrongLikely: 0,
    measure: 0,
    lengths: [],
    wrong: [],
  }
  for (const truth of truths(SUSPECTS))
    for (let repeat = 0; repeat < REPEATS; repeat++) {
      const { found, asked } = walk(TABLE, truth, unknown, random)
      count.walks += 1
      count.lengths.push(asked.length)
      if (found === undefined) count.measure += 1
      else if (rightCures(truth).includes(found.cure.suspect.id)) count.right += 1
      else {
        count[found.sure === 'proven' ? 'wrongProven' : 'wrongLikely'] += 1
        count.wrong.push(`${truth.members.map(({ id }) => id).join('+')} ${truth.symptom} -> ${found.cure.suspect.id}`)
      }
    }
  count.lengths.sort((a, b) => a - b)
  return count
}

const percent = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)} %`.padStart(8)
const at = ({ lengths }: Count, share: number): number => lengths[Math.ceil(share * lengths.length) - 1] ?? 0

const counts = [0, 0.3, 0.6].map(run)

function printed(): string {
  const rows = counts.map((count) =>
    [
      percent(count.unknown, 1),
      String(count.walks).padStart(6),
      percent(count.right, count.walks),
      String(count.wrongProven).padStart(6),
      String(count.wrongLikely).padStart(6),
      percent(count.measure, count.walks),
      String(at(count, 0.5)).padStart(6),
      String(at(count, 0.9)).padStart(4),
      String(at(count, 1)).padStart(4),
    ].join('  '),
  )
  return [
    `${truths(SUSPECTS).length} truths, ${REPEATS} walks each, seed ${SEED}. Answers counted up to the cause, safety questions included.`,
    '',
    ' unknown   walks     right  wrong proven, likely   measure  median   90 %  most',
    ...rows,
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
    expect(at(counts[0] ?? run(0), 0.5)).toBeLessThanOrEqual(9)
    for (const count of counts) expect(at(count, 1)).toBeLessThanOrEqual(16)
  })

  it('ends in measuring when nothing at all is known', () => {
    const oneEach = new Map(truths(SUSPECTS).map((truth) => [truth.symptom, truth]))
    for (const truth of oneEach.values()) expect(walk(TABLE, truth, 1, seeded(1)).found).toBeUndefined()
  })

  it('prints the table that was reviewed', () => {
    if (process.env['UPDATE'] === '1') writeFileSync(GOLDEN, printed())
    expect(printed()).toBe(readFileSync(GOLDEN, 'utf8'))
  })
})
