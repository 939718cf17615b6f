/** Whatever is answered, nothing is asked twice: not the item, not under an earlier id, not its fact by another item. */
import { describe, expect, it } from 'vitest'
import type { FactKey } from '../../src/calc/types.ts'
import { factsFrom, isEvidence, isOpenAnswer, optionsOf, replay } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import type { Evidence } from '../../src/guide/investigation.ts'
import { RETIRED } from '../../src/guide/retired.ts'
import type { Answers, Position } from '../../src/guide/types.ts'
import fc from '../support/property.ts'

const GATE: Answers = { 'gate-danger': 'none', 'gate-lines': 'none' }

/** Where walks begin: with the gate only, and close to the facts of a line, where random answers seldom come. */
const STARTS: readonly Answers[] = [
  GATE,
  { ...GATE, wrong: 'plan' },
  { ...GATE, wrong: 'reading', when: 'transmit', 'antenna-port': 'no', ptt: 'gone-cable', cable: 'whole' },
  { ...GATE, wrong: 'reading', when: 'unit', 'aba-converter': 'follows', 'source-fix': 'filter', cable: 'each-leg' },
  { ...GATE, wrong: 'broken', when: 'touch' },
]

/** The line of the box that suffers and that of the source are two lines; each is asked once. */
const OF_ITS_OWN_LINE = new Set(['kind', 'kind-source'])

/** Facts an item asks for: what its answers state as known. */
const asksFor = (item: Evidence): ReadonlySet<FactKey> =>
  new Set(optionsOf(item).flatMap(({ sets }) => (sets ?? []).flatMap((set) => (set.assumed ? [] : [set.fact]))))

/** Facts answered so far, with the item each came from. */
function stated(position: Position): ReadonlyMap<FactKey, string> {
  const facts = Object.entries(factsFrom(GUIDE, position))
  return new Map(facts.flatMap(([key, { origin }]) => (origin.by === 'answer' ? [[key as FactKey, origin.node]] : [])))
}

function expectNew(item: Evidence, position: Position): void {
  expect(position.answers[item.id], `${item.id} was answered`).toBeUndefined()
  const known = stated(position)
  if (OF_ITS_OWN_LINE.has(item.id)) return
  for (const fact of asksFor(item)) expect(known.get(fact), `${item.id} asks for ${fact} again`).toBeUndefined()
}

/** Follows what is asked, and at an end the best open test, as someone does who goes on; sees each item as it comes. */
function walk(first: Answers, picks: Iterator<number>, see: (item: Evidence, position: Position) => void): number {
  let answers = first
  const done = new Set<string>()
  for (let step = 0; ; step++) {
    const position = replay(GUIDE, answers)
    const open = position.openTests.filter(({ id }) => !done.has(id))
    for (const { id } of position.openTests) {
      const before = position.answers[id]
      expect(before === undefined || isOpenAnswer(before), `${id} is open though answered`).toBe(true)
    }
    const item = isEvidence(position.current) ? position.current : open[0]
    if (item === undefined || step > 80) return step
    if (item === position.current) see(item, position)
    done.add(item.id)
    const offered = optionsOf(item).filter(({ retired, stop }) => !retired && stop === undefined)
    const pick = offered[(picks.next().value ?? 0) % offered.length]
    answers = { ...position.answers, [item.id]: pick?.id ?? 'dont-know' }
  }
}

describe('nothing is asked twice', () => {
  it('over random walks that go on past the first result', () => {
    let [seen, most] = [0, 0]
    fc.assert(
      fc.property(fc.constantFrom(...STARTS), fc.infiniteStream(fc.nat()), (first, stream) => {
        const steps = walk(first, stream, (item, position) => {
          seen++
          expectNew(item, position)
        })
        most = Math.max(most, steps)
      }),
      { numRuns: 100 },
    )
    expect(seen).toBeGreaterThan(200)
    expect(most).toBeLessThanOrEqual(80)
  })

  it('not what was answered under an id of an earlier edition', () => {
    for (const [old, { options }] of Object.entries(RETIRED))
      for (const [option, { evidence }] of Object.entries(options)) {
        const first = { ...GATE, wrong: 'receiver', [old]: option }
        fc.assert(
          fc.property(fc.infiniteStream(fc.nat()), (stream) => {
            walk(first, stream, (item) => expect(item.id).not.toBe(evidence))
          }),
          { numRuns: 3 },
        )
      }
  })
})
