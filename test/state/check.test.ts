import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Line } from '../../src/calc/types.ts'
import { createCheck, factsOf, lineWith, onwardFrom } from '../../src/state/check.ts'
import { readQuery } from '../../src/state/router.ts'
import { fakeCheck, slowCheck } from '../ui/fake-check.ts'

const noExpress = () => undefined
const line: Line = { id: 'x', name: '', gate: 'unknown', trials: [], facts: {} }

describe('the check model', () => {
  it('opens on the texts of an address and has its answer at once', () => {
    const model = createCheck(fakeCheck, readQuery('capacitanceF=4n7'), noExpress)
    const answer = model.answer.value
    expect(answer).toMatchObject({ is: 'done', result: { ok: true, verdict: 'ok' } })
    model.dispose()
  })

  it('takes the default of a missing key, and an empty one as unknown', () => {
    const open = (query: string) => createCheck(fakeCheck, readQuery(query), noExpress)
    const missing = open('')
    const empty = open('topology=')
    expect(missing.fields.value.find(({ key }) => key === 'topology')).toMatchObject({ text: 'C', state: 'value' })
    expect(empty.fields.value.find(({ key }) => key === 'topology')).toMatchObject({ text: '', state: 'missing' })
    missing.dispose()
    empty.dispose()
  })

  it('keeps the text as typed, computes anew at every key, and writes the address that brings it back', () => {
    const model = createCheck(fakeCheck, readQuery('tint=red'), noExpress)
    expect(model.isTouched.value).toBe(false)
    model.type('capacitanceF', '2,2 uF')
    expect(model.answer.value).toMatchObject({ is: 'done', result: { ok: true, verdict: 'fails' } })
    expect(model.hash.value).toBe('#/check/filter?topology=C&capacitanceF=2%2C2%20uF&tint=red')
    model.type('capacitanceF', '4..7')
    expect(model.answer.value).toMatchObject({ is: 'done', result: { ok: false, issues: [{ key: 'capacitanceF' }] } })
    expect(model.fields.value.find(({ key }) => key === 'capacitanceF')?.text).toBe('4..7')
    model.dispose()
  })

  it('says so when the check itself fails', () => {
    const broken = {
      ...fakeCheck,
      figures: () => {
        throw new RangeError('expected a positive resistance, got -3')
      },
    }
    const model = createCheck(broken, [], noExpress)
    expect(model.answer.value).toEqual({ is: 'broken', message: 'expected a positive resistance, got -3' })
    model.dispose()
  })
})

describe('a long computation', () => {
  let nowMs = 0
  beforeEach(() => {
    nowMs = 0
    vi.useFakeTimers()
    vi.spyOn(performance, 'now').mockImplementation(() => nowMs)
  })
  afterEach(() => {
    vi.useRealTimers()
    vi.restoreAllMocks()
  })
  /** each turn of the check takes 3 ms */
  const tick = () => {
    nowMs += 3
  }

  it('gives the screen back after 8 ms and goes on later until it is done', () => {
    const model = createCheck(slowCheck(7, tick), readQuery('capacitanceF=4n7'), noExpress)
    expect(nowMs).toBeLessThanOrEqual(9)
    expect(model.answer.value).toMatchObject({ is: 'working', slow: false, previous: undefined })
    vi.runAllTimers()
    expect(model.answer.value).toMatchObject({ is: 'done', result: { ok: true, verdict: 'ok' } })
    model.dispose()
  })

  it('asks for progress after 200 ms and can be stopped and started again', () => {
    const model = createCheck(slowCheck(500, tick), readQuery('capacitanceF=4n7'), noExpress)
    while (nowMs < 230) vi.runOnlyPendingTimers()
    expect(model.answer.value).toMatchObject({ is: 'working', slow: true })
    model.stop()
    vi.runAllTimers()
    expect(model.answer.value).toEqual({ is: 'stopped' })
    model.runAgain()
    vi.runAllTimers()
    expect(model.answer.value).toMatchObject({ is: 'done' })
    model.dispose()
  })

  it('never shows the answer of older fields as the answer: it is only the previous one while the new one is worked out', () => {
    const model = createCheck(slowCheck(5, tick), readQuery('capacitanceF=2.2uF'), noExpress)
    vi.runAllTimers()
    model.type('capacitanceF', '4n7')
    expect(model.answer.value).toMatchObject({ is: 'working', previous: { ok: true, verdict: 'fails' } })
    model.type('capacitanceF', '4n8')
    expect(model.answer.value.is).toBe('working')
    vi.runAllTimers()
    expect(model.answer.value).toMatchObject({ is: 'done', result: { verdict: 'ok' } })
    model.dispose()
  })

  it('stops when the screen is left', () => {
    let turns = 0
    const model = createCheck(
      slowCheck(500, () => {
        tick()
        turns += 1
      }),
      [],
      noExpress,
    )
    model.dispose()
    const before = turns
    vi.runAllTimers()
    expect(turns).toBe(before)
  })
})

describe('facts on their way to the line and to other checks', () => {
  it('puts typed texts on the line and takes emptied ones off; results never enter', () => {
    const typed = lineWith(line, fakeCheck, { capacitanceF: '4n7', sourceOhm: '75' })
    expect(typed.facts).toEqual({
      markedF: { text: '4n7', origin: { by: 'user' } },
      noiseSourceOhm: { text: '75', origin: { by: 'user' } },
    })
    expect(lineWith(typed, fakeCheck, { capacitanceF: ' ' }).facts).toEqual({
      noiseSourceOhm: { text: '75', origin: { by: 'user' } },
    })
  })

  it('leaves the origin of a fact alone when its text did not change', () => {
    const known: Line = { ...line, facts: { topology: { text: 'PI', origin: { by: 'answer', node: 'kind' } } } }
    expect(lineWith(known, fakeCheck, { topology: 'PI' })).toEqual(known)
  })

  it('offers other checks that share facts, and never one text where several numbers do not fit', () => {
    const single = {
      ...fakeCheck,
      id: 'pair' as const,
      inputs: fakeCheck.inputs.map((input) =>
        input.key === 'sourceOhm'
          ? { ...input, type: { is: 'number', quantity: 'resistance', min: 1, max: 9 } as const }
          : input,
      ),
    }
    const facts = factsOf(fakeCheck, { capacitanceF: '4n7', sourceOhm: '1;10' }, undefined)
    expect(onwardFrom(fakeCheck, facts, [fakeCheck, single])).toMatchObject([
      { check: { id: 'pair' }, sharedCount: 2, hash: '#/check/pair?topology=C&capacitanceF=4n7' },
    ])
  })
})
