import { signal } from '@preact/signals'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { filterCheck } from '../../src/calc/checks/filter/check.ts'
import { needCheck } from '../../src/calc/checks/need/check.ts'
import { powerCheck } from '../../src/calc/checks/power/check.ts'
import { windowCheck } from '../../src/calc/checks/window/check.ts'
import { wordlessWindow } from '../../src/calc/checks/window/wordless.ts'
import { withFact } from '../../src/calc/line/with-fact.ts'
import { CHECKS } from '../../src/calc/registry.ts'
import type { Cell, Check, Fact, Line, Success } from '../../src/calc/types.ts'
import { addressFor, createCheck, onwardFrom, PAUSE_MS } from '../../src/state/check.ts'
import { lineFrom } from '../../src/state/opening.ts'
import { splitQuery } from '../../src/state/query.ts'
import { readQuery } from '../../src/state/router.ts'
import { basis, fakeCheck, slowCheck } from '../ui/fake-check.ts'

const noExpress = () => undefined
const typed = (text: string): Fact => ({ text, origin: { by: 'user' } })
const answered = (text: string): Fact => ({ text, origin: { by: 'answer', node: 'kind' } })

/** A Line under way, and checks opened on it. */
function desk(facts: Line['facts'] = {}) {
  const line = signal<Line>({ id: 'x', name: '', gate: 'unknown', trials: [], facts })
  const write = (fact: keyof Line['facts'], next: Fact | undefined) => {
    line.value = withFact(line.value, fact, next)
  }
  const on = (check: Check, ownKeys: readonly string[] = []) => createCheck(check, { line, write, ownKeys }, noExpress)
  return { line, on }
}

/** The check on the Line an address brings. */
function open(check: Check, query: string) {
  const pairs = readQuery(query)
  const { texts, strangers } = splitQuery(pairs, check.inputs)
  const line = signal(lineFrom(check, pairs))
  const write = (fact: keyof Line['facts'], next: Fact | undefined) => {
    line.value = withFact(line.value, fact, next)
  }
  return createCheck(check, { line, write, ownKeys: Object.keys(texts), strangers }, noExpress)
}

const fieldOf = (model: ReturnType<typeof open>, key: string) => model.fields.value.find((field) => field.key === key)

describe('the check model', () => {
  it('opens on the texts of an address and has its answer at once', () => {
    const model = open(fakeCheck, 'capacitanceF=4n7')
    const answer = model.answer.value
    expect(answer).toMatchObject({ is: 'done', result: { ok: true, verdict: 'ok' } })
    model.dispose()
  })

  it('takes the default of a missing key, and an empty one as unknown', () => {
    const missing = open(fakeCheck, '')
    const empty = open(fakeCheck, 'topology=')
    expect(missing.fields.value.find(({ key }) => key === 'topology')).toMatchObject({ text: 'C', state: 'value' })
    expect(empty.fields.value.find(({ key }) => key === 'topology')).toMatchObject({ text: '', state: 'missing' })
    missing.dispose()
    empty.dispose()
  })

  it('keeps the text as typed, computes anew at every key, and writes the address that brings it back', () => {
    const model = open(fakeCheck, 'tint=red')
    expect(model.isTouched.value).toBe(false)
    model.type('capacitanceF', '2,2 uF')
    expect(model.answer.value).toMatchObject({ is: 'done', result: { ok: true, verdict: 'fails' } })
    expect(model.hash.value).toBe('#/check/filter?topology=C&capacitanceF=2%2C2%20uF&tint=red')
    model.type('capacitanceF', '4..7')
    model.leave()
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
    const model = open(broken, '')
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
    const model = open(slowCheck(7, tick), 'capacitanceF=4n7')
    expect(nowMs).toBeLessThanOrEqual(9)
    expect(model.answer.value).toMatchObject({ is: 'working', slow: false, previous: undefined })
    vi.runAllTimers()
    expect(model.answer.value).toMatchObject({ is: 'done', result: { ok: true, verdict: 'ok' } })
    model.dispose()
  })

  it('asks for progress after 200 ms and can be stopped and started again', () => {
    const model = open(slowCheck(500, tick), 'capacitanceF=4n7')
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
    const model = open(slowCheck(5, tick), 'capacitanceF=2.2uF')
    vi.runAllTimers()
    model.type('capacitanceF', '4n7')
    expect(model.answer.value).toMatchObject({ is: 'working', previous: { ok: true, verdict: 'fails' } })
    model.type('capacitanceF', '4n8')
    expect(model.answer.value.is).toBe('working')
    vi.runAllTimers()
    expect(model.answer.value).toMatchObject({ is: 'done', result: { verdict: 'ok' } })
    model.dispose()
  })

  it('refuses what is typed once typing pauses or the field is left; the last answer stays, as an old one', () => {
    const model = open(fakeCheck, 'capacitanceF=2.2uF')
    const old = { ok: true, verdict: 'fails' }
    model.type('capacitanceF', '4..')
    expect(model.unsaidKey.value).toBe('capacitanceF')
    expect(model.answer.value).toMatchObject({ is: 'working', slow: false, previous: old })
    vi.advanceTimersByTime(PAUSE_MS - 100)
    model.type('capacitanceF', '4..7')
    vi.advanceTimersByTime(PAUSE_MS - 100)
    expect(model.answer.value.is).toBe('working')
    vi.advanceTimersByTime(100)
    expect(model.unsaidKey.value).toBeUndefined()
    expect(model.answer.value).toMatchObject({ is: 'done', result: { ok: false }, previous: old })
    model.type('capacitanceF', '')
    expect(model.answer.value).toMatchObject({ is: 'working', previous: old })
    model.leave()
    expect(model.answer.value).toMatchObject({ is: 'done', result: { ok: true } })
    model.type('capacitanceF', '4.7 n')
    expect(model.unsaidKey.value).toBeUndefined()
    expect(model.answer.value).toMatchObject({ is: 'done', result: { verdict: 'ok' } })
    model.dispose()
  })

  it('does not wait for a choice that is left open: nothing is typed there', () => {
    const model = open(fakeCheck, 'capacitanceF=2.2uF')
    model.type('topology', '')
    expect(model.answer.value.is).toBe('done')
    model.dispose()
  })

  it('stops when the screen is left', () => {
    let turns = 0
    const counting = slowCheck(500, () => {
      tick()
      turns += 1
    })
    const model = open(counting, '')
    model.dispose()
    const before = turns
    vi.runAllTimers()
    expect(turns).toBe(before)
  })
})

describe('a check on a Line', () => {
  it('takes over what another check says, with where it comes from, and never writes it back', () => {
    const { line, on } = desk({ measuredDb: typed('80'), limitDb: typed('50') })
    const window = on(windowCheck)
    expect(fieldOf(window, 'neededDb')).toMatchObject({ text: '36 dB', origin: { by: 'check', check: 'need' } })
    on(needCheck).type('limitDb', '70')
    // 80 − 70 + 6
    expect(fieldOf(window, 'neededDb')?.text).toBe('16 dB')
    expect(Object.keys(line.value.facts)).toEqual(['measuredDb', 'limitDb'])
    expect(window.hash.value).toContain('neededDb=16%20dB')
    window.dispose()
  })

  it('computes with the supply of the kind as the kind is now, and stores none of it', () => {
    const { line, on } = desk({ lineKind: typed('power-28-vdc') })
    const power = on(powerCheck)
    expect(['workingRmsV', 'supplyHz'].map((key) => fieldOf(power, key)?.text)).toEqual(['29 V', '0 Hz'])
    power.type('capacitanceF', '20n')
    on(windowCheck).type('lineKind', 'power-115-vac-400')
    expect(['workingRmsV', 'supplyHz'].map((key) => fieldOf(power, key)?.text)).toEqual(['118 V', '407 Hz'])
    expect(fieldOf(power, 'supplyHz')?.origin?.by).toBe('kind')
    expect(Object.keys(line.value.facts).sort()).toEqual(['legF', 'lineKind'])
    power.dispose()
  })

  it('lets typing overrule, says what the other source says, and takes that back', () => {
    const { line, on } = desk({ measuredDb: typed('80'), limitDb: typed('50') })
    const window = on(windowCheck)
    window.type('neededDb', '20')
    const [other] = fieldOf(window, 'neededDb')?.others ?? []
    expect(other).toEqual({ text: '36 dB', origin: { by: 'check', check: 'need' } })
    window.take('neededDb', other)
    expect(fieldOf(window, 'neededDb')).toMatchObject({ text: '36 dB', origin: { by: 'check' } })
    expect(line.value.facts.neededDb).toBeUndefined()
    window.dispose()
  })

  it('says nothing of another source that says the same', () => {
    const { on } = desk({ measuredDb: typed('80'), limitDb: typed('50'), neededDb: typed('36') })
    const window = on(windowCheck)
    expect(fieldOf(window, 'neededDb')?.others).toBeUndefined()
    window.dispose()
  })

  it('holds a field emptied on purpose as not known where something else would fill it, and takes it off elsewhere', () => {
    const { line, on } = desk({ measuredDb: typed('80'), limitDb: typed('50'), noiseLoadOhm: typed('50') })
    const window = on(windowCheck)
    window.type('neededDb', '')
    window.type('loadOhm', ' ')
    window.type('toleranceFrac', '')
    expect(line.value.facts).toEqual({
      measuredDb: typed('80'),
      limitDb: typed('50'),
      neededDb: typed(''),
      toleranceFrac: typed(''),
    })
    expect(fieldOf(window, 'neededDb')).toMatchObject({ text: '', state: 'missing', others: [{ text: '36 dB' }] })
    expect(window.hash.value).toContain('toleranceFrac=&')
    window.take('toleranceFrac', undefined)
    expect(fieldOf(window, 'toleranceFrac')?.text).toBe('20 %')
    window.dispose()
  })

  it('gives an answer back that was typed over', () => {
    const { line, on } = desk({ lineKind: answered('can') })
    const window = on(windowCheck)
    window.type('lineKind', 'synchro')
    const [other] = fieldOf(window, 'lineKind')?.others ?? []
    expect(other).toEqual(answered('can'))
    window.take('lineKind', other)
    expect(line.value.facts.lineKind).toEqual(answered('can'))
    window.dispose()
  })

  it('shows several values where it takes one, and typing over them does not destroy them unseen', () => {
    const { line, on } = desk({ neededDb: typed('40; 20') })
    const filter = on(filterCheck)
    expect(fieldOf(filter, 'neededDb')).toMatchObject({ text: '', state: 'omitted', unsuited: typed('40; 20') })
    expect(filter.hash.value).not.toContain('neededDb')
    filter.type('neededDb', '40')
    const [before] = fieldOf(filter, 'neededDb')?.others ?? []
    expect(before).toEqual(typed('40; 20'))
    filter.take('neededDb', before)
    expect(line.value.facts.neededDb).toEqual(typed('40; 20'))
    expect(fieldOf(filter, 'neededDb')).toMatchObject({ text: '', unsuited: typed('40; 20') })
    filter.type('neededDb', '40;')
    expect(fieldOf(filter, 'neededDb')?.text).toBe('40;')
    filter.dispose()
  })

  it('never lets a lower claim slip into the place of a typed list it cannot take', () => {
    const { on } = desk({ measuredDb: typed('80'), limitDb: typed('50'), neededDb: typed('40; 20') })
    const filter = on(filterCheck)
    expect(fieldOf(filter, 'neededDb')).toMatchObject({
      text: '',
      state: 'omitted',
      unsuited: typed('40; 20'),
      others: [{ text: '36 dB', origin: { by: 'check' } }],
    })
    filter.dispose()
  })

  it('refuses a list its own address gives, as it stands', () => {
    const filter = open(filterCheck, 'neededDb=40;20')
    expect(fieldOf(filter, 'neededDb')).toMatchObject({ text: '40;20', state: 'refused' })
    filter.dispose()
  })

  it('computes nothing anew for a fact it does not read', () => {
    let count = 0
    const counting: Check = {
      ...fakeCheck,
      figures: (given) => {
        count += 1
        return fakeCheck.figures(given as never)
      },
    } as Check
    const { on } = desk({ markedF: typed('4n7') })
    const model = on(counting)
    const before = count
    on(needCheck).type('measuredDb', '61')
    expect(count).toBe(before)
    // the same text, now typed: only where it comes from has changed
    model.type('topology', 'C')
    expect(fieldOf(model, 'topology')?.origin).toEqual({ by: 'user' })
    expect(count).toBe(before)
    on(windowCheck).type('toleranceFrac', '10 %')
    expect(count).toBeGreaterThan(before)
    model.dispose()
  })

  it('offers the other checks of the same Line, those that share most first', () => {
    const { line } = desk({ measuredDb: typed('80'), limitDb: typed('50') })
    expect(onwardFrom(needCheck, line.value, CHECKS).map(({ check }) => check.id)).toEqual([
      'window',
      'filter',
      'trial',
      'trace',
    ])
  })

  it('reads what the check provides off the answer that stands, and works nothing out for it', () => {
    const { line } = desk({ lineKind: typed('arinc-429-high') })
    const shown = (cell: Cell): Success => ({
      ok: true,
      headline: '',
      findings: [],
      bounds: [],
      rungs: [],
      pictures: [],
      cautions: [],
      outputs: { proposedF: { cell, basis } },
    })
    const counted = vi.spyOn(wordlessWindow, 'figures')
    const other = { id: 'filter', title: '', question: '', inputs: [{ fact: 'markedF' }] } as const
    expect(onwardFrom(windowCheck, line.value, [other], undefined, shown({ is: 'none', why: '' }))).toEqual([])
    const [found] = onwardFrom(windowCheck, line.value, [other], undefined, shown({ is: 'si', si: 1e-9 }))
    expect(found?.sharedCount).toBe(1)
    expect(counted).not.toHaveBeenCalled()
    counted.mockRestore()
  })

  it('writes an address that brings the same answer elsewhere, derived texts and usual values included', () => {
    const { line } = desk({ measuredDb: typed('80'), limitDb: typed('50'), noiseHz: typed('9M') })
    const address = addressFor(windowCheck, line.value)
    const elsewhere = lineFrom(windowCheck, readQuery(address.split('?')[1] ?? ''))
    expect(addressFor(windowCheck, elsewhere)).toBe(address)
    expect(elsewhere.facts.neededDb?.text).toBe('36 dB')
    expect(elsewhere.gate).toBe('unknown')
  })
})

describe('a change', () => {
  const at = (model: ReturnType<typeof open>, key: string) => fieldOf(model, key)?.text

  it('is taken back field by field, keys of one spell of typing as one step', () => {
    const model = open(fakeCheck, 'capacitanceF=4n7')
    expect(model.undoable.value).toBeUndefined()
    for (const text of ['4', '47', '47p']) model.type('capacitanceF', text)
    model.leave()
    model.type('capacitanceF', '47p3')
    model.type('topology', 'PI')
    expect(model.undoable.value).toBe('Topology')
    model.undo()
    expect(at(model, 'topology')).toBe('C')
    expect(model.undoable.value).toBe('Capacitance')
    model.undo()
    expect(at(model, 'capacitanceF')).toBe('47p')
    model.undo()
    expect(at(model, 'capacitanceF')).toBe('4n7')
    expect(model.undoable.value).toBeUndefined()
    model.undo()
    expect(at(model, 'capacitanceF')).toBe('4n7')
    model.dispose()
  })

  it('brings an emptied or refused field back as it was', () => {
    const model = open(fakeCheck, 'capacitanceF=33 kg')
    model.type('capacitanceF', '')
    model.undo()
    expect(fieldOf(model, 'capacitanceF')).toMatchObject({ text: '33 kg', state: 'refused' })
    model.dispose()
  })

  it('of several fields at once is one step: a row of a table', () => {
    const model = open(fakeCheck, 'capacitanceF=4n7&sourceOhm=50')
    model.use([
      { key: 'capacitanceF', text: '10 nF' },
      { key: 'sourceOhm', text: '' },
      { key: 'no-such-field', text: '1' },
    ])
    expect([at(model, 'capacitanceF'), at(model, 'sourceOhm')]).toEqual(['10 nF', ''])
    expect(fieldOf(model, 'capacitanceF')?.origin).toEqual({ by: 'user' })
    model.undo()
    expect([at(model, 'capacitanceF'), at(model, 'sourceOhm')]).toEqual(['4n7', '50'])
    model.use([{ key: 'capacitanceF', text: '4n7' }])
    expect(model.undoable.value).toBeUndefined()
    model.dispose()
  })

  it('belongs to its Line: another one has nothing to take back', () => {
    const one = open(fakeCheck, 'capacitanceF=4n7')
    one.type('capacitanceF', '5n')
    const other = open(fakeCheck, 'capacitanceF=4n7')
    expect(other.undoable.value).toBeUndefined()
    one.undo()
    one.dispose()
    other.dispose()
  })
})
