import { describe, expect, it } from 'vitest'
import {
  answer,
  factsFrom,
  isEvidence,
  NO_SUCH_NODE,
  nodeById,
  OFF_PATH,
  optionsOf,
  replay,
  shownNode,
} from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import type { Answers } from '../../src/guide/types.ts'
import { LINE_KINDS } from '../../src/reference/line-kinds.ts'
import fc from '../support/property.ts'

const GATE: Answers = { 'gate-danger': 'none', 'gate-lines': 'none' }

/** A pointer that swings while we transmit, tested to its cable: ends in a part. */
const TO_FILTER: Answers = {
  ...GATE,
  wrong: 'reading',
  when: 'transmit',
  'antenna-port': 'no',
  ptt: 'gone-cable',
  cable: 'whole',
  bond: 'good',
  'shield-ends': 'good',
  'move-away': 'same',
  kind: 'synchro',
  frequency: 'vhf',
  box: 'no',
}

const item = (id: string) => {
  const node = nodeById(GUIDE, id)
  if (node === undefined || !isEvidence(node)) throw new Error(`no item ${id}`)
  return node
}
const standing = (answers: Answers, id: string) =>
  replay(GUIDE, answers).standings.find((each) => each.suspect.id === id)

describe('replay', () => {
  it('starts at the safety gate with nothing answered and everybody suspect', () => {
    const { current, trail, gate, fits } = replay(GUIDE, {})
    expect([current.id, trail, gate]).toEqual(['gate-danger', [], 'unknown'])
    expect(fits).toBe(GUIDE.suspects.length)
  })

  it('asks the fixed first questions in order, volume and squelch only where something is heard', () => {
    expect(replay(GUIDE, GATE).current.id).toBe('wrong')
    expect(replay(GUIDE, { ...GATE, wrong: 'noise' }).current.id).toBe('volume')
    expect(replay(GUIDE, { ...GATE, wrong: 'noise', volume: 'gone' }).current.id).toBe('squelch')
    expect(replay(GUIDE, { ...GATE, wrong: 'data' }).current.id).not.toBe('volume')
  })

  it('ends at an outcome whose reason is carried by answers', () => {
    const { current, gate, found, reasons } = replay(GUIDE, TO_FILTER)
    expect([current.id, gate, found?.cure.suspect.id, found?.sure]).toEqual([
      'filter-own-tx',
      'clear',
      'cable',
      'likely',
    ])
    expect(reasons.map(({ step }) => step.node.id)).toEqual(expect.arrayContaining(['ptt', 'cable']))
    const { reasons: fewer } = replay(GUIDE, { ...TO_FILTER, cable: 'dont-know', 'cable-trial': 'dont-know' })
    expect(fewer.map(({ step }) => step.node.id)).not.toContain('cable')
  })

  it('advises no part while bond, shield or mode are not known, and says to measure', () => {
    for (const id of ['bond', 'shield-ends']) {
      const { [id]: _gone, ...without } = TO_FILTER
      expect(replay(GUIDE, without).current.id).toBe(id)
      const { current } = replay(GUIDE, { ...TO_FILTER, [id]: 'dont-know' })
      expect(isEvidence(current) || current.class === 'measure').toBe(true)
    }
  })

  it('lets no answer about one part settle another', () => {
    const { standings } = replay(GUIDE, { ...GATE, wrong: 'noise', 'aba-alternator': 'follows' })
    const settled = standings.filter(({ because }) =>
      because.some(({ say, evidence }) => evidence === 'aba-alternator' && (say === 'proves' || say === 'rules-out')),
    )
    expect(settled.map(({ suspect }) => suspect.part)).toEqual(['source'])
    expect(standing({ ...GATE, wrong: 'noise', 'aba-alternator': 'follows' }, 'return')?.is).toBe('in')
  })

  it('asks for the way in when the source is proven and the way is open', () => {
    const { current, found } = replay(GUIDE, {
      ...GATE,
      wrong: 'noise',
      volume: 'gone',
      squelch: 'all',
      'aba-alternator': 'follows',
    })
    expect(found).toBeUndefined()
    expect(isEvidence(current) && current.about).not.toBe('source')
  })

  it('keeps a test set aside in the list of open tests, and asks something else', () => {
    const before = { ...GATE, wrong: 'reset', when: 'switching' }
    const asked = replay(GUIDE, before).current.id
    const { setAside, current } = replay(GUIDE, { ...before, 'supply-scope': 'set-aside' })
    expect(setAside.map(({ id }) => id)).toEqual(['supply-scope'])
    expect(current.id).toBe(asked)
  })

  it('ends in measuring, never in a part, when nothing is known', () => {
    for (const wrong of ['dont-know', 'noise', 'data', 'broken', 'plan']) {
      let answers: Answers = { ...GATE, wrong }
      let current = replay(GUIDE, answers).current
      for (let step = 0; isEvidence(current) && step < 40; step++) {
        answers = { ...answers, [current.id]: 'dont-know' }
        current = replay(GUIDE, answers).current
      }
      expect(current).toMatchObject({ class: 'measure' })
    }
  })

  it('understands the answers of the first edition', () => {
    const old: Answers = {
      ...GATE,
      wrong: 'noise',
      changed: 'nothing',
      when: 'on-demand',
      battery: 'still',
      path: 'volume',
      bond: 'shared',
    }
    const { answers, unusedAnswers, trail } = replay(GUIDE, old)
    expect(unusedAnswers).toEqual([])
    expect(answers).toMatchObject({ volume: 'still', 'grounds-mv': 'follows', when: 'on-demand' })
    expect(trail).toHaveLength(Object.keys(old).length)
  })

  it('keeps answers it does not know, and uses none of them', () => {
    const { unusedAnswers, current } = replay(GUIDE, { ...GATE, moon: 'full', wrong: 'constructor' })
    expect([current.id, unusedAnswers]).toEqual(['wrong', ['moon', 'wrong']])
  })

  it('stops at a line kind that is left alone, with the gate barred', () => {
    const barred = LINE_KINDS.filter((kind) => kind.barredWhy !== undefined)
    expect(barred.length).toBeGreaterThan(8)
    for (const { id } of barred) {
      const { stop, gate, current } = replay(GUIDE, { ...TO_FILTER, kind: id })
      expect([stop?.id, gate, current.id]).toEqual(['stop-kind', 'barred', 'stop-kind'])
    }
  })

  it('never throws and always stands on a node of the guide, whatever is stored', () => {
    const ids = GUIDE.evidence.map(({ id }) => id)
    const optionIds = [...new Set(GUIDE.evidence.flatMap((each) => optionsOf(each).map(({ id }) => id)))]
    const anyAnswers = fc.dictionary(
      fc.oneof(fc.constantFrom(...ids), fc.string()),
      fc.oneof(fc.constantFrom(...optionIds), fc.string()),
      { maxKeys: 30 },
    )
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const { current, gate } = replay(GUIDE, answers)
        expect(nodeById(GUIDE, current.id)).toBe(current)
        if (gate === 'clear') expect(answers).toMatchObject(GATE)
      }),
      { numRuns: 200 },
    )
  })
})

describe('test pulses', () => {
  const plan = { ...GATE, wrong: 'plan', 'plan-direction': 'pulses' }

  it('end at an outcome of their own, never at that of lightning, and not at a part while the plan is not known', () => {
    expect(replay(GUIDE, plan).current.id).toBe('pulse-kind')
    expect(replay(GUIDE, { ...plan, 'pulse-kind': 'cs115' }).current.id).toBe('pulse-inject')
    const ends = { cs115: 'cs115', cs116: 'cs116', emp: 'rs105' }
    for (const [kind, waveform] of Object.entries(ends)) {
      const { current } = replay(GUIDE, { ...plan, 'pulse-kind': kind, 'pulse-inject': 'one-cable', kind: 'can' })
      expect(current).toMatchObject({
        id: `pulses-${kind}`,
        checks: [{ check: 'surge', prefill: { waveform } }, {}, {}],
      })
    }
    expect(replay(GUIDE, { ...plan, 'pulse-kind': 'dont-know' }).current).toMatchObject({ class: 'measure' })
    expect(replay(GUIDE, { ...plan, 'pulse-kind': 'emp', 'pulse-inject': 'passes' }).current.id).toBe('pulses-passed')
    const surge = { ...plan, 'plan-direction': 'surge', 'surge-threat': 'none' }
    expect(replay(GUIDE, surge).current.id).toBe('kind')
    expect(replay(GUIDE, { ...surge, kind: 'can' }).current.id).toBe('suppressor-plan')
  })
})

describe('a trial that only helped', () => {
  it('leaves no other way in behind: something else is left', () => {
    const helped: Answers = { ...GATE, wrong: 'reading', 'shield-ends': 'open', 'shield-trial': 'less' }
    const fits = (answers: Answers) =>
      replay(GUIDE, answers).standings.flatMap(({ suspect, fits: does }) => (does ? [suspect.id] : []))
    expect(fits(helped)).toEqual(expect.arrayContaining(['shield', 'supply']))
    // two looks that both speak for the shield do leave the supply behind
    const looks: Answers = { ...GATE, wrong: 'reading', 'shield-ends': 'open', changed: 'disturbed' }
    expect(fits(looks)).not.toContain('supply')
  })
})

describe('after a repair', () => {
  const proven: Answers = { ...GATE, wrong: 'reading', when: 'transmit', 'strap-trial': 'gone', ptt: 'gone-cable' }

  it('rules a cause out only when the repair itself was measured good', () => {
    expect(replay(GUIDE, proven).found?.cure.suspect.id).toBe('bond')
    expect(standing({ ...proven, 'after-bond': 'same' }, 'bond')?.is).toBe('proven')
    expect(standing({ ...proven, 'after-bond': 'same-measured' }, 'bond')?.is).not.toBe('proven')
  })

  it('keeps a cause whose repair cured it, and closes only while on, off, on stands', () => {
    const cured = { ...proven, 'after-bond': 'gone', closed: 'bond' }
    expect(replay(GUIDE, cured)).toMatchObject({ closed: 'bond', found: { cure: { suspect: { id: 'bond' } } } })
    const history = (repeats: 'agreed' | 'differed') => [{ at: '', evidence: 'after-bond', option: 'gone', repeats }]
    expect(replay(GUIDE, cured, history('agreed')).closed).toBe('bond')
    const reopened = replay(GUIDE, cured, history('differed'))
    expect(reopened.closed).toBeUndefined()
    expect(reopened.unusedAnswers).toEqual([])
    expect(reopened.standings.find(({ suspect }) => suspect.id === 'bond')?.tried).toBeUndefined()
  })

  it('keeps what only helped as part of the cause, and goes on for the rest', () => {
    const { found, standings } = replay(GUIDE, { ...proven, 'after-bond': 'less' })
    expect(found?.cure.suspect.id).not.toBe('bond')
    expect(standings.find(({ suspect }) => suspect.id === 'bond')).toMatchObject({ is: 'proven', tried: 'less' })
  })
})

describe('a trial whose repetition differed', () => {
  const answers: Answers = { ...GATE, wrong: 'reading', when: 'transmit', 'strap-trial': 'gone', cable: 'whole' }
  const strap = { at: '', evidence: 'strap-trial', option: 'gone' } as const
  const bond = (history: Parameters<typeof replay>[2]) =>
    replay(GUIDE, answers, history).standings.find(({ suspect }) => suspect.id === 'bond')

  it('proves nothing, clears nothing, and stays among the open tests with its answer kept', () => {
    expect(bond([{ ...strap, repeats: 'agreed' }])?.is).toBe('proven')
    expect(bond([{ ...strap, repeats: 'differed' }])?.is).toBe('in')
    const position = replay(GUIDE, answers, [{ ...strap, repeats: 'differed' }])
    expect(position.trail.find(({ node }) => node.id === 'strap-trial')).toMatchObject({
      optionId: 'gone',
      isVoid: true,
    })
    expect(position.openTests.map(({ id }) => id)).toContain('strap-trial')
    expect(position.found?.cure.suspect.id).not.toBe('bond')
    const cleared = { ...strap, option: 'same' }
    const without = { ...answers, 'strap-trial': 'same' }
    expect(standing(without, 'bond')?.is).toBe('out')
    const { standings } = replay(GUIDE, without, [{ ...cleared, repeats: 'differed' }])
    expect(standings.find(({ suspect }) => suspect.id === 'bond')?.is).toBe('in')
  })

  it('counts again once a newer repetition agrees, and states no fact until then', () => {
    expect(bond([{ ...strap, repeats: 'differed' }, strap])?.is).toBe('proven')
    const clamp = { at: '', evidence: 'cable', option: 'whole', repeats: 'differed' } as const
    expect(factsFrom(GUIDE, replay(GUIDE, answers)).noiseMode).toBeDefined()
    expect(factsFrom(GUIDE, replay(GUIDE, answers, [clamp])).noiseMode).toBeUndefined()
  })
})

describe('answer', () => {
  it('changes one answer and keeps every other', () => {
    const before = Object.freeze({ ...TO_FILTER })
    expect(answer(GUIDE, before, 'box', 'yes')).toEqual({ ...TO_FILTER, box: 'yes' })
    expect(before).toEqual(TO_FILTER)
  })

  it('refuses a node that is no item and an answer the item does not have', () => {
    expect(() => answer(GUIDE, {}, 'stop-smoke', 'none')).toThrow(/not a question/)
    expect(() => answer(GUIDE, {}, 'wrong', 'purple')).toThrow(/not an answer/)
  })
})

describe('optionsOf', () => {
  it('gives every line kind at the picker, then "don\'t know"', () => {
    const options = optionsOf(item('kind'))
    expect(options).toHaveLength(LINE_KINDS.length + 1)
    expect(options.at(-1)?.id).toBe('dont-know')
    expect(options.find((option) => option.id === 'can')?.sets).toEqual([{ fact: 'lineKind', text: 'can' }])
  })
})

describe('factsFrom', () => {
  it('carries each fact with the item it came from, and marks what was assumed', () => {
    expect(factsFrom(GUIDE, replay(GUIDE, TO_FILTER))).toEqual({
      noiseMode: { text: 'common', origin: { by: 'answer', node: 'cable' } },
      lineKind: { text: 'synchro', origin: { by: 'answer', node: 'kind' } },
      noiseHz: { text: '30 MHz; 400 MHz', origin: { by: 'assumed', why: expect.any(String), favourable: false } },
    })
  })
})

describe('shownNode', () => {
  it('shows where the answers lead without a node in the address', () => {
    expect(shownNode(GUIDE, GATE)).toMatchObject({ node: { id: 'wrong' }, onPath: true })
  })

  it('shows an answered item with its answer', () => {
    expect(shownNode(GUIDE, TO_FILTER, 'cable')).toMatchObject({ node: { id: 'cable' }, onPath: true, chosen: 'whole' })
  })

  it('shows the card of an open test without a notice', () => {
    const [first] = replay(GUIDE, { ...GATE, wrong: 'data' }).openTests
    expect(shownNode(GUIDE, { ...GATE, wrong: 'data' }, first?.id)).toMatchObject({
      node: { id: first?.id },
      onPath: true,
    })
  })

  it('opens a retired question at the one that took its place', () => {
    expect(shownNode(GUIDE, GATE, 'path').node.id).toBe('antenna-load')
  })

  it('shows another node with a notice, and says so when the gate is not answered', () => {
    const shown = shownNode(GUIDE, {}, 'filter-victim-box')
    expect(shown).toMatchObject({ node: { id: 'filter-victim-box' }, onPath: false, position: { gate: 'unknown' } })
    expect(shown.notice).toMatch(/safety questions are not answered/)
    expect(shownNode(GUIDE, TO_FILTER, 'weather-static').notice).toBe(OFF_PATH)
  })

  it('falls back to where the answers lead for a node the guide does not have', () => {
    expect(shownNode(GUIDE, GATE, 'no-such-node')).toMatchObject({ node: { id: 'wrong' }, notice: NO_SUCH_NODE })
  })
})
