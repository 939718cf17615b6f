import { gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { FACT_KEYS } from '../../src/calc/ids.ts'
import { CHECKS } from '../../src/calc/registry.ts'
import { CHECK_KEYS } from '../../src/guide/check-keys.ts'
import { nodeById, optionsOf, replay } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import type { Outcome, Question } from '../../src/guide/types.ts'
import { LINE_KINDS } from '../../src/reference/line-kinds.ts'

const questions = GUIDE.nodes.filter((node): node is Question => node.is === 'question')
const outcomes = GUIDE.nodes.filter((node): node is Outcome => node.is === 'outcome')

describe('the shipped guide', () => {
  it('is plain data: a JSON round trip and a structured clone give the same', () => {
    expect(JSON.parse(JSON.stringify(GUIDE))).toEqual(GUIDE)
    expect(structuredClone(GUIDE)).toEqual(GUIDE)
  })

  it('is small enough to be carried: under 25 kB compressed', () => {
    expect(gzipSync(JSON.stringify(GUIDE)).length).toBeLessThan(25_000)
  })

  it('prefills only keys that the checks really have', () => {
    for (const [id, keys] of Object.entries(CHECK_KEYS)) {
      const check = CHECKS.find((each) => each.id === id)
      if (check !== undefined) expect(check.inputs.map((input) => input.key)).toEqual(expect.arrayContaining([...keys]))
    }
  })

  it('asks the chapters in their fixed order on the longest way', () => {
    const chapters = questions.map((question) => question.chapter)
    expect([...new Set(chapters)].slice(0, 5)).toEqual([
      'Safety first',
      'What is wrong',
      'Damage',
      'What changed',
      'When it comes',
    ])
  })

  it('says of the whine what it would take, in numbers', () => {
    for (const id of ['whine-alternator', 'whine-rectifier', 'low-frequency'])
      expect(nodeById(GUIDE, id)).toMatchObject({
        class: 'not-a-filter',
        reason: expect.stringMatching(/660 µF.*330 µF/),
      })
  })

  it('has an answer to the six things asked in the first five minutes', () => {
    const frequency = optionsOf(questions.find(({ id }) => id === 'frequency') ?? questions[0] ?? never())
    expect(frequency.find(({ id }) => id === 'probe')?.next).toBe('measure-probe')
    expect(frequency.find(({ id }) => id === 'headset')?.next).toBe('measure-headset')
    expect(nodeById(GUIDE, 'mode')).toMatchObject({ text: expect.stringContaining('both legs') })
    expect(nodeById(GUIDE, 'impedance')).toMatchObject({ findOut: expect.stringContaining('1, 10, 50 and 150') })
    for (const outcome of outcomes.filter((each) => each.class === 'filter'))
      expect(outcome.rules).toEqual(
        expect.arrayContaining(['topology', 'fits-contact', 'trial', 'suppressor', 'sharing']),
      )
  })

  it('states facts that exist, in texts that are not empty', () => {
    for (const question of questions)
      for (const { fact, text } of question.options.flatMap((option) => option.sets ?? [])) {
        expect(FACT_KEYS).toContain(fact)
        expect(text.trim()).not.toBe('')
      }
  })

  it('leads to no check that is not built', () => {
    const named = outcomes.flatMap((outcome) => outcome.checks.map((each) => each.check))
    const built = new Set<string>(CHECKS.map(({ id }) => id))
    expect(named.filter((id) => !built.has(id))).toEqual([])
    expect(named).toContain('surge')
    expect(JSON.stringify(GUIDE)).not.toMatch(/#\/check/)
  })
})

it('shows every caution that belongs to triage at some question or result', () => {
  const shown = new Set(GUIDE.nodes.flatMap((node) => node.cautions ?? []))
  const needed =
    'no-trial power-off stored-charge breakers trial-not-for-flight trial-authority permanent-approved lightning-hirf-fuel hipot after-strike chassis-capacitance ok-bounds screening lethal-voltage transmitter-hazard matched-legs'
  expect([...shown].sort()).toEqual(needed.split(' ').sort())
})

describe('the safety gate', () => {
  const gate = questions.filter(({ id }) => id.startsWith('gate-'))

  it('ends every answer but "none" in a stop with a reason, gate barred', () => {
    expect(gate.flatMap((question) => question.options)).toHaveLength(4 + 13)
    for (const question of gate)
      for (const option of question.options.filter(({ id }) => id !== 'none')) {
        const before = question.id === 'gate-lines' ? { 'gate-danger': 'none' } : {}
        const { current, gate: state } = replay(GUIDE, { ...before, [question.id]: option.id })
        expect(current).toMatchObject({ is: 'outcome', class: 'stop' })
        expect(current.is === 'outcome' && current.reason.length).toBeGreaterThan(40)
        expect(state).toBe('barred')
      }
  })

  it('names every line that never gets a trial part', () => {
    const ids = gate.flatMap((question) => question.options.map(({ id }) => id))
    const barred =
      'pyrotechnic fuel-quantity engine-control flight-control stall-warning magneto strobe antenna-coax live-power fire-detection intrinsically-safe'
    expect(ids).toEqual(expect.arrayContaining(barred.split(' ')))
  })

  it('stops at every barred kind, also when it is the source’s line', () => {
    const toSource = {
      'gate-danger': 'none',
      'gate-lines': 'none',
      wrong: 'noise',
      changed: 'new-unit',
      when: 'on-demand',
      'source-kind': 'motor',
      'source-fix': 'filter',
    }
    for (const kind of LINE_KINDS) {
      const { current, gate: state } = replay(GUIDE, { ...toSource, 'kind-source': kind.id })
      const isBarred = kind.barredWhy !== undefined
      expect(current.is === 'outcome' && current.class === 'stop').toBe(isBarred)
      expect(state).toBe(isBarred ? 'barred' : 'clear')
    }
  })
})

function never(): never {
  throw new Error('the guide has no questions')
}
