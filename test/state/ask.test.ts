import 'fake-indexeddb/auto'
import { beforeEach, describe, expect, it } from 'vitest'
import type { Line } from '../../src/calc/types.ts'
import { replay } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { give, lineAfter } from '../../src/state/ask.ts'
import { restartTriage, triage } from '../../src/state/session.ts'

const toKind = { 'gate-danger': 'none', 'gate-lines': 'none', wrong: 'noise', changed: 'disturbed', bond: 'good' }

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
})
