import { describe, expect, it } from 'vitest'
import type { FactKey, Line } from '../../src/calc/types.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { SURGE_FACTS } from '../../src/guide/rules/surge.ts'
import { advise, PART_RULE_IDS, RULE_IDS } from '../../src/guide/rules.ts'
import type { Advice, AdviceItem, Outcome } from '../../src/guide/types.ts'
import { LINE_KINDS } from '../../src/reference/line-kinds.ts'
import fc from '../support/property.ts'

const lineOf = (facts: Partial<Readonly<Record<FactKey, string>>>, gate: Line['gate'] = 'clear'): Line => ({
  id: 'line-7',
  name: 'scratch',
  gate,
  trials: [],
  facts: Object.fromEntries(Object.entries(facts).map(([key, text]) => [key, { text, origin: { by: 'user' } }])),
})
const outcomeOf = (id: string): Outcome => {
  const found = GUIDE.outcomes.find((each) => each.id === id)
  if (found === undefined) throw new Error(`no outcome ${id}`)
  return found
}
const adviceOn = (
  id: string,
  facts: Partial<Readonly<Record<FactKey, string>>>,
  gate: Line['gate'] = 'clear',
): Advice => advise({ guide: GUIDE, outcome: outcomeOf(id), line: lineOf(facts, gate), gate })
const itemOf = (advice: Advice, rule: string): AdviceItem => {
  const item = advice.items.find((each) => each.rule === rule)
  if (item === undefined) throw new Error(`no item ${rule}`)
  return item
}
const topologyOf = (id: string, facts: Partial<Readonly<Record<FactKey, string>>>) =>
  itemOf(adviceOn(id, facts), 'topology')
const plain = (text: string): string => text.replaceAll('\u00A0', ' ').replaceAll('\u2212', '-')

describe('facts', () => {
  it('are decided as the checks decide them: a need from level and limit, a calculation worked out', () => {
    // 80 − 50 + 6
    const derived = itemOf(adviceOn('filter-victim-box', { measuredDb: '80', limitDb: '50' }), 'need')
    expect(plain(derived.text)).toContain('36 dB')
    const facts = { noiseSourceOhm: '5', noiseLoadOhm: '2*500' }
    expect(topologyOf('filter-victim-box', facts).missing.join()).toContain('“2*500” is not read')
    const outcome = outcomeOf('filter-victim-box')
    const express = () => ({ is: 'value', si: 1000 }) as const
    const advice = advise({ guide: GUIDE, outcome, line: lineOf(facts), gate: 'clear', express })
    expect(plain(itemOf(advice, 'topology').text)).toContain('46 dB')
  })

  it('take the capacitor on offer as stated, never what the window proposes', () => {
    const open = { lineKind: 'microphone', noiseHz: '120M', neededDb: '20', noiseSourceOhm: '50', noiseLoadOhm: '150' }
    expect(topologyOf('filter-victim-box', open).missing).toContain('capacitance on offer')
  })
})

describe('topology and orientation', () => {
  // filters.md 1.3 and 1.6 check table: LC - CL = 20 log10(Rl/Rs); 5 ohm to 1 kohm is 46.02 dB
  it('turns the inductor to the lower impedance, in words of box and cable', () => {
    const facts = { noiseSourceOhm: '5', noiseLoadOhm: '1k' }
    const victim = topologyOf('filter-victim-box', facts)
    expect(plain(victim.text)).toContain('46 dB')
    expect(victim).toMatchObject({ topology: 'LC', text: expect.stringContaining('inductor faces the cable') })
    expect(topologyOf('filter-source-box', facts).text).toContain('inductor faces the box')
  })

  it('mirrors when source and load change places', () => {
    const item = topologyOf('filter-victim-box', { noiseSourceOhm: '1k', noiseLoadOhm: '5' })
    expect(plain(item.text)).toContain('-46 dB')
    expect(item).toMatchObject({ topology: 'CL', text: expect.stringContaining('inductor faces the box') })
  })

  // check table: sqrt(L/C) of 1 uH and 10 nF is 10 ohm
  it('weighs the impedances against the parts: C above their √(L/C), L below', () => {
    const parts = { inductanceH: '1µ', markedF: '10n' }
    const high = topologyOf('filter-victim-box', { noiseSourceOhm: '50', noiseLoadOhm: '50', ...parts })
    expect(plain(high.text)).toContain('√(L/C) = 10 Ω')
    expect(high.topology).toBe('C')
    expect(topologyOf('filter-victim-box', { noiseSourceOhm: '3', noiseLoadOhm: '3,5', ...parts }).topology).toBe('L')
  })

  it('names no topology and every missing fact when the impedances are not known', () => {
    const item = topologyOf('filter-victim-box', {})
    expect(item.topology).toBeUndefined()
    expect(item.missing).toEqual([
      'noise source impedance',
      'noise load impedance',
      'inductance on offer',
      'capacitance on offer',
    ])
  })

  it('gives a span, and no way round, when a spread of sources lies on both sides of the load', () => {
    const item = topologyOf('filter-victim-box', { noiseSourceOhm: '1;10;50;150', noiseLoadOhm: '50' })
    expect(plain(item.text)).toMatch(/-9\.54 dB to 34 dB/)
    expect(item.text).toContain('do not say which way')
    expect(item.topology).toBeUndefined()
  })

  it('does not know box or cable while the direction is open', () => {
    const item = topologyOf('filter-open-way', { noiseSourceOhm: '5', noiseLoadOhm: '1k' })
    expect(item.text).toContain('the side the noise comes from')
    expect(item.missing).toContain('which way the noise goes')
  })

  it('says so when a fact is written in a way that is not read here', () => {
    const [first = ''] = topologyOf('filter-victim-box', { noiseSourceOhm: 'about ten' }).missing
    expect(first).toContain('about ten')
  })
})

describe('level, band and line', () => {
  it('converts no probe reading without a stated impedance, and shows what an impedance adds', () => {
    const item = itemOf(adviceOn('measure-probe', {}), 'probe')
    expect(plain(item.text)).toContain('50 Ω 34 dB')
    expect(item.missing).toContain('impedance the current flows in, stated by you')
  })

  it('invents no decibels for a headset', () => {
    expect(itemOf(adviceOn('measure-headset', {}), 'headset')).toMatchObject({
      text: expect.stringContaining('no decibels'),
    })
  })

  it('says that no low-pass cures differential noise inside the band of the pair', () => {
    const facts = { lineKind: 'arinc-429-high', noiseHz: '120 kHz; 9 MHz', noiseMode: 'differential' }
    expect(plain(itemOf(adviceOn('filter-victim-box', facts), 'in-band').text)).toMatch(
      /120 kHz lies inside .* no low-pass/,
    )
  })

  it('is silent about the own band when the noise lies above it', () => {
    const { items } = adviceOn('filter-victim-box', { lineKind: 'arinc-429-high', noiseHz: '9 MHz' })
    expect(items.map((item) => item.rule)).not.toContain('in-band')
  })

  it('asks for matched legs and ten times across on a pair, and not on a single line', () => {
    const item = itemOf(adviceOn('filter-victim-box', { lineKind: 'arinc-429-low', markedF: '470p' }), 'pair')
    expect(plain(item.text)).toContain('470 pF a leg that is 4.7 nF or more across')
    expect(adviceOn('filter-victim-box', { lineKind: 'discrete-ground' }).items.map((each) => each.rule)).not.toContain(
      'pair',
    )
  })

  it('puts the choke first on a fast pair only', () => {
    const place = (lineKind: string) => itemOf(adviceOn('filter-victim-inline', { lineKind }), 'place-inline').text
    expect(place('ethernet-100base-tx')).toContain('common-mode choke')
    expect(place('arinc-429-low')).not.toContain('choke')
  })

  it('names the part that fits a contact as a fact to collect, or takes the one entered', () => {
    expect(itemOf(adviceOn('filter-victim-box', {}), 'fits-contact').missing).toEqual([
      'largest capacitance that fits the contact',
    ])
    expect(plain(itemOf(adviceOn('filter-victim-box', { maxBuildableF: '47n' }), 'fits-contact').text)).toContain(
      '47 nF',
    )
  })
})

describe('trial and suppressor', () => {
  it('proposes the trial values of the kind, with leave and removal beside them', () => {
    const text = plain(itemOf(adviceOn('filter-victim-inline', { lineKind: 'arinc-429-high' }), 'trial').text)
    expect(text).toContain('100 pF, 470 pF, 1 nF')
    expect(text).toMatch(/leave of the certifying staff.*does not fly/)
  })

  it('proposes no trial on a line whose voltage can kill', () => {
    for (const lineKind of ['power-115-vac-400', 'power-270-vdc'])
      expect(itemOf(adviceOn('filter-victim-inline', { lineKind }), 'trial').text).toMatch(/^No in-line trial/)
  })

  it('collects the facts of a surge and lays its pulse into the surge check', () => {
    const advice = adviceOn('suppressor-strike', {})
    expect(itemOf(advice, 'surge-facts').missing).toEqual(SURGE_FACTS)
    expect(advice.outcome.checks[0]).toMatchObject({ check: 'surge', prefill: { waveform: 'wf4' } })
    expect(itemOf(advice, 'filter-side').title).toContain('cable side')
  })

  it('asks for the low-capacitance form on fast lines', () => {
    expect(itemOf(adviceOn('suppressor-static', { lineKind: 'can' }), 'suppressor').text).toContain(
      'low-capacitance form',
    )
    expect(itemOf(adviceOn('suppressor-static', { lineKind: 'discrete-28v' }), 'suppressor').text).toContain(
      'plain form',
    )
  })
})

describe('the gate over all advice', () => {
  const { outcomes } = GUIDE

  it.each(['unknown', 'barred'] as const)('advises no part at any outcome while the gate is %s', (gate) => {
    for (const { id, class: kind, steps } of outcomes) {
      const advice = adviceOn(id, { lineKind: 'can' }, gate)
      expect(advice.mayAdviseParts).toBe(false)
      expect(advice.items.filter((item) => PART_RULE_IDS.includes(item.rule))).toEqual([])
      if (kind === 'stop') expect(advice.steps).toEqual(steps)
      else expect(advice.steps.join(' ')).toMatch(/safety questions first/)
    }
  })

  it('advises no part at a stop nor on a barred kind, whatever the gate says', () => {
    for (const { id } of outcomes.filter((each) => each.class === 'stop'))
      expect(adviceOn(id, {}).mayAdviseParts).toBe(false)
    for (const { id } of LINE_KINDS.filter((kind) => kind.barredWhy !== undefined)) {
      const advice = adviceOn('filter-victim-inline', { lineKind: id })
      expect(advice.mayAdviseParts).toBe(false)
      expect(advice.steps).not.toEqual(advice.outcome.steps)
    }
  })

  it('gives the reason of the barred kind at the stop', () => {
    expect(itemOf(adviceOn('stop-kind', { lineKind: 'fire-detection' }, 'barred'), 'barred-kind').text).toMatch(
      /fire detection/,
    )
  })

  it('lets parts be advised at a clear gate', () => {
    expect(adviceOn('filter-victim-box', { lineKind: 'can' })).toMatchObject({
      mayAdviseParts: true,
      steps: outcomeOf('filter-victim-box').steps,
    })
  })

  it('refuses an outcome of another guide', () => {
    const outcome: Outcome = { ...outcomeOf('location'), id: 'elsewhere' }
    expect(() => advise({ guide: GUIDE, outcome, line: lineOf({}), gate: 'clear' })).toThrow(/elsewhere/)
  })

  it('uses every rule somewhere, and each says something with a basis', () => {
    const used = new Set(outcomes.flatMap((outcome) => outcome.rules))
    expect([...used].sort()).toEqual([...RULE_IDS].sort())
  })

  it('never throws and never prints NaN or infinity, whatever the facts say', () => {
    const text = fc.oneof(
      fc.string(),
      fc.constantFrom(
        '',
        '0',
        '-5',
        '1e-300',
        '1e300',
        '1;10;50',
        '4n7',
        '2*3',
        '50 Ω',
        'can',
        'lvds',
        'common',
        'differential',
      ),
    )
    const keys: readonly FactKey[] = [
      'lineKind',
      'noiseMode',
      'noiseSourceOhm',
      'noiseLoadOhm',
      'inductanceH',
      'markedF',
      'noiseHz',
      'neededDb',
      'bitRateHz',
      'maxBuildableF',
      'bondH',
    ]
    const anyFacts = fc.record(Object.fromEntries(keys.map((key) => [key, text])), { requiredKeys: [] })
    fc.assert(
      fc.property(fc.constantFrom(...outcomes), anyFacts, (outcome, facts) => {
        const { items } = advise({ guide: GUIDE, outcome, line: lineOf(facts), gate: 'clear' })
        for (const item of items) {
          expect(item.text).not.toMatch(/NaN|Infinity|undefined/)
          expect(item.basis.length).toBeGreaterThan(0)
        }
      }),
      { numRuns: 300 },
    )
  })
})
