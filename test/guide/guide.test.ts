import { gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { FACT_KEYS } from '../../src/calc/ids.ts'
import { CHECKS } from '../../src/calc/registry.ts'
import { CHECK_KEYS } from '../../src/guide/check-keys.ts'
import { nodeById, replay } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { LINE_KINDS } from '../../src/reference/line-kinds.ts'
import { NOISE_INPUTS } from '../../src/reference/noise-inputs.ts'

const { evidence, outcomes, suspects } = GUIDE

describe('the shipped guide', () => {
  it('is plain data: a JSON round trip and a structured clone give the same', () => {
    expect(JSON.parse(JSON.stringify(GUIDE))).toEqual(GUIDE)
    expect(structuredClone(GUIDE)).toEqual(GUIDE)
  })

  // Of the table alone, as it is stored. What a phone loads up to the first question is measured by the build.
  it('is small enough to be stored: under 50 kB compressed, cells and cards of the whole table included', () => {
    expect(gzipSync(JSON.stringify(GUIDE)).length).toBeLessThan(50_000)
  })

  it('has every suspect and every cure of the table it was built from', () => {
    expect(suspects.length).toBeGreaterThanOrEqual(40)
    const cures = new Set(suspects.map(({ cure }) => cure))
    for (const cure of 'source bond shield separate choke filter suppressor decouple bus antenna remove procedure box inspect'.split(
      ' ',
    ))
      expect([...cures]).toContain(cure)
    const classes = new Set(outcomes.map((each) => each.class))
    expect([...classes].sort()).toEqual(['filter', 'measure', 'not-a-filter', 'stop', 'suppressor'])
  })

  it('prefills only keys that the checks really have', () => {
    for (const [id, keys] of Object.entries(CHECK_KEYS)) {
      const check = CHECKS.find((each) => each.id === id)
      if (check !== undefined) expect(check.inputs.map((input) => input.key)).toEqual(expect.arrayContaining([...keys]))
    }
  })

  it('says of the whine what it would take, in numbers', () => {
    for (const id of ['whine-alternator', 'whine-rectifier', 'low-frequency'])
      expect(nodeById(GUIDE, id)).toMatchObject({
        class: 'not-a-filter',
        reason: expect.stringMatching(/660\sµF.*330\sµF/),
      })
  })

  it('states facts that exist, in texts that are not empty', () => {
    for (const { options } of evidence)
      for (const { fact, text } of options.flatMap((option) => option.sets ?? [])) {
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

  it('calls a lower need for a suppressor on the noise question no need: surge outcomes ask for no decibels', () => {
    for (const outcome of outcomes.filter((each) => each.class === 'suppressor'))
      expect(outcome.rules).not.toContain('need')
  })

  it('names only kinds of line that exist in the classes of inputs', () => {
    const kinds = new Set(LINE_KINDS.map(({ id }) => id))
    for (const id of NOISE_INPUTS.flatMap(({ kinds: named }) => named)) expect([...kinds]).toContain(id)
  })
})

it('shows every caution that belongs to triage at some item or result', () => {
  const shown = new Set([...evidence, ...outcomes].flatMap(({ cautions = [] }) => cautions))
  const needed =
    'no-trial power-off stored-charge breakers trial-not-for-flight trial-authority permanent-approved lightning-hirf-fuel hipot after-strike chassis-capacitance ok-bounds screening lethal-voltage transmitter-hazard matched-legs key-down running-engine milliohm-fuel high-voltage-map antenna-load battery-test no-back-probing'
  expect([...shown].sort()).toEqual(needed.split(' ').sort())
})

describe('the safety gate', () => {
  const gate = evidence.filter(({ about }) => about === 'safety')
  const barred = gate.flatMap(({ id, options }) =>
    options.filter((option) => option.gate === 'barred').map((option) => ({ id, option })),
  )

  it.each(barred)('bars parts and trials after $id: $option.id, and still goes on thinking', ({ id, option }) => {
    const before = id === 'gate-lines' ? { 'gate-danger': 'none' } : {}
    const { gate: now, stop, current } = replay(GUIDE, { ...before, [id]: option.id })
    expect(now).toBe('barred')
    expect(nodeById(GUIDE, current.id)).toBe(current)
    if (option.id === 'dead-design') expect(stop).toBeUndefined()
    else expect(stop).toMatchObject({ class: 'stop', reason: expect.stringMatching(/\w{3}/) })
  })

  it('names every line of the list that is left alone', () => {
    const ids = evidence.find(({ id }) => id === 'gate-lines')?.options.map(({ id }) => id)
    for (const id of 'pyrotechnic fuel-quantity engine-control flight-control stall-warning magneto strobe antenna-coax live-power voltage-unknown misleading gear-and-brakes reverser electric-trim fire-detection intrinsically-safe dead-design dont-know'.split(
      ' ',
    ))
      expect(ids).toContain(id)
  })

  it('is clear only after both answers "none"', () => {
    expect(replay(GUIDE, { 'gate-lines': 'none' }).gate).toBe('unknown')
    expect(replay(GUIDE, { 'gate-danger': 'none', 'gate-lines': 'none' }).gate).toBe('clear')
  })

  it('asks no look or test that opens a circuit while it is not clear', () => {
    const known = { 'gate-danger': 'none', 'gate-lines': 'flight-control', wrong: 'reading', when: 'transmit' }
    let answers: Readonly<Record<string, string>> = known
    for (let step = 0; step < 30; step++) {
      const { current } = replay(GUIDE, answers)
      if (!('options' in current)) return
      expect(current.opens).not.toBe(true)
      answers = { ...answers, [current.id]: 'dont-know' }
    }
    throw new Error('it never ended')
  })

  it('teaches no way round: no stop tells to answer "none"', () => {
    for (const { class: kind, steps, reason } of outcomes)
      if (kind === 'stop') expect([...steps, reason].join(' ')).not.toMatch(/answer "?none/i)
  })
})
