import { describe, expect, it } from 'vitest'
import {
  answer,
  factsFrom,
  NO_SUCH_NODE,
  nodeById,
  OFF_PATH,
  optionsOf,
  replay,
  shownNode,
} from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import type { Answers, Question } from '../../src/guide/types.ts'
import { LINE_KINDS } from '../../src/reference/line-kinds.ts'
import fc from '../support/property.ts'

const GATE: Answers = { 'gate-danger': 'none', 'gate-lines': 'none' }
const TO_FILTER: Answers = {
  ...GATE,
  wrong: 'reading',
  changed: 'nothing',
  when: 'on-demand',
  battery: 'still',
  path: 'no-antenna',
  cable: 'one-wire',
  bond: 'good',
  kind: 'arinc-429-low',
  frequency: 'vhf',
  box: 'no',
}
const questions = GUIDE.nodes.filter((node): node is Question => node.is === 'question')
const question = (id: string): Question => {
  const node = nodeById(GUIDE, id)
  if (node?.is !== 'question') throw new Error(`no question ${id}`)
  return node
}

describe('replay', () => {
  it('starts at the safety gate with nothing answered and the gate unknown', () => {
    expect(replay(GUIDE, {})).toMatchObject({
      current: { id: 'gate-danger' },
      trail: [],
      unusedAnswers: [],
      gate: 'unknown',
    })
  })

  it('walks a full set of answers to its outcome and shows the labels of the path', () => {
    const { current, trail, gate } = replay(GUIDE, TO_FILTER)
    expect(current.id).toBe('filter-victim-inline')
    expect(gate).toBe('clear')
    expect(trail.map((step) => step.node.id)).toEqual(Object.keys(TO_FILTER))
    expect(trail.at(-1)?.label).toBe('No: already qualified, or not ours')
  })

  it('stays at the gate and barred when the gate is answered with "don\'t know"', () => {
    expect(replay(GUIDE, { 'gate-danger': 'dont-know' })).toMatchObject({
      current: { id: 'stop-danger-open' },
      gate: 'barred',
    })
    expect(replay(GUIDE, { 'gate-danger': 'none', 'gate-lines': 'dont-know' }).gate).toBe('barred')
    expect(replay(GUIDE, { 'gate-danger': 'none' }).gate).toBe('unknown')
  })

  it('stops at a stored answer that does not exist any more and keeps the later ones', () => {
    const { current, trail, unusedAnswers } = replay(GUIDE, { ...TO_FILTER, when: 'on-tuesdays' })
    expect(current.id).toBe('when')
    expect(trail).toHaveLength(4)
    expect(unusedAnswers).toEqual(['when', 'battery', 'path', 'cable', 'bond', 'kind', 'frequency', 'box'])
  })

  it('is not taken in by answers named like parts of an object', () => {
    const answers: Answers = { ...GATE, wrong: 'constructor', toString: 'none' }
    expect(replay(GUIDE, answers).current.id).toBe('wrong')
    expect(replay(GUIDE, JSON.parse('{"__proto__":"none"}')).current.id).toBe('gate-danger')
  })

  it('goes to the stop, with the gate barred, when the line kind is one that is left alone', () => {
    const barred = LINE_KINDS.filter((kind) => kind.barredWhy !== undefined)
    expect(barred.length).toBeGreaterThan(8)
    for (const { id } of barred)
      expect(replay(GUIDE, { ...TO_FILTER, kind: id })).toMatchObject({
        current: { id: 'stop-kind', class: 'stop' },
        gate: 'barred',
      })
  })

  it('refuses a guide without its start node', () => {
    expect(() => replay({ ...GUIDE, start: 'nowhere' }, {})).toThrow(/"nowhere"/)
  })

  it('never throws, never repeats a node and always stands on a node of the guide, whatever is stored', () => {
    const ids = questions.map((each) => each.id)
    const optionIds = [...new Set(questions.flatMap((each) => optionsOf(each).map((option) => option.id)))]
    const anyAnswers = fc.dictionary(
      fc.oneof(fc.constantFrom(...ids), fc.string()),
      fc.oneof(fc.constantFrom(...optionIds), fc.string()),
      { maxKeys: 30 },
    )
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const { trail, current, gate } = replay(GUIDE, answers)
        const passed = trail.map((step) => step.node.id)
        expect(new Set([...passed, current.id]).size).toBe(passed.length + 1)
        expect(nodeById(GUIDE, current.id)).toBe(current)
        if (gate === 'clear') expect(answers).toMatchObject(GATE)
      }),
      { numRuns: 300 },
    )
  })

  it('reaches an outcome within 12 taps from any sequence of valid answers', () => {
    fc.assert(
      fc.property(fc.infiniteStream(fc.nat()), (stream) => {
        let answers: Answers = {}
        for (let taps = 0; taps <= 12; taps += 1) {
          const { current, trail } = replay(GUIDE, answers)
          expect(trail).toHaveLength(taps)
          if (current.is === 'outcome') return
          const options = optionsOf(current)
          const chosen = options[(stream.next().value ?? 0) % options.length]
          answers = answer(GUIDE, answers, current.id, chosen?.id ?? '')
        }
        throw new Error('more than 12 taps')
      }),
      { numRuns: 300 },
    )
  })
})

describe('answer', () => {
  it('keeps the later answers that still apply when an early one changes', () => {
    const changed = answer(GUIDE, TO_FILTER, 'wrong', 'data')
    const { current, trail, unusedAnswers } = replay(GUIDE, changed)
    expect(current.id).toBe('filter-victim-inline')
    expect(trail.map((step) => step.node.id)).not.toContain('path')
    expect(unusedAnswers).toEqual(['path'])
  })

  it('brings the whole path back when the early answer is changed back', () => {
    const away = answer(GUIDE, TO_FILTER, 'when', 'weather')
    expect(replay(GUIDE, away).current.id).toBe('weather-static')
    expect(replay(GUIDE, answer(GUIDE, away, 'when', 'on-demand'))).toEqual(replay(GUIDE, TO_FILTER))
  })

  it('does not touch the answers it was given', () => {
    const before = Object.freeze({ ...GATE })
    expect(answer(GUIDE, before, 'wrong', 'plan')).toEqual({ ...GATE, wrong: 'plan' })
    expect(before).toEqual(GATE)
  })

  it('refuses a node that is no question and an answer the question does not have', () => {
    expect(() => answer(GUIDE, {}, 'stop-smoke', 'none')).toThrow(/not a question/)
    expect(() => answer(GUIDE, {}, 'wrong', 'purple')).toThrow(/not an answer/)
  })

  it('takes a condition from the present path only, not from answers that fell off it', () => {
    const off: Answers = { ...TO_FILTER, 'source-fix': 'filter', ptt: 'gone-cable', 'plan-direction': 'emission' }
    expect(replay(GUIDE, off).current.id).toBe('filter-victim-inline')
  })
})

describe('optionsOf', () => {
  it('gives every line kind at the picker, then "don\'t know"', () => {
    const options = optionsOf(question('kind'))
    expect(options).toHaveLength(LINE_KINDS.length + 1)
    expect(options.at(-1)?.id).toBe('dont-know')
    expect(options.find((option) => option.id === 'can')?.sets).toEqual([{ fact: 'lineKind', text: 'can' }])
  })
})

describe('factsFrom', () => {
  it('carries each fact with the question it came from', () => {
    expect(factsFrom(GUIDE, replay(GUIDE, TO_FILTER))).toEqual({
      noiseMode: { text: 'differential', origin: { by: 'answer', node: 'cable' } },
      lineKind: { text: 'arinc-429-low', origin: { by: 'answer', node: 'kind' } },
      noiseHz: { text: '30 MHz; 400 MHz', origin: { by: 'assumed', why: expect.any(String), favourable: false } },
    })
  })

  it('marks what was not answered but assumed, and never as favourable', () => {
    const unknown: Answers = { ...TO_FILTER, cable: 'dont-know' }
    expect(factsFrom(GUIDE, replay(GUIDE, unknown)).noiseMode).toMatchObject({
      text: 'common',
      origin: { by: 'assumed', favourable: false },
    })
  })

  it('takes nothing from answers that are off the path', () => {
    expect(factsFrom(GUIDE, replay(GUIDE, { ...TO_FILTER, when: 'weather' }))).toEqual({})
  })
})

describe('shownNode', () => {
  it('shows where the answers lead without a node in the address', () => {
    expect(shownNode(GUIDE, GATE)).toMatchObject({ node: { id: 'wrong' }, onPath: true })
  })

  it('shows an answered question of the path with its answer', () => {
    expect(shownNode(GUIDE, TO_FILTER, 'battery')).toMatchObject({
      node: { id: 'battery' },
      onPath: true,
      chosen: 'still',
    })
  })

  it('shows a node off the path and says that the gate is not answered', () => {
    const shown = shownNode(GUIDE, {}, 'filter-victim-box')
    expect(shown).toMatchObject({ node: { id: 'filter-victim-box' }, onPath: false, position: { gate: 'unknown' } })
    expect(shown.notice).toMatch(/safety questions are not answered/)
  })

  it('says only that the answers lead elsewhere when the gate is clear', () => {
    expect(shownNode(GUIDE, TO_FILTER, 'weather-static').notice).toBe(OFF_PATH)
  })

  it('falls back to where the answers lead for a node the guide does not have', () => {
    expect(shownNode(GUIDE, GATE, 'no-such-node')).toMatchObject({
      node: { id: 'wrong' },
      onPath: true,
      notice: NO_SUCH_NODE,
    })
  })
})
