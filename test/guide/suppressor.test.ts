/** A suppressor decided by what was answered, with the answers in its reason; or the fact that decides named. */
import { describe, expect, it } from 'vitest'
import type { FactKey, Line } from '../../src/calc/types.ts'
import { factsFrom, isEvidence, replay } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { advise } from '../../src/guide/rules.ts'
import type { Answers } from '../../src/guide/types.ts'

const adviceOn = (id: string, facts: Partial<Record<FactKey, string>>, rule: string) => {
  const outcome = GUIDE.outcomes.find((each) => each.id === id)
  if (outcome === undefined) throw new Error(`no outcome ${id}`)
  const line: Line = {
    id: 'l',
    name: '',
    gate: 'clear',
    trials: [],
    facts: Object.fromEntries(
      Object.entries(facts).map(([key, text]) => [key, { text, origin: { by: 'answer', node: 'x' } }]),
    ),
  }
  return advise({ guide: GUIDE, outcome, line, gate: 'clear' }).items.find((item) => item.rule === rule)
}
const sharing = (id: string, facts: Partial<Record<FactKey, string>>) => adviceOn(id, facts, 'sharing')
const side = (id: string, facts: Partial<Record<FactKey, string>>) => adviceOn(id, facts, 'filter-side')
const plain = (text = ''): string => text.replaceAll(/[\u00A0\u202F]/g, ' ')

describe('one for each contact, a group, or none', () => {
  it('is none where nothing but noise reaches the contacts', () => {
    const none = { surgeThreat: 'none' }
    expect(sharing('filter-victim-box', none)).toMatchObject({ decided: 'no suppressor' })
    expect(side('filter-victim-box', none)).toBeUndefined()
    expect(adviceOn('filter-victim-box', none, 'suppressor')?.text).toContain('No: you answered')
  })

  it('is one for each where lightning comes on every wire at once, however alike they are', () => {
    const facts = { surgeThreat: 'lightning', exposedContacts: 'many', contactsAlike: 'alike' }
    expect(sharing('suppressor-plan', facts)).toMatchObject({
      decided: 'one suppressor for each exposed contact',
      text: expect.stringContaining('sum of them all'),
    })
  })

  const STATIC = { surgeThreat: 'static', exposedContacts: 'many' }
  it.each([
    ['alike', /group, through steering diodes/],
    ['bipolar', /each exposed contact/],
    ['different', /each exposed contact/],
    ['apart', /each exposed contact/],
  ])('against static on many contacts that are %s: %s', (contactsAlike, words) => {
    expect(sharing('suppressor-static', { ...STATIC, contactsAlike })?.decided).toMatch(words)
  })

  it('names the fact that decides where an answer is missing', () => {
    expect(sharing('suppressor-plan', {})).toMatchObject({ missing: [expect.stringContaining('lightning')] })
    expect(sharing('suppressor-static', {})).toMatchObject({ missing: ['number of exposed contacts'] })
    const open = sharing('suppressor-static', STATIC)
    expect(open?.decided).toBeUndefined()
    expect(open?.text).toContain('like voltages')
  })
})

describe('ahead of the filter or behind it', () => {
  // waveform 4 at level 3 is 300 V open circuit
  const LIGHTNING = { surgeThreat: 'lightning', surgeWaveform: 'wf4', surgeLevel: '3' }
  const RINGING = { surgeTopology: 'LC', inductanceH: '10 µH', markedF: '100 nF', surgeLoadOhm: '10k' }

  it('is ahead where the capacitors would not stand the pulse, and says which volts', () => {
    const found = side('suppressor-plan', { ...LIGHTNING, ...RINGING, capacitorWithstandV: '100' })
    expect(found?.decided).toContain('ahead')
    expect(plain(found?.text)).toContain('stands 100 V would see up to 300 V')
  })

  it('is behind where they stand it and a light load lets the filter ring: √(L/C) is 10 Ω', () => {
    const stands = { ...LIGHTNING, ...RINGING, capacitorWithstandV: '500' }
    expect(side('suppressor-plan', stands)?.decided).toBe('behind the filter')
    expect(side('suppressor-plan', { ...stands, surgeLoadOhm: '5' })?.decided).toContain('ahead')
  })

  it('is ahead of a T whose capacitor does not stand twice what comes: it rings between two coils without a clamp', () => {
    // 300 V comes at level 3; a step into L and C without loss ends at twice itself
    const tee = { ...LIGHTNING, ...RINGING, surgeTopology: 'T' }
    const of = (capacitorWithstandV: string) => side('suppressor-plan', { ...tee, capacitorWithstandV })
    expect(of('500')?.decided).toContain('ahead')
    expect(plain(of('500')?.text)).toContain('would ring up to 600 V; it stands 500 V')
    expect(of('700')?.decided).toBe('behind the filter')
  })

  it('is ahead of a T wherever the pulse rings or nobody knows its shape: in tune it drives the capacitor far above twice', () => {
    // a source at the resonance of L and C raises the volts across C by its Q, which a light load makes large
    const tee = { surgeThreat: 'lightning', ...RINGING, surgeTopology: 'T', capacitorWithstandV: '5k' }
    const ringing = [
      side('suppressor-plan', { ...tee, surgeWaveform: 'wf3', surgeLevel: '3' }),
      side('pulses-cs116', { ...tee, surgeThreat: 'pulse', surgeWaveform: 'cs116', surgeOpenCircuitV: '600' }),
      side('suppressor-plan', { ...tee, surgeOpenCircuitV: '600' }),
      side('suppressor-switching', { ...tee, surgeWaveform: 'custom', surgeOpenCircuitV: '600' }),
    ]
    for (const found of ringing) {
      expect(found?.decided).toContain('ahead')
      expect(found?.text).toContain('a pulse that rings can drive it far above what comes')
    }
    // the same volts in one hump
    expect(side('suppressor-plan', { ...tee, surgeWaveform: 'wf4', surgeOpenCircuitV: '600' })?.decided).toBe(
      'behind the filter',
    )
  })

  it('is ahead for static whatever the capacitors stand, and ahead while nobody said', () => {
    expect(side('suppressor-static', { capacitorWithstandV: '5k' })?.decided).toContain('ahead')
    expect(side('suppressor-strike', {})?.text).toContain('nobody has said')
  })
})

describe('on the way to a suppressor', () => {
  const NOISE = ['frequency', 'need', 'mode', 'impedance']
  const PLAN: Answers = { 'gate-danger': 'none', 'gate-lines': 'none', wrong: 'plan', 'plan-direction': 'surge' }

  const walk = (answers: Answers) => {
    let now = answers
    const asked: string[] = []
    for (;;) {
      const { current } = replay(GUIDE, now)
      if (!isEvidence(current)) return { asked, end: current, answers: now }
      asked.push(current.id)
      const say: Answers = {
        'surge-threat': 'lightning',
        kind: 'arinc-429-high',
        'surge-level': 'level-3',
        'surge-contacts': 'few',
        'surge-alike': 'alike',
      }
      now = { ...now, [current.id]: say[current.id] ?? 'dont-know' }
    }
  }

  it('asks what decides it, never the noise, and lays line, waveform, level and mode into the surge check', () => {
    const { asked, end, answers } = walk(PLAN)
    expect(asked).toEqual(['surge-threat', 'kind', 'surge-level', 'surge-contacts', 'surge-alike'])
    expect(asked.filter((id) => NOISE.includes(id))).toEqual([])
    expect(end).toMatchObject({ id: 'suppressor-plan', checks: [{ check: 'surge' }, { check: 'window' }] })
    const facts = factsFrom(GUIDE, replay(GUIDE, answers))
    expect(Object.fromEntries(Object.entries(facts).map(([key, fact]) => [key, fact?.text]))).toMatchObject({
      lineKind: 'arinc-429-high',
      surgeWaveform: 'wf4',
      surgeLevel: '3',
      surgeMode: 'common',
    })
  })

  it('asks no more than the line where nothing reaches the contacts, and stops at a barred kind', () => {
    expect(replay(GUIDE, { ...PLAN, 'surge-threat': 'none', kind: 'can' }).current.id).toBe('suppressor-plan')
    const barred = { ...PLAN, 'surge-threat': 'static', kind: 'fire-detection', 'surge-level': 'dont-know' }
    expect(replay(GUIDE, { ...barred, 'surge-contacts': 'one' }).current.id).toBe('stop-kind')
  })
})
