/** Public case histories walked to the class of answer they should meet first. */
import { describe, expect, it } from 'vitest'
import { replay } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import type { Answers } from '../../src/guide/types.ts'
import golden from '../golden/guide-cases.json' with { type: 'json' }

type Walk = { answers: Answers; outcome: string; class: string; from?: string; note?: string }
type Case = { id: string; document: string; expected: string; walks: readonly Walk[] }

const cases: readonly Case[] = golden.cases
const classes: Readonly<Record<string, readonly string[]>> = golden.classes
const IDS = 'C01 C03 C05 C07 C09 C11 C13 C15 C17 C19 C21 C23 C25 C27 C29'

it('has every case, so that none is lost', () => {
  expect(cases.map((each) => each.id).join(' ')).toBe(IDS)
})

describe.each(cases)('$id ($document)', ({ expected, walks }) => {
  it.each(walks)('ends at $outcome', ({ answers, outcome, class: kind, from }) => {
    const guide = from === undefined ? GUIDE : { ...GUIDE, start: from }
    const { current, trail } = replay(guide, answers)
    expect(current).toMatchObject({ is: 'outcome', id: outcome, class: kind })
    expect(trail).toHaveLength(Object.keys(answers).length)
  })

  it(`meets the class "${expected}"`, () => {
    expect(walks.some((walk) => classes[expected]?.includes(walk.outcome))).toBe(true)
  })

  it('is never answered past the gate when the gate says stop', () => {
    const honest = walks.filter((walk) => walk.from === undefined)
    expect(honest.length).toBeGreaterThan(0)
    for (const { answers } of honest) expect(replay(GUIDE, answers).trail[0]?.node.id).toBe('gate-danger')
  })
})
