/** The trial check on a Line: its sentence, its bounds, the kinds that never get a part, and what a trial put away says. */
import { describe, expect, test } from 'vitest'
import { loopCheck } from '../../../src/calc/checks/loop/check.ts'
import { trialCheck } from '../../../src/calc/checks/trial/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { evaluateNow } from '../../../src/calc/line/evaluate.ts'
import { numbersIn, readFields } from '../../../src/calc/line/fields.ts'
import { lineFigures } from '../../../src/calc/line/line-figures.ts'
import { checkLine, resolve, resolveFact } from '../../../src/calc/line/resolver.ts'
import type { Line, Trial } from '../../../src/calc/types.ts'
import { sentenceOf } from '../../../src/calc/verdict.ts'
import { LINE_KINDS } from '../../../src/reference/line-kinds.ts'
import { si } from '../../support/run-check.ts'

const STEPS = 'bare; empty; 100p; 1n; 10n; empty; bare'
const ask = (texts: Record<string, string>) => evaluateNow(trialCheck, readFields(trialCheck, texts))
const said = (texts: Record<string, string>) => {
  const result = ask(texts)
  if (!result.ok) throw new Error(result.issues[0]?.message)
  return { ...result, sentence: sentenceOf(result).replaceAll('\u00a0', ' ') }
}
const CLEAN = { steps: STEPS, noise: ';same;same;gone;gone;same;same', signal: ';;good;good;good' }

describe('the answer in one sentence', () => {
  test.each([
    [CLEAN, 'A capacitor alone: yes. This trial shows 1.1 nF to 9 nF a leg, counting every tolerance of the part.'],
    [{}, 'Not known: needs the line, the steps of the trial and what the noise did at each step.'],
    [
      { ...CLEAN, noise: ';same;same;gone;gone;same;less' },
      'Not known: this trial says nothing, because the bare line was not the same again.',
    ],
    [
      { ...CLEAN, noise: ';same;same;same;less;same;same', signal: ';;good;degraded;degraded' },
      'No: a capacitor alone cannot do it. 10 nF did not clear it, and 1 nF degraded the signal.',
    ],
    [
      { ...CLEAN, signal: '' },
      'Not known: needs what the signal did. So far 1 nF cleared it and 100 pF did not clear it.',
    ],
  ] as const)('%o', (texts, sentence) => {
    expect(said(texts).sentence).toBe(sentence)
  })

  test('one place written beside the bare line is that of every adapter', () => {
    const pair = { ...CLEAN, lineKind: 'arinc-429-low' }
    const everywhere = said({ ...pair, places: Array(7).fill('between').join(';') })
    const once = said({ ...pair, places: 'between' })
    expect(once.sentence).toBe(everywhere.sentence)
    expect(once.bounds).toEqual(everywhere.bounds)
    expect(once.sentence).not.toBe(said(pair).sentence)
  })

  test('a capacitor beside which no place is written stood nobody knows where, and is asked for', () => {
    const pair = { ...CLEAN, lineKind: 'arinc-429-low' }
    const issue = (texts: Record<string, string>) => {
      const result = ask({ ...pair, ...texts })
      return result.ok ? undefined : result.issues.map(({ key, message }) => `${key}: ${message}`).join(' ')
    }
    // taken for chassis, 10 nF between the wires would show and exclude half of what it puts on a leg
    expect(issue({ places: ';;between;between' })).toMatch(/^places: Entry 5: where that capacitor stood/u)
    expect(issue({ places: ';;between;;chassis' })).toMatch(/^places: Entry 4: /u)
    // a trial that begins with an adapter: what stands beside it is its own place, and the next one has none
    expect(issue({ steps: '1n; 10n', noise: 'less; gone', signal: '', places: 'between' })).toMatch(
      /^places: Entry 2: /u,
    )
    // bare lines and empty adapters have no place; where none is written at all, every one stood to chassis
    expect(issue({ places: ';;between;between;between' })).toBeUndefined()
    expect(issue({ places: '' })).toBeUndefined()
  })

  test('a column that cannot be read names its entry and what would be right', () => {
    const issue = (texts: Record<string, string>) => {
      const result = ask(texts)
      return result.ok ? undefined : result.issues[0]?.message
    }
    expect(issue({ steps: 'bare; 1 kHz; bare' })).toMatch(/^Entry 2: /u)
    expect(issue({ steps: STEPS, noise: ';same;perhaps' })).toMatch(
      /^Entry 3: “perhaps” is not read here; write gone, less/u,
    )
    expect(issue({ steps: STEPS, signal: ';;bad' })).toBe('Entry 3: “bad” is none of good, not looked at, degraded.')
    expect(issue({ steps: 'bare; 1n; bare', noise: ';gone;same;same' })).toMatch(/^4 entries for 3 steps/u)
  })
})

describe('a yes that its own steps refute', () => {
  const LEVELS = { lineKind: 'discrete-28v', steps: 'bare; empty; 1n; 10n; empty; bare', neededDb: '20' }
  const PAIR = {
    lineKind: 'arinc-429-low',
    steps: 'bare; empty; 1n; 10n; 2.2n; empty; bare',
    places: ';;chassis;chassis;between',
  }

  test.each([
    // 62 − 38 = 24 dB less 2 dB of error clears 20 dB; 62 − 41 = 21 dB does not
    [
      'a larger value that may not have cleared',
      { ...LEVELS, noise: '62;62;38;41;62;62', signal: ';;good;good' },
      'needs a larger value that clears it by more than its readings may be off',
    ],
    [
      'levels without one on the bare line before anything was put in',
      { ...LEVELS, noise: ';62;38;38;62;62', signal: ';;good;good' },
      'needs a reading on the bare line first',
    ],
    [
      'an empty adapter that degraded the signal',
      { ...LEVELS, noise: ';same;gone;gone;same;same', signal: ';degraded;good;good' },
      'the empty adapter alone changed it',
    ],
    // 2.2 nF between the wires is 4.4 nF a leg: less than the 10 nF a leg that is said to do no harm
    [
      'less between the wires degraded the signal than did no harm to chassis',
      { ...PAIR, noise: ';same;gone;gone;same;same;same', signal: ';;good;good;degraded' },
      'a larger value did less than a smaller one',
    ],
  ] as const)('%s', (_, texts, why) => {
    const result = said(texts)
    expect(result.verdict).toBe('unknown')
    expect(result.sentence).toContain(why)
    expect(si(result, 'provenLeastF')).toBeUndefined()
  })
})

describe('a yes beside an assumption that the trial refutes', () => {
  // 22 dB by 1 nF at 1 MHz say some 2 kΩ side by side; 10 Ω were entered
  const READ = { ...CLEAN, noise: '60;60;52;38;20;60;60', neededDb: '20', readAtHz: '1M' }

  test('is with care: the impedance that was entered', () => {
    expect(said(READ).verdict).toBe('ok')
    const refuting = said({ ...READ, sourceOhm: '10', loadOhm: '10' })
    expect(refuting.verdict).toBe('marginal')
    expect(refuting.sentence).toBe(
      'A capacitor alone: with care. This trial shows 1.1 nF to 9 nF a leg, counting every tolerance of the part. It refutes the impedances that were entered.',
    )
  })

  test('is none of a capacitor to chassis, where only one between the wires did something', () => {
    const between = {
      lineKind: 'arinc-429-low',
      steps: 'bare; empty; 1n; 4.7n; 1n; 2.2n; empty; bare',
      noise: ';same;same;same;gone;gone;same;same',
      signal: ';good;good;good;good;good;good;good',
      places: ';;chassis;chassis;between;between',
    }
    const supposed = said(between)
    expect(supposed.verdict).toBe('unknown')
    expect(supposed.sentence).toContain('Not known: needs the noise mode: a capacitor to chassis did nothing')
    expect(supposed.needs?.key).toBe('mode')
    expect(si(supposed, 'provenLeastF')).toBeUndefined()
    // 4.7 nF on each leg did nothing, a tenth more at most: what is computed in common mode has to be larger
    expect(si(supposed, 'belowF')).toBeCloseTo(5.17e-9, 15)
    const differential = said({ ...between, mode: 'differential' })
    expect(differential.verdict).toBe('ok')
    expect(si(differential, 'provenLeastF')).toBeCloseTo(2.2e-9, 15)
  })
})

test('every line kind that bars a part refuses a trial in words, and shows no figure', () => {
  const barred = LINE_KINDS.filter(({ barredWhy, noTrialWhy }) => (barredWhy ?? noTrialWhy) !== undefined)
  expect(barred.length).toBeGreaterThan(8)
  for (const kind of barred) {
    const result = said({ ...CLEAN, lineKind: kind.id })
    expect(result.verdict).toBe('fails')
    expect(result.sentence).toContain('no trial. ')
    expect(result.outputs).toEqual({})
  }
  expect(said({ ...CLEAN, lineKind: 'arinc-429-low' }).verdict).toBe('ok')
})

const line = (facts: Line['facts'], trials: readonly Trial[] = []): Line => ({
  id: 'l',
  name: '',
  gate: 'clear',
  trials,
  facts,
})
const typed = (text: string) => ({ text, origin: { by: 'user' } }) as const
const AWAY: Trial = {
  id: 't1',
  at: '2026-11-26T08:00:00.000Z',
  ...CLEAN,
  noise: ';same;same;less;gone;same;same',
  signal: ';;good;good;degraded',
  places: '',
  repeats: '',
  times: '',
  removed: 'A. M., 14:35',
}

describe('on a Line', () => {
  test('what did not clear and what degraded are bounds of the trial, per leg, over the tolerance of the adapters', () => {
    const facts = { trialSteps: typed(STEPS), trialNoise: typed(AWAY.noise), trialSignal: typed(AWAY.signal) }
    const { bounds } = lineFigures(line(facts), undefined, [trialCheck])
    expect(bounds.map(({ id, side, by, per }) => [id, side, by, per])).toEqual([
      ['trial-not-cleared', 'least', { is: 'trial', trial: 'noted' }, 'leg'],
      ['trial-degraded', 'most', { is: 'trial', trial: 'noted' }, 'leg'],
    ])
    expect(bounds[0]?.farads).toBeCloseTo(1.1e-9, 20)
    expect(bounds[1]?.farads).toBeCloseTo(9e-9, 20)
  })

  test('the last trial put away counts until another is read, and its facts say so', () => {
    const kept = line({}, [AWAY])
    expect(checkLine(trialCheck, kept)).toMatchObject({ ok: true, verdict: 'unknown' })
    expect(resolveFact(kept, 'trialBelowF')).toMatchObject({ origin: { by: 'trial' } })
    expect(resolveFact(kept, 'trialSteps')).toMatchObject({ text: STEPS, origin: { by: 'trial', id: 't1' } })
    const next = line({ trialSteps: typed('bare') }, [AWAY])
    expect(resolveFact(next, 'trialNoise')).toBeUndefined()
    for (const fact of ['trialBelowF', 'trialFromF'] as const)
      expect(resolveFact(next, fact)?.text).toBe(resolveFact(kept, fact)?.text)
  })

  test('one put away that cannot be read is not passed over, though the one under way was emptied', () => {
    const unread = { ...AWAY, signal: ';;good;good;bad' }
    for (const steps of ['bare', '']) {
      const field = resolve(line({ trialSteps: typed(steps) }, [unread]))
        .fields(windowCheck)
        .find(({ key }) => key === 'trialFromF')
      expect([steps, field?.state, field?.issue?.code]).toEqual([steps, 'refused', 'unread'])
    }
  })

  test('what harmed the signal in a trial put away is not taken back by a later one of other parts', () => {
    const next = (steps: string, signal: string) =>
      line({ trialSteps: typed(steps), trialNoise: typed('same;gone'), trialSignal: typed(signal) }, [AWAY])
    const fromF = (of: Line) => numbersIn(resolveFact(of, 'trialFromF')?.text ?? '', 'capacitance', undefined)[0]
    // 10 nF degraded it, of an adapter that may be a tenth less
    expect(fromF(next('bare;470p', 'good;good'))).toBeCloseTo(9e-9, 20)
    expect(fromF(next('bare;47n', 'good;good'))).toBeCloseTo(9e-9, 20)
    expect(fromF(next('bare;2.2n', 'good;degraded'))).toBeCloseTo(0.9 * 2.2e-9, 20)
    // what did not clear the noise then may have been mended since
    expect(resolveFact(next('bare;470p', 'good;good'), 'trialBelowF')).toBeUndefined()
    // a trial of two ago counts like the last
    const later = { ...AWAY, id: 't2', steps: 'bare;470p', noise: 'same;gone', signal: 'good;good' }
    expect(fromF(line({}, [AWAY, later]))).toBeCloseTo(9e-9, 20)
  })

  test('nothing of a trial counts on a line that the safety questions bar', () => {
    const facts = { trialSteps: typed(STEPS), trialNoise: typed(AWAY.noise), trialSignal: typed(AWAY.signal) }
    expect(resolveFact(line(facts), 'trialBelowF')).toBeDefined()
    expect(resolveFact({ ...line(facts), gate: 'barred' }, 'trialBelowF')).toBeUndefined()
    expect(resolveFact({ ...line({}, [AWAY]), gate: 'barred' }, 'trialBelowF')).toBeUndefined()
    const refused = checkLine(trialCheck, { ...line(facts), gate: 'barred' })
    expect(refused).toMatchObject({ ok: false, issues: [{ key: 'steps', code: 'barred' }] })
    // the same texts on a line that is clear are another answer
    const noted = { ...facts, trialNoise: typed('60;60;58;50;31;60;60'), noiseHz: typed('1M') }
    const parallel = (gate: Line['gate']) => resolve({ ...line(noted), gate }).figures(loopCheck)
    expect(parallel('clear')).toMatchObject({ values: { parallelOhm: expect.any(Number) } })
    expect(parallel('barred')).not.toMatchObject({ values: { parallelOhm: expect.any(Number) } })
    // a clamp may be put around it: what a trial would add to that is left out
    const clamped = { ...facts, clampOhm: typed('100'), clampFallDb: typed('6'), noiseHz: typed('1M') }
    const loop = checkLine(loopCheck, { ...line(clamped), gate: 'barred' })
    expect(loop.ok && si(loop, 'loopOhm')).toBeGreaterThan(0)
    expect(loop.ok && loop.findings.some(({ sentence }) => sentence.includes('trial on this line'))).toBe(false)
  })

  test('a trial of the first version proves nothing by itself: it had no bare line', () => {
    const first = { ...AWAY, steps: '4.7e-9 F', noise: 'gone', signal: 'good', repeats: 'agreed' }
    const result = checkLine(trialCheck, line({}, [first]))
    expect(result).toMatchObject({ ok: true, verdict: 'unknown' })
    expect(result.ok && result.outputs['clearedF']?.cell).toEqual({ is: 'si', si: 4.7e-9 })
  })
})
