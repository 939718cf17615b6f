/** Safety, clause by clause: which caution stands on which card and outcome, and what the gate bars. */
import { describe, expect, it } from 'vitest'
import { optionsOf, replay } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import type { Evidence } from '../../src/guide/investigation.ts'
import { FIELD_NOTES } from '../../src/guide/notes.ts'
import { itemTexts, noteTexts, outcomeTexts } from '../../src/guide/screen-texts.ts'
import type { Outcome } from '../../src/guide/types.ts'
import { SAFETY_TEXTS } from '../../src/reference/safety.ts'

type Screen = { readonly id: string; readonly texts: string; readonly cautions: readonly string[] }
const ITEMS: readonly Screen[] = GUIDE.evidence.map((item) => ({
  id: item.id,
  texts: itemTexts(item).join(' '),
  cautions: item.cautions ?? [],
}))
const OUTCOMES: readonly Screen[] = GUIDE.outcomes.map((outcome) => ({
  id: outcome.id,
  texts: outcomeTexts(outcome).join(' '),
  cautions: outcome.cautions,
}))
const needing = (tool: string): readonly Evidence[] =>
  GUIDE.evidence.filter(({ needs }) => needs?.some((each) => each === tool))
/** Screens whose words match and whose caution is missing. */
const lacking = (screens: readonly Screen[], words: RegExp, caution: string): readonly string[] =>
  screens.filter(({ texts, cautions }) => words.test(texts) && !cautions.includes(caution)).map(({ id }) => id)

describe('cautions stand where they are needed', () => {
  it('a milliohm meter: approved near fuel', () => {
    expect(needing('milliohm meter').length).toBeGreaterThan(1)
    for (const { id, cautions } of needing('milliohm meter'))
      expect([id, cautions]).toEqual([id, expect.arrayContaining(['milliohm-fuel'])])
  })

  it('a running engine: nobody beside it', () => {
    const words = /engine running|hold (?:the )?engine speed|one magneto|change one thing: engine speed/i
    expect(lacking([...ITEMS, ...OUTCOMES], words, 'running-engine')).toEqual([])
    const all = [...ITEMS, ...OUTCOMES].map(({ texts }) => texts)
    for (const text of [...all, ...FIELD_NOTES.flatMap((note) => noteTexts(note))])
      expect(text).not.toMatch(/beside (?:the|a running) engine/)
    expect(SAFETY_TEXTS['running-engine'].text).toMatch(
      /Propeller, rotor, intake and exhaust.*cockpit.*outside the arc/,
    )
  })

  it('a key-down: listen first, short, low power, never near distress, no stores, people and fuel clear', () => {
    const keyed = GUIDE.evidence.filter(({ card }) => /\bkey\b/i.test(card?.do.join(' ') ?? ''))
    expect(keyed.map(({ id }) => id)).toEqual(expect.arrayContaining(['ptt', 'key-list']))
    for (const { id, cautions = [] } of [...keyed, ...GUIDE.outcomes.filter((each) => each.id.includes('own-tx'))])
      expect([id, ...cautions]).toEqual(expect.arrayContaining(['key-down', 'transmitter-hazard']))
    const words = SAFETY_TEXTS['key-down'].text
    for (const part of [
      'Listen first',
      'low power',
      '121.5',
      '243',
      '156.525',
      '156.8',
      'HF distress',
      'stores',
      'People and fuel',
    ])
      expect(words).toContain(part)
    expect(SAFETY_TEXTS['transmitter-hazard'].text).toMatch(/406 MHz beacon is never live.*self-test.*screened/)
  })

  it('a load on an antenna input: rated, DC block, no pulse ports; a battery: fused and separate', () => {
    for (const { id, cautions = [] } of needing('dummy load')) expect([id, ...cautions]).toContain('antenna-load')
    const load = SAFETY_TEXTS['antenna-load'].text
    for (const part of ['rated', 'never keyed', 'DC block', 'Transponder', 'radio-altimeter'])
      expect(load).toContain(part)
    for (const { id, cautions = [] } of needing('fused battery')) expect([id, ...cautions]).toContain('battery-test')
    const battery = SAFETY_TEXTS['battery-test'].text
    for (const part of ['Fused', 'polarity', 'feed open', 'fed back', 'case and minus', 'approved wiring'])
      expect(battery).toContain(part)
  })

  it('a probe at contacts: no back-probing; high voltage: trained staff', () => {
    for (const tool of ['oscilloscope', 'multimeter'])
      for (const { id, cautions = [], card } of needing(tool))
        if (!/shell|jack frame/.test(card?.with.map((one) => one.setting).join() ?? '') && !id.startsWith('aba-'))
          expect([id, ...cautions]).toContain('no-back-probing')
    expect(lacking(ITEMS, /[Hh]igh-voltage mapping/, 'high-voltage-map')).toEqual([])
  })
})

describe('the gate', () => {
  const lines = GUIDE.evidence.find(({ id }) => id === 'gate-lines')
  const barred = (lines === undefined ? [] : optionsOf(lines)).filter(({ gate }) => gate === 'barred')
  const WORDS: readonly RegExp[] = [
    /60\sV DC or 30\sV AC/,
    /230\sV AC.*540 and 800\sV DC/,
    /voltage of the line is not known/,
    /Attitude, air data, ILS or radio height without a flag/,
    /Landing gear, brakes or steering/,
    /Thrust reverser/,
    /Electric trim/,
    /autopilot servo/,
    /dead, tagged and measured/,
  ]
  it.each(WORDS)('bars %s', (words) => {
    expect(barred.map(({ label, hint = '' }) => `${label} ${hint}`).join('\n')).toMatch(words)
  })

  it('leaves a design question on paper, with looking and thinking open, and says so at no part', () => {
    const paper = replay(GUIDE, { 'gate-danger': 'none', 'gate-lines': 'dead-design', wrong: 'reading' })
    expect(paper).toMatchObject({ isPaperOnly: true, gate: 'barred' })
    expect(paper.stop).toBeUndefined()
  })

  it('is not taught a way round: no text says to answer otherwise so that a part may be advised', () => {
    const words = /answer (?:it |this )?(?:as )?(?:"|“)?none|instead answer|so that a part|to get past/i
    for (const { id, texts } of [...ITEMS, ...OUTCOMES]) expect([id, words.test(texts)]).toEqual([id, false])
  })
})

describe('asked for', () => {
  const optionIds = (id: string) => GUIDE.evidence.find((item) => item.id === id)?.options.map((option) => option.id)
  it.each([
    ['when', 'wet'],
    ['changed', 'washed'],
    ['when', 'storm'],
    ['when', 'device'],
    ['when', 'two'],
    ['when', 'touch'],
    ['when', 'moved'],
    ['when', 'ground'],
    ['squelch', 'steps'],
    ['squelch', 'one-radio'],
    ['wrong', 'complain'],
    ['changed', 'new-unit'],
    ['changed', 'new-victim'],
    ['rhythm', 'hum'],
    ['rhythm', 'whistle'],
    ['rhythm', 'dimmer'],
    ['cable', 'one-wire'],
    ['supply-scope', 'below'],
  ])('%s: %s', (item, option) => {
    expect(optionIds(item)).toContain(option)
  })

  it('touch speaks for contact and shield too, and one wire alone is not yet differential', () => {
    const says = (item: string, option: string) =>
      GUIDE.evidence.find(({ id }) => id === item)?.options.find(({ id }) => id === option)
    expect(says('when', 'touch')?.says).toMatchObject({ contact: 'for', shield: 'for' })
    expect(says('cable', 'one-wire')?.sets).toBeUndefined()
    expect(says('cable', 'each-leg')?.sets).toEqual([{ fact: 'noiseMode', text: 'differential' }])
  })

  it('a lightning upset that recovers is inspected; a dip gets no suppressor', () => {
    const end = (id: string): Outcome | undefined => GUIDE.outcomes.find((each) => each.id === id)
    const upset = {
      'gate-danger': 'none',
      'gate-lines': 'none',
      wrong: 'reset',
      when: 'storm',
      'strike-marks': 'found',
    }
    expect(replay(GUIDE, upset).current.id).toBe('inspect-strike')
    expect(end('supply-dip')?.class).toBe('not-a-filter')
    expect(end('supply-dip')?.headline).toContain('no suppressor')
  })
})
