/** A trial beside what the window computes: counted as bounds of its own, never over them, and handed on by the Line. */
import { describe, expect, test } from 'vitest'
import { trialCheck } from '../../../src/calc/checks/trial/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { checkLine, resolve, resolveFact } from '../../../src/calc/line/resolver.ts'
import type { Line, Success } from '../../../src/calc/types.ts'
import { run, si } from '../../support/run-check.ts'

// C ≥ √(10^2 − 1)/(2π·10 MHz·25 Ω) = 6.33 nF for 20 dB between 50 Ω and 50 Ω; every part as marked
const EXACT = {
  frequencyHz: '10M',
  neededDb: '20',
  sourceOhm: '50',
  loadOhm: '50',
  toleranceFrac: '0 %',
  temperatureFrac: '0',
  biasFrac: '0',
  ageingDecades: '0',
  esrOhm: '0',
  eslH: '0',
  bondOhm: '0',
  bondH: '0',
  topology: 'C',
  suppressorF: '0',
  existingF: '0',
}
const plain = (result: Success) => result.headline.replaceAll('\u00a0', ' ')
const sentences = (result: Success) =>
  result.findings
    .map(({ sentence }) => sentence)
    .join(' ')
    .replaceAll('\u00a0', ' ')
const KIND = { lineKind: 'discrete-28v', signalOhm: '10k' }

describe('beside what is computed', () => {
  const base = run(windowCheck, { ...EXACT, ...KIND, loadOhm: '50' })

  test('what did not clear is a least where it is more, and nothing where it is less', () => {
    const least = si(base, 'leastCapacitanceF') ?? 0
    expect(least).toBeGreaterThan(1e-9)
    const more = run(windowCheck, { ...EXACT, ...KIND, trialBelowF: '20n' })
    expect(si(more, 'leastCapacitanceF')).toBeCloseTo(20e-9, 15)
    const fewer = run(windowCheck, { ...EXACT, ...KIND, trialBelowF: '100p' })
    expect(si(fewer, 'leastCapacitanceF')).toBe(least)
    expect(more.bounds.map(({ id }) => id)).toContain('trial-not-cleared')
  })

  test('what did not clear though the computation had it cleared leaves no yes, in any topology, unless the trial shows the part', () => {
    // 6.33 nF are computed for 20 dB between 50 Ω and 50 Ω; 20 nF a leg did not clear it
    for (const topology of ['C', 'LC', '']) {
      const refuted = run(windowCheck, { ...EXACT, ...KIND, topology, inductanceH: '10u', trialBelowF: '20n' })
      expect([topology, refuted.verdict]).toEqual([topology, 'unknown'])
      expect(plain(refuted)).toBe(
        'Not known: needs path, mode and noise ends as they are: the trial refutes what is computed. 6.34 nF a leg should have cleared it, and more did not.',
      )
    }
    const shown = { trialBelowF: '20n', trialLeastF: '30n', trialMostF: '90n' }
    expect(run(windowCheck, { ...EXACT, ...KIND, ...shown }).verdict).toBe('ok')
    // within what adapters may be off it is no contradiction
    expect(run(windowCheck, { ...EXACT, ...KIND, trialBelowF: '7n' }).verdict).toBe('ok')
  })

  describe('of a trial that cannot be read', () => {
    const facts: Record<string, string> = {
      noiseHz: '10M',
      neededDb: '20',
      noiseSourceOhm: '50',
      noiseLoadOhm: '50',
      lineKind: 'discrete-28v',
      signalOhm: '10k',
      biasFrac: '10 %',
      topology: 'C',
    }
    const trial = {
      trialSteps: 'bare; empty; 1n; 4.7n; empty; bare',
      trialNoise: ';same;less;less;same;same',
      trialSignal: ';good;good;degraded;good;good',
    }
    const on = (texts: Record<string, string>): Line => ({
      id: 'l',
      name: '',
      gate: 'clear',
      trials: [],
      facts: Object.fromEntries(
        Object.entries({ ...facts, ...texts }).map(([key, text]) => [key, { text, origin: { by: 'user' } }]),
      ),
    })

    test('what it showed is not passed over', () => {
      const verdictOf = (texts: Record<string, string>) => {
        const result = checkLine(windowCheck, on(texts))
        return result.ok ? result.verdict : result.issues.map(({ message }) => message)
      }
      expect(verdictOf({})).toBe('ok')
      expect(verdictOf(trial)).toBe('fails')
      const unread = 'The trial on this line cannot be read, and what it shows counts here.'
      expect(verdictOf({ ...trial, trialSignal: ';good;good;bad' })).toEqual([
        `${unread} The signal at each step: Entry 4: “bad” is none of good, not looked at, degraded.`,
      ])
      expect(verdictOf({ ...trial, trialNoise: `${trial.trialNoise};same` })).toEqual([
        `${unread} The noise at each step: 7 entries for 6 steps; give one for each step, nothing between two semicolons where nothing was noted.`,
      ])
      // what is refused of the line itself is said once
      expect(verdictOf({ ...trial, lineKind: 'none such' })).toEqual([
        expect.stringMatching(/^“none such” is not one/u),
      ])
      // the message follows the text, though nothing else of the fields changed
      expect(verdictOf({ ...trial, trialSignal: ';good;good;worse' })).toEqual([expect.stringContaining('“worse”')])
      // without a trial nothing is missed; a barred line has none that counts
      expect(verdictOf({ trialSignal: ';good;bad' })).toBe('ok')
      const barred = checkLine(windowCheck, { ...on({ ...trial, trialSignal: ';good;good;bad' }), gate: 'barred' })
      expect(barred.ok).toBe(true)
    })

    test('nor what a trace needs', () => {
      const traced = (traceHz: string) => checkLine(windowCheck, on({ traceHz, traceDb: '90;95', limit: 'x' }))
      const result = traced('10M;20 parsec')
      expect(result.ok ? result.verdict : result.issues.map(({ message }) => message)).toEqual([
        expect.stringMatching(/^The trace on this line cannot be read, and what it needs counts here\. /u),
      ])
    })
  })

  test('the strip marks what was tried, and reaches that far', () => {
    const strip = (texts: Record<string, string>) => {
      const found = run(windowCheck, { ...EXACT, ...KIND, ...texts }).pictures.find(({ is }) => is === 'strip')
      if (found?.is !== 'strip') throw new Error('no strip')
      return found
    }
    expect(strip({}).marks).toEqual([])
    const tried = strip({ trialBelowF: '1.1n', trialLeastF: '20n', trialMostF: '60n', trialFromF: '900n' })
    expect(tried.marks.map(({ kind, atF }) => [kind, atF])).toEqual([
      ['failed', 1.1e-9],
      ['cleared', 20e-9],
      ['harmed', 900e-9],
    ])
    expect(tried.maxF).toBeGreaterThanOrEqual(900e-9)
    expect(tried.minF).toBeLessThanOrEqual(1.1e-9)
  })

  test('what degraded the signal is a most where it is less, and never opens what is computed', () => {
    const most = si(base, 'mostCapacitanceF') ?? 0
    expect(si(run(windowCheck, { ...EXACT, ...KIND, trialFromF: '10n' }), 'mostCapacitanceF')).toBeCloseTo(10e-9, 15)
    expect(si(run(windowCheck, { ...EXACT, ...KIND, trialFromF: '1u' }), 'mostCapacitanceF')).toBe(most)
  })

  test('a trial that degraded below what is needed closes it, both sides named', () => {
    const closed = run(windowCheck, { ...EXACT, ...KIND, trialFromF: '1n' })
    expect(closed.verdict).toBe('fails')
    expect(plain(closed)).toMatch(/the noise needs .*in a trial 1 nF a leg degraded the signal/u)
  })

  test('a computed part outside of what a trial showed is with care, one inside is supported, and one inside comes first', () => {
    const outside = run(windowCheck, { ...EXACT, ...KIND, trialLeastF: '100p', trialMostF: '1n' })
    expect(outside.verdict).toBe('marginal')
    expect(sentences(outside)).toContain('Computed, not shown')
    const inside = run(windowCheck, { ...EXACT, ...KIND, trialLeastF: '20n', trialMostF: '60n' })
    expect([inside.verdict, base.verdict]).toEqual(['ok', 'ok'])
    expect(si(inside, 'proposedF')).toBeGreaterThanOrEqual(20e-9)
    expect(si(base, 'proposedF')).toBeLessThan(20e-9)
    expect(sentences(inside)).toContain('Supported by the trial')
  })

  test('where nothing is known of what the signal stands, what a trial did no harm with stands as the ceiling', () => {
    const none = run(windowCheck, EXACT)
    expect(none.verdict).toBe('unknown')
    const shown = run(windowCheck, { ...EXACT, trialLeastF: '5n', trialMostF: '47n' })
    expect(si(shown, 'mostCapacitanceF')).toBeCloseTo(47e-9, 15)
  })
})

test('what degraded the signal is too much, and says nothing of what lies below it', () => {
  for (const kind of [{}, { lineKind: 'power-28-vdc' }]) {
    for (const topology of ['C', '']) {
      const without = run(windowCheck, { ...EXACT, ...kind, topology })
      const degraded = run(windowCheck, { ...EXACT, ...kind, topology, trialFromF: '90n' })
      expect([without.verdict, degraded.verdict]).toEqual(['unknown', 'unknown'])
      expect(run(windowCheck, { ...EXACT, ...kind, topology: 'C', trialFromF: '1n' }).verdict).toBe('fails')
    }
  }
})

const typed = (text: string) => ({ text, origin: { by: 'user' } }) as const
const facts = (texts: Record<string, string>): Line['facts'] =>
  Object.fromEntries(Object.entries(texts).map(([key, text]) => [key, typed(text)]))

describe('on one Line', () => {
  const noted = facts({
    lineKind: 'arinc-429-low',
    noiseHz: '1M',
    neededDb: '20',
    noiseMode: 'common',
    trialSteps: 'bare; empty; 470p; 2.2n; 10n; empty; bare',
    // 300 Ω and 300 Ω of the pair: 150 Ω side by side against twice the capacitor of each leg
    trialNoise: '60; 60; 57.4; 48; 35.1; 60; 60',
    trialSignal: ';; good; good; good',
  })
  const line: Line = { id: 'l', name: '', gate: 'clear', trials: [], facts: noted }

  test('the readings of a pair give the impedance of the pair: both legs count', () => {
    const result = checkLine(trialCheck, line)
    if (!result.ok) throw new Error(result.issues[0]?.message)
    // by hand: 20·log10√(1 + (2π·1 MHz·2·10 nF·150 Ω)²) = 25.5 dB and for 470 pF 2.5 dB
    const ohm = si(result, 'parallelOhm') ?? 0
    expect(ohm).toBeGreaterThan(120)
    expect(ohm).toBeLessThan(180)
  })

  test('the window takes over what the trial showed, and says where from', () => {
    expect(resolveFact(line, 'trialBelowF')).toMatchObject({ origin: { by: 'trial' } })
    const field = resolve(line)
      .fields(windowCheck)
      .find(({ key }) => key === 'trialBelowF')
    expect(field?.origin).toEqual({ by: 'trial', id: 'noted' })
  })

  test('a clamp beside the trial gives both ends, and the window is worked out with them', () => {
    // 600 Ω together: 20·log10(1 + 300/600) = 3.52 dB
    const clamped: Line = {
      ...line,
      facts: { ...noted, ...facts({ clampOhm: '300', clampFallDb: '3.52', readingOffDb: '0.1', higherEnd: 'source' }) },
    }
    expect(resolveFact(line, 'noiseSourceOhm')).toBeUndefined()
    expect(resolveFact(clamped, 'noiseSourceOhm')).toMatchObject({ origin: { by: 'check', check: 'loop' } })
    // a capacitor alone is judged by the trial; with an inductor both ends are needed apart
    const coiled = (of: Line): Line => ({
      ...of,
      facts: { ...of.facts, ...facts({ topology: 'LC', inductanceH: '10u' }) },
    })
    const before = checkLine(windowCheck, coiled(line))
    const after = checkLine(windowCheck, coiled(clamped))
    if (!before.ok || !after.ok) throw new Error('refused')
    expect(si(before, 'worstLossDb')).toBeUndefined()
    expect(si(after, 'worstLossDb')).toBeGreaterThanOrEqual(20)
  })

  test('where the impedances entered and the readings have nothing in common, the trial says so', () => {
    const wrong: Line = { ...line, facts: { ...noted, ...facts({ noiseSourceOhm: '10', noiseLoadOhm: '10' }) } }
    const result = checkLine(trialCheck, wrong)
    if (!result.ok) throw new Error('refused')
    expect(result.findings[0]?.sentence).toContain('refutes the impedance')
    expect(result.headline).toMatch(/ It refutes the impedances that were entered\.$/u)
  })
})
