/** The first line of a result, read from the real outcomes. */
import { describe, expect, it } from 'vitest'
import type { Line } from '../../src/calc/types.ts'
import { decisionSentence } from '../../src/guide/decision-sentence.ts'
import { factsFrom, isEvidence, nodeById, replay, shownNode } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { advise } from '../../src/guide/rules.ts'
import type { Advice, Answers, Outcome } from '../../src/guide/types.ts'

const GATE: Answers = { 'gate-danger': 'none', 'gate-lines': 'none' }
const BONDED: Answers = { ...GATE, bond: 'good', 'shield-ends': 'good', kind: 'synchro', frequency: 'vhf' }

/** A pointer that swings while we transmit, tested to its cable. */
const OWN_TX: Answers = {
  ...BONDED,
  wrong: 'reading',
  when: 'transmit',
  'antenna-port': 'no',
  ptt: 'gone-cable',
  cable: 'whole',
  'move-away': 'same',
}
const PLAN: Answers = { ...BONDED, wrong: 'plan', mode: 'common', need: 'twenty', impedance: 'fifty' }

const lineOf = (facts: Line['facts']): Line => ({ id: 'l', name: '', gate: 'clear', trials: [], facts })

function adviceAt(answers: Answers): { readonly outcome: Outcome; readonly advice: Advice } {
  const position = replay(GUIDE, answers)
  const { current, gate } = position
  if (isEvidence(current)) throw new Error(`asks ${current.id}`)
  const line = lineOf(factsFrom(GUIDE, position))
  return { outcome: current, advice: advise({ guide: GUIDE, outcome: current, line, gate, answers }) }
}

function sentenceAt(answers: Answers): string {
  const { outcome, advice } = adviceAt(answers)
  return decisionSentence(outcome, advice).replaceAll(/[\u00A0\u202F]/g, ' ')
}

/** One capital at the start, one full stop, at the end. */
const isOneSentence = (text: string): boolean => /^\p{Lu}.*\.$/u.test(text) && !/[.!?]\s/u.test(text.slice(0, -1))

const LONGEST = 25
/** Where the box or the cable side is known, an outcome with its place in the headline stands for it. */
const BOXES = ['yes', 'no', 'tray', 'dont-know']

describe('the decision is one sentence', () => {
  const FACTS: readonly Answers[] = [
    {},
    { lineKind: 'synchro', noiseHz: '30M', neededDb: '20; 40', noiseSourceOhm: '5', noiseLoadOhm: '1k' },
    { lineKind: 'can', surgeThreat: 'static', exposedContacts: 'many', contactsAlike: 'alike' },
    { lineKind: 'can', surgeThreat: 'lightning', exposedContacts: 'one' },
    { lineKind: 'can', surgeThreat: 'switching', exposedContacts: 'few' },
  ]
  it.each(GUIDE.outcomes.map((outcome) => [outcome.id, outcome] as const))('%s', (_id, outcome) => {
    for (const facts of FACTS)
      for (const box of BOXES.filter((each) => !outcome.id.endsWith('-either') || each === 'tray')) {
        const texts = Object.entries(facts).map(([key, text]) => [key, { text, origin: { by: 'user' } }])
        const line = lineOf(Object.fromEntries(texts))
        const advice = advise({ guide: GUIDE, outcome, line, gate: 'clear', answers: { box } })
        const sentence = decisionSentence(outcome, advice)
        expect(isOneSentence(sentence), sentence).toBe(true)
        expect(sentence.split(/\s+/u).length, sentence).toBeLessThanOrEqual(LONGEST)
        expect(sentence.startsWith(outcome.headline), sentence).toBe(true)
      }
  })

  it('says how much where a need is known', () => {
    const stand = { ...PLAN, 'plan-direction': 'stand', 'surge-threat': 'none', box: 'yes' }
    expect(sentenceAt(stand)).toMatch(/^A filter at the box that suffers, in the receptacle of the box.*, for 20 dB\.$/)
  })
})

describe('the box that cannot be opened', () => {
  const ENDS: readonly (readonly [string, Answers])[] = [
    ['filter-own-tx', OWN_TX],
    ['filter-victim-inline', { ...PLAN, 'plan-direction': 'stand', 'surge-threat': 'none' }],
    ['filter-source-inline', { ...PLAN, 'plan-direction': 'emission', 'surge-threat': 'none' }],
    ['filter-open-way', { ...PLAN, 'plan-direction': 'dont-know', 'surge-threat': 'none' }],
  ]
  it.each(ENDS)('%s: an in-line adapter on the cable side', (end, answers) => {
    const closed = adviceAt({ ...answers, box: 'no' })
    expect(closed.outcome.id).toBe(end)
    expect(sentenceAt({ ...answers, box: 'no' })).toContain('in-line adapter on the cable side')
    const place = closed.advice.items.find(({ rule }) => rule.startsWith('place-'))
    expect(place?.title).toBe('Place: an in-line adapter on the cable side')
    expect(sentenceAt({ ...answers, box: 'yes' })).not.toContain('in-line adapter')
  })

  it('is none in a blind-mated tray: there its wiring or a disconnect', () => {
    const { advice } = adviceAt({ ...OWN_TX, box: 'tray' })
    expect(advice.items.map(({ title }) => title)).toContain('Place: the tray wiring or a disconnect')
    expect(sentenceAt({ ...OWN_TX, box: 'tray' })).not.toContain('adapter')
  })
})

describe('what a suppressor still misses', () => {
  const asksOf = (answers: Answers) => [...new Set(adviceAt(answers).advice.items.flatMap(({ asks }) => asks ?? []))]
  const END = { ...OWN_TX, box: 'no' }

  it('is named by the item that asks for it, until it is answered', () => {
    expect(asksOf(END)).toEqual(['surge-threat'])
    expect(asksOf({ ...END, 'surge-threat': 'none' })).toEqual([])
    expect(asksOf({ ...END, 'surge-threat': 'static' })).toEqual(['surge-contacts'])
    expect(asksOf({ ...END, 'surge-threat': 'static', 'surge-contacts': 'many' })).toEqual(['surge-alike'])
  })

  it('opens at its address as a question of this way, and leads back to the same result', () => {
    const shown = shownNode(GUIDE, END, 'surge-threat')
    expect(shown).toMatchObject({ node: { id: 'surge-threat' }, onPath: true })
    expect(shown.notice).toBeUndefined()
    expect(replay(GUIDE, { ...END, 'surge-threat': 'static' }).current.id).toBe('filter-own-tx')
    expect(shownNode(GUIDE, GATE, 'surge-threat').notice).toBeDefined()
  })

  it('names only items the guide has', () => {
    for (const outcome of GUIDE.outcomes)
      for (const { asks } of advise({ guide: GUIDE, outcome, line: lineOf({}), gate: 'clear' }).items)
        for (const id of asks ?? []) expect(nodeById(GUIDE, id), id).toBeDefined()
  })
})
