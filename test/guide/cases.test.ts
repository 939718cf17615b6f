/**
 * Documented complaints walked twice: with only what the caller knew at first, and with the recorded results. Whatever
 * the guide asks that is not in the record is answered "don't know". The printed table is golden; UPDATE=1 writes it.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { isEvidence, replay } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import type { Answers, Outcome, Position } from '../../src/guide/types.ts'
import golden from '../golden/guide-cases.json' with { type: 'json' }

type Case = {
  readonly id: string
  readonly document: string
  readonly told: Answers
  readonly found: Answers
  readonly ok: readonly string[]
  readonly never: readonly string[]
  readonly barred?: boolean
  readonly open?: boolean
  readonly notProven?: boolean
}

const cases = golden.cases as unknown as readonly Case[]
const TABLE = join(import.meta.dirname, '../golden/guide-cases.txt')

type Walked = {
  readonly position: Position
  readonly outcome: Outcome
  readonly asked: number
  /** every cure the guide had in hand on the way, and the class of the result */
  readonly reached: ReadonlySet<string>
}

/** Repairs are written down when their suspect is what the guide found. */
function repairOf(position: Position, known: Answers): readonly [string, string] | undefined {
  const id = `after-${position.found?.cure.suspect.id}`
  const how = known[id]
  return how === undefined || position.answers[id] !== undefined ? undefined : [id, how]
}

/** A test that opens a circuit waits for a clear gate. */
const canDo = (position: Position, id: string): boolean =>
  position.gate === 'clear' || GUIDE.evidence.find((item) => item.id === id)?.opens !== true

/** Where the guide says to measure, the card whose result is in the record is taken from its list. */
const isNew = (position: Position, known: Answers, id: string): boolean =>
  known[id] !== undefined && position.answers[id] !== known[id]

function walk(known: Answers): Walked {
  let answers: Answers = {}
  const reached = new Set<string>()
  for (let asked = 0; asked < 60; asked++) {
    const position = replay(GUIDE, answers)
    if (position.found !== undefined) reached.add(position.found.cure.suspect.cure)
    const repair = repairOf(position, known)
    if (repair !== undefined) answers = { ...answers, [repair[0]]: repair[1] }
    else if (isEvidence(position.current))
      answers = { ...answers, [position.current.id]: known[position.current.id] ?? 'dont-know' }
    else {
      const test = position.openTests.find(({ id }) => canDo(position, id) && isNew(position, known, id))
      if (position.current.class !== 'measure' || test === undefined)
        return { position, outcome: position.current, asked, reached: reached.add(position.current.class) }
      answers = { ...answers, [test.id]: known[test.id] ?? '' }
    }
  }
  throw new Error('the guide never ended')
}

/** `cure`: a right one; `card`: measuring, with a test of the record (or of its proof) among the open ones. */
function endOf(each: Case, { position, outcome }: Walked): string {
  const id = position.found?.cure.suspect.id
  if (id !== undefined && each.ok.includes(id)) return `cure ${id} (${position.found?.sure})`
  const open = position.openTests.map((test) => test.id)
  const proofs = GUIDE.suspects.filter((suspect) => each.ok.includes(suspect.id)).map(({ proof }) => proof)
  const card = [...Object.keys(each.found), ...proofs].find((wanted) => open.includes(wanted))
  if (outcome.class === 'measure' && card !== undefined) return `card ${card}`
  return `${outcome.class} ${outcome.id}${id === undefined ? '' : ` for ${id}`}`
}

const walked = cases.map((each) => ({
  each,
  first: walk(each.told),
  second: walk({ ...each.told, ...each.found }),
}))

function printed(): string {
  const rows = walked.map(({ each, first, second }) => {
    const stop = second.position.stop === undefined ? '' : `  [${second.position.stop.id}]`
    return `${each.id.padEnd(4)}  ${endOf(each, first).padEnd(38)} ${String(first.asked).padStart(2)}   ${endOf(each, second).padEnd(38)} ${String(second.asked).padStart(2)}${stop}`
  })
  return ['case  with what was told, answers               with what was found, answers', ...rows, ''].join('\n')
}

it('has every case once', () => {
  expect(new Set(cases.map(({ id }) => id)).size).toBe(cases.length)
  expect(cases.filter(({ id }) => id.startsWith('D'))).toHaveLength(36)
  expect(cases.filter(({ id }) => id.startsWith('C'))).toHaveLength(15)
})

it('holds as never only cures the guide has, some for each case, and none that a right suspect is cured by', () => {
  const cureOf = new Map<string, string>(GUIDE.suspects.map(({ id, cure }) => [id, cure]))
  const cures = new Set(cureOf.values())
  for (const { id, ok, never } of cases) {
    expect(never.length, id).toBeGreaterThan(0)
    expect(
      never.filter((cure) => !cures.has(cure)),
      id,
    ).toEqual([])
    expect(
      ok.filter((suspect) => !cureOf.has(suspect)),
      id,
    ).toEqual([])
    expect(
      ok.filter((suspect) => never.includes(cureOf.get(suspect) ?? '')),
      id,
    ).toEqual([])
  }
})

describe.each(walked)('$each.id ($each.document)', ({ each, first, second }) => {
  it('told only: ends in a right cure, or in a card whose recorded result leads on', () => {
    expect(endOf(each, first)).toMatch(/^(cure|card) /)
  })

  it('with the record: ends in a right cure', () => {
    const end = endOf(each, second)
    expect(end).toMatch(each.open || each.barred ? /^(cure|card) / : /^cure /)
    if (each.notProven) expect(end).not.toContain('(proven)')
  })

  it('never reaches a cure the record excludes, and advises no part behind a barred gate', () => {
    for (const { position, outcome, reached } of [first, second]) {
      expect(each.never.filter((cure) => reached.has(cure))).toEqual([])
      if (position.gate === 'barred') expect(position.stop ?? outcome).toBeDefined()
    }
  })
})

it('prints the table that was reviewed', () => {
  if (process.env['UPDATE'] === '1') writeFileSync(TABLE, printed())
  expect(printed()).toBe(readFileSync(TABLE, 'utf8'))
})
