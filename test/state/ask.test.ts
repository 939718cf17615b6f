import 'fake-indexeddb/auto'
import { beforeEach, describe, expect, it } from 'vitest'
import { loopCheck } from '../../src/calc/checks/loop/check.ts'
import { resolve } from '../../src/calc/line/resolver.ts'
import type { Check, Line } from '../../src/calc/types.ts'
import { replay } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import {
  closeWith,
  earlierComplaints,
  give,
  giveFrequency,
  giveRepair,
  lastEvent,
  lineAfter,
} from '../../src/state/ask.ts'
import { loadComplaints } from '../../src/state/complaints.ts'
import { createFromTriage } from '../../src/state/new-complaint.ts'
import { restartTriage, triage } from '../../src/state/session.ts'

const toKind = { 'gate-danger': 'none', 'gate-lines': 'none', wrong: 'noise', bond: 'good' }

describe('the line after an answer', () => {
  const line: Line = {
    id: 'l1',
    name: 'contact 14',
    gate: 'unknown',
    trials: [],
    facts: {
      noiseHz: { text: '12M', origin: { by: 'user' } },
      lineKind: { text: 'can', origin: { by: 'answer', node: 'kind' } },
    },
  }

  it('learns what the path states, forgets what it no longer states, and keeps what was typed', () => {
    const before = replay(GUIDE, toKind)
    expect(lineAfter(GUIDE, before, line).facts).toEqual({ noiseHz: { text: '12M', origin: { by: 'user' } } })
    const after = replay(GUIDE, { ...toKind, kind: 'rs-422' })
    expect(lineAfter(GUIDE, after, line).facts.lineKind).toEqual({
      text: 'rs-422',
      origin: { by: 'answer', node: 'kind' },
    })
  })

  it('never replaces a typed fact by an answer', () => {
    const typed: Line = { ...line, facts: { lineKind: { text: 'can', origin: { by: 'user' } } } }
    const after = lineAfter(GUIDE, replay(GUIDE, { ...toKind, kind: 'rs-422' }), typed)
    expect(after.facts.lineKind?.text).toBe('can')
  })
})

describe('a reading typed on a card', () => {
  beforeEach(() => restartTriage())

  it('becomes the fact of the line it is, with the unit of the card, and stays through later answers', () => {
    give(GUIDE, 'bond', 'poor', { reading: '20' })
    give(GUIDE, 'cable', 'whole', { reading: '9,5 dB' })
    give(GUIDE, 'wrong', 'reading')
    const { facts } = triage.value.line
    expect(facts.bondOhm).toEqual({ text: '20 mΩ', origin: { by: 'answer', node: 'bond' } })
    expect(facts.clampFallDb).toEqual({ text: '9,5 dB', origin: { by: 'answer', node: 'cable' } })
    const line = {
      ...triage.value.line,
      facts: { ...facts, clampOhm: { text: '100', origin: { by: 'user' } } },
    } as Line
    // 100/(10^(9.5/20) − 1)
    expect(resolve(line).figures(loopCheck as Check)).toMatchObject({ values: { loopOhm: expect.closeTo(50.37, 1) } })
  })

  it('is none where the answer says that it is something else', () => {
    give(GUIDE, 'cable', 'whole', { reading: '9.5' })
    give(GUIDE, 'cable', 'each-leg', { reading: '9.5' })
    expect(triage.value.line.facts.clampFallDb).toBeUndefined()
  })
})

describe('giving an answer', () => {
  beforeEach(() => restartTriage())

  it('saves it, carries the gate over to the line and says where it leads', () => {
    give(GUIDE, 'gate-danger', 'none')
    expect(triage.value.line.gate).toBe('unknown')
    const position = give(GUIDE, 'gate-lines', 'none')
    expect(triage.value).toMatchObject({
      answers: { 'gate-danger': 'none', 'gate-lines': 'none' },
      guideVersion: GUIDE.version,
      line: { gate: 'clear' },
    })
    expect(position.current.id).toBe('wrong')
  })

  it('bars the line again when a gate answer is changed', () => {
    give(GUIDE, 'gate-danger', 'none')
    give(GUIDE, 'gate-lines', 'none')
    give(GUIDE, 'gate-lines', 'fuel-quantity')
    expect(triage.value.line.gate).toBe('barred')
  })

  it('appends every answer to the history, with what was read beside it', () => {
    give(GUIDE, 'wrong', 'noise')
    give(GUIDE, 'bond', 'poor', { reading: '7.1', repeats: 'agreed' })
    give(GUIDE, 'wrong', 'reading')
    expect(triage.value.events?.map(({ evidence, option }) => `${evidence} ${option}`)).toEqual([
      'wrong noise',
      'bond poor',
      'wrong reading',
    ])
    expect(lastEvent('bond')).toMatchObject({ reading: '7.1', repeats: 'agreed', at: expect.stringMatching(/^20/) })
    expect(triage.value.answers).toMatchObject({ wrong: 'reading', bond: 'poor' })
  })

  it('takes a typed frequency as a fact of the line and as the answer to the question about the band', () => {
    giveFrequency(GUIDE, '121.5 MHz')
    expect(triage.value.answers['frequency']).toBe('exact')
    expect(triage.value.line.facts.noiseHz).toEqual({ text: '121.5 MHz', origin: { by: 'user' } })
    give(GUIDE, 'frequency', 'hf')
    expect(triage.value.line.facts.noiseHz?.text).toBe('121.5 MHz')
  })

  it('closes with cause and proof, and names it to a later complaint with the same answers', async () => {
    await loadComplaints()
    for (const [id, option] of Object.entries({
      wrong: 'noise',
      when: 'engine',
      rhythm: 'whine',
      'return-lift': 'gone',
    }))
      give(GUIDE, id, option)
    giveRepair(GUIDE, 'return', 'gone', { repeats: 'agreed' })
    const { closed } = closeWith(GUIDE, 'return', { cure: 'washers at the jack', proof: 'on, off, on: agreed' })
    expect(closed).toBe('return')
    const { answers, events, guideVersion, line } = triage.value
    const made = createFromTriage({
      title: 'Whine, right seat',
      answers,
      ...(events && { events }),
      guideVersion,
      line,
    })
    restartTriage()
    expect(earlierComplaints({ wrong: 'noise', when: 'engine', rhythm: 'whine' })).toEqual([
      { id: made.id, title: 'Whine, right seat', answers, cure: 'washers at the jack', proof: 'on, off, on: agreed' },
    ])
  })
})
