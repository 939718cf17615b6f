import { describe, expect, it } from 'vitest'
import { FACT_KEYS } from '../../src/calc/ids.ts'
import type { Complaint } from '../../src/store/complaint.ts'
import { keptLine, restoreLoose } from '../../src/store/line.ts'
import { restoreTriage } from '../../src/store/meta.ts'
import { newComplaint } from '../../src/store/new-complaint.ts'
import { restoreComplaint } from '../../src/store/restore-complaint.ts'
import fc from '../support/property.ts'

const LINE = {
  id: 'line-7',
  name: 'contact 23',
  gate: 'clear',
  trials: [
    {
      id: 't1',
      at: '2026-11-26T07:50:00.000Z',
      steps: 'bare; empty; 3.3n; empty; bare',
      places: '',
      noise: '; same; gone; same; same',
      signal: ';; good;;',
      repeats: ';; agreed;;',
      times: '14:05',
      removed: '',
    },
  ],
  facts: {
    noiseHz: { text: '118.1 MHz', origin: { by: 'user' } },
    bitRateHz: { text: '98 kb/s', origin: { by: 'answer', node: 'which-cable' } },
    toleranceFrac: { text: '17 %', origin: { by: 'assumed', why: 'class 2 part', favourable: false } },
  },
} as const

const MADE = newComplaint({
  title: 'Whine on ICS',
  note: 'since Tuesday',
  guideVersion: 3,
  answers: { rhythm: 'with-engine' },
  checks: [{ check: 'window', address: '#/check/window?noiseHz=118.1%20MHz' }],
})
const GOOD: Complaint = { ...MADE, lines: [{ ...keptLine(LINE, MADE.id, 0), updatedAt: MADE.updatedAt }] }

/** Anything, and things that look like a complaint but are wrong somewhere. */
const wild = fc.anything({
  withNullPrototype: true,
  withBigInt: true,
  withDate: true,
  withSet: true,
  withTypedArray: true,
})
const factKey = fc.oneof(fc.constantFrom(...FACT_KEYS), fc.string())
const wildFact = fc.oneof(
  wild,
  fc.record(
    {
      text: fc.oneof(fc.string(), wild),
      origin: fc.oneof(fc.record({ by: fc.oneof(fc.constantFrom('user', 'kind', 'answer', 'assumed'), wild) }), wild),
    },
    { requiredKeys: [] },
  ),
)
const PLACES = ['title', 'gate', 'name', 'trials.0', 'checks.0', 'checks', 'answers.q', 'facts.markedF', 'lines.a.gate']
const wildKept = fc.oneof(
  wild,
  fc.record({ at: fc.oneof(fc.constantFrom(...PLACES), wild), value: fc.oneof(wildFact, wild) }),
)
const wildLine = fc.oneof(
  wild,
  fc.record(
    {
      id: fc.oneof(fc.constantFrom('a', 'b'), wild),
      name: wild,
      gate: fc.oneof(fc.constantFrom('clear', 'barred'), wild),
      trials: fc.oneof(fc.array(wild), wild),
      facts: fc.oneof(fc.dictionary(factKey, wildFact), wild),
      rivals: wild,
      order: wild,
      updatedAt: wild,
      kept: fc.oneof(fc.array(wildKept), wild),
      extra: wild,
    },
    { requiredKeys: [] },
  ),
)
const wildComplaint = fc.oneof(
  wild,
  fc.record(
    {
      id: fc.oneof(fc.string(), wild),
      schemaVersion: fc.oneof(fc.nat(), wild),
      guideVersion: wild,
      title: fc.oneof(fc.string(), wild),
      note: wild,
      createdAt: fc.oneof(fc.constant('2026-03-04T05:06:07.000Z'), wild),
      updatedAt: wild,
      deletedAt: wild,
      isDemo: wild,
      answers: fc.oneof(fc.dictionary(fc.string(), fc.oneof(fc.string(), wild)), wild),
      lines: fc.oneof(fc.array(wildLine, { maxLength: 3 }), wild),
      checks: fc.oneof(fc.array(wild), wild),
      kept: fc.oneof(fc.array(wildKept), wild),
      later: wild,
    },
    { requiredKeys: [] },
  ),
)

function expectValid(complaint: Complaint): void {
  expect(complaint.id).toMatch(/^[\w-]{1,64}$/)
  expect(complaint.schemaVersion).toBeGreaterThanOrEqual(1)
  for (const time of [complaint.createdAt, complaint.updatedAt]) expect(Number.isFinite(Date.parse(time))).toBe(true)
  for (const text of [complaint.title, complaint.note, ...Object.values(complaint.answers)])
    expect(text).toBeTypeOf('string')
  expect(new Set(complaint.lines.map(({ id }) => id)).size).toBe(complaint.lines.length)
  for (const line of complaint.lines) {
    expect(['unknown', 'clear', 'barred']).toContain(line.gate)
    for (const [key, fact] of Object.entries(line.facts)) {
      expect(FACT_KEYS).toContain(key)
      expect(fact.text).toBeTypeOf('string')
      expect(['user', 'kind', 'answer', 'trial', 'check', 'assumed']).toContain(fact.origin.by)
    }
  }
  expect(JSON.parse(JSON.stringify(complaint))).toEqual(complaint)
}

const newLineRaw = () => ({ id: 'l', name: '', gate: 'unknown', trials: [], facts: {} })

describe('the gate for stored and imported complaints', () => {
  it('leaves a good complaint as it is', () => {
    expect(restoreComplaint(structuredClone(GOOD), 'stored')).toEqual(GOOD)
  })

  it('makes a valid complaint of anything, and restoring it again changes nothing', () => {
    fc.assert(
      fc.property(wildComplaint, fc.constantFrom('stored' as const, 'import' as const), (raw, from) => {
        const once = restoreComplaint(raw, from)
        expectValid(once)
        expect(restoreComplaint(JSON.parse(JSON.stringify(once)), from)).toEqual(once)
      }),
      { numRuns: 400 },
    )
  })

  it('never throws, not even at an object that throws when it is read', () => {
    const hostile = Object.defineProperty({}, 'lines', {
      enumerable: true,
      get: () => {
        throw new Error('no')
      },
    })
    expectValid(restoreComplaint(hostile, 'stored'))
  })

  it('sends the safety gate of every imported line back to unknown', () => {
    const barred = { ...LINE, id: 'line-8', gate: 'barred' }
    const imported = restoreComplaint({ ...GOOD, lines: [LINE, barred] }, 'import')
    expect(imported.lines.map(({ gate }) => gate)).toEqual(['unknown', 'unknown'])
    expect(restoreComplaint({ ...GOOD, lines: [LINE, barred] }, 'stored').lines.map(({ gate }) => gate)).toEqual([
      'clear',
      'barred',
    ])
  })

  it('keeps aside a fact, a field and a check it does not know', () => {
    const future = {
      ...GOOD,
      schemaVersion: 9,
      colour: 'amber',
      lines: [{ ...LINE, facts: { ...LINE.facts, fluxWb: { text: '3 mWb', origin: { by: 'user' } } } }],
      checks: [...GOOD.checks, { check: 'flux', address: '#/check/flux' }],
    }
    const restored = restoreComplaint(future, 'stored')
    expect(restored.schemaVersion).toBe(9)
    expect(restored.lines[0]?.facts).toEqual(LINE.facts)
    expect(restored.kept).toEqual([
      { at: 'colour', value: 'amber' },
      { at: 'checks.1', value: { check: 'flux', address: '#/check/flux' } },
    ])
    expect(restored.lines[0]?.kept).toEqual([{ at: 'facts.fluxWb', value: { text: '3 mWb', origin: { by: 'user' } } }])
  })

  it('takes a fact back that was kept aside once it is known', () => {
    const fact = { text: '4.7 nF', origin: { by: 'user' } }
    const restored = restoreComplaint(
      { ...GOOD, kept: [{ at: 'lines.line-7.facts.existingF', value: fact }] },
      'stored',
    )
    expect(restored.lines[0]?.facts.existingF).toEqual(fact)
    expect([restored.kept, restored.lines[0]?.kept]).toEqual([[], []])
  })

  it('takes everything back that was set aside once it is known, in every record', () => {
    const aside = (at: string, value: unknown) => ({ kept: [{ at, value }] })
    const trial = LINE.trials[0]
    const line = (at: string, value: unknown) => restoreLoose({ ...newLineRaw(), ...aside(at, value) })
    expect(restoreComplaint({ ...GOOD, title: '', ...aside('title', 'Whine') }, 'stored')).toMatchObject({
      title: 'Whine',
      kept: [],
    })
    expect(restoreComplaint({ ...GOOD, ...aside('rivals', []) }, 'stored')).toMatchObject({ rivals: [], kept: [] })
    expect(restoreComplaint({ ...GOOD, ...aside('answers.q', 'yes') }, 'stored').answers).toEqual({
      rhythm: 'with-engine',
      q: 'yes',
    })
    const check = { check: 'need', lineId: 'line-7' }
    expect(restoreComplaint({ ...GOOD, ...aside('checks.0', check) }, 'stored').checks).toEqual([check, ...GOOD.checks])
    expect(line('gate', 'barred')).toMatchObject({ gate: 'barred', kept: [] })
    expect(line('trials.3', trial)).toMatchObject({ trials: [trial], kept: [] })
    expect(line('facts.markedF', LINE.facts.noiseHz)).toMatchObject({ facts: { markedF: {} }, kept: [] })
    expect(restoreTriage({ ...aside('complaintId', 'c-9') })).toMatchObject({ complaintId: 'c-9', kept: [] })
  })

  it('does not put what was set aside over what was typed since', () => {
    const restored = restoreComplaint({ ...GOOD, kept: [{ at: 'title', value: 'an older one' }] }, 'stored')
    expect([restored.title, restored.kept]).toEqual(['Whine on ICS', [{ at: 'title', value: 'an older one' }]])
  })

  it('leaves in a fact, an origin, a trial and a check what it does not know of them', () => {
    const noiseHz = { text: '9 MHz', origin: { by: 'answer', node: 'q', sure: 'half' }, seenAt: 'gate 4' }
    const trial = { ...LINE.trials[0], ageDays: 3 }
    const check = { check: 'need', address: '#/check/need', edition: '2031-1' }
    const raw = { ...GOOD, lines: [{ ...LINE, facts: { noiseHz }, trials: [trial] }], checks: [check] }
    const restored = restoreComplaint(JSON.parse(JSON.stringify(raw)), 'stored')
    expect(restored.lines[0]?.facts).toEqual({ noiseHz })
    expect(restored.lines[0]?.trials).toEqual([trial])
    expect([restored.checks, restored.kept]).toEqual([[check], []])
  })

  it('reads a trial of the first version as a step, with what it does not know of it, and sets a damaged one aside', () => {
    const first = { id: 't9', legF: 2.2e-9, cleared: false, harmedSignal: true, repeatAgreed: false, ageDays: 3 }
    const { trials, kept } = restoreLoose({ ...newLineRaw(), trials: [first, { ...first, cleared: 'yes' }] })
    expect(trials).toEqual([
      {
        id: 't9',
        at: '1970-01-01T00:00:00.000Z',
        steps: '2.2e-9 F',
        places: '',
        noise: 'same',
        signal: 'degraded',
        repeats: 'differed',
        times: '',
        removed: '',
        ageDays: 3,
      },
    ])
    expect(kept).toEqual([{ at: 'trials.1', value: { ...first, cleared: 'yes' } }])
  })

  it('keeps aside what is wrong in a known field, with its place', () => {
    const restored = restoreComplaint(
      {
        ...GOOD,
        title: 17,
        createdAt: 'yesterday',
        answers: { rhythm: 4 },
        lines: [{ ...LINE, trials: [{ legF: -1 }] }, 'x'],
      },
      'stored',
    )
    expect(restored.title).toBe('')
    expect(restored.kept.map(({ at }) => at)).toEqual(['lines.1', 'title', 'createdAt', 'answers.rhythm'])
    expect(restored.lines[0]?.kept.map(({ at }) => at)).toEqual(['trials.0'])
  })

  it('gives a second line with the same id a new one', () => {
    const { lines } = restoreComplaint({ ...GOOD, lines: [LINE, { ...LINE, name: 'contact 24' }] }, 'stored')
    expect(lines.map(({ name }) => name)).toEqual(['contact 23', 'contact 24'])
    expect(lines[1]?.id).not.toBe('line-7')
  })
})
