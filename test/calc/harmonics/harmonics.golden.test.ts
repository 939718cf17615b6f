/** Harmonics against published landings and textbook spectra, counted one by one in the test. */
import { describe, expect, test } from 'vitest'
import { harmonicsCheck } from '../../../src/calc/checks/harmonics/check.ts'
import { type HarmonicsFigures, harmonicsFigures } from '../../../src/calc/checks/harmonics/figures.ts'
import {
  avoidingShift,
  cornerHz,
  type Fundamental,
  landingOf,
  levelDb,
  thirdOrder,
} from '../../../src/calc/harmonics/spectrum.ts'
import fc from '../../support/property.ts'
import { random } from '../../support/random.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'

const plain = (text: string): string => text.replaceAll('\u00a0', ' ')
const L1 = { id: 'l1', fromHz: 1563.42e6, toHz: 1587.42e6, channelHz: 1575.42e6 }
const sent = (hz: number): Fundamental => ({ hz, offFrac: 0, waveform: 'transmitter', riseSec: undefined })

describe('VHF transmitters beside GNSS L1 (radio tests of that interference)', () => {
  test('13 × 121.175 MHz is 1575.275 MHz, 145 kHz below it; exactly on it from 121.18615 MHz', () => {
    const result = run(harmonicsCheck, { fundamentalHz: '121.175M', waveforms: 'transmitter' })
    expect(plain(result.headline)).toBe(
      'With care: 13 × 121.175 MHz is 1.575275 GHz, 145 kHz from GNSS L1 on 1.57542 GHz; 6 more lie in bands.',
    )
    expect(si(result, 'productHz')).toBeCloseTo(1575.275e6, 0)
    expect(si(result, 'fromChannelHz')).toBeCloseTo(-145e3, 0)
    expect(si(result, 'order')).toBe(13)
    expect((si(result, 'exactHz') ?? 0) / 1e6).toBeCloseTo(121.18615, 4)
  })

  test('12 × 131.25 MHz is 1575.00 MHz; exactly on it from 131.285 MHz', () => {
    const landing = landingOf(sent(131.25e6), 0, L1)
    expect(landing?.terms).toEqual([{ of: 0, times: 12 }])
    expect(landing?.hz).toBe(1575e6)
    expect(landing?.fromChannelHz).toBe(-420e3)
    expect(1575.42 / 12).toBeCloseTo(131.285, 3)
  })

  test('the channels that are checked by radio tests land inside the band, their neighbours outside do not', () => {
    for (const mhz of [121.15, 121.175, 121.2, 121.225, 121.25, 131.2, 131.25, 131.3])
      expect(landingOf(sent(mhz * 1e6), 0, L1)).toBeDefined()
    for (const mhz of [118, 125, 136.975]) expect(landingOf(sent(mhz * 1e6), 0, L1)).toBeUndefined()
  })
})

describe('levels', () => {
  test('a square wave has odd harmonics only, 1/n of the first', () => {
    const square: Fundamental = { hz: 1e6, offFrac: 0, waveform: 'square', riseSec: undefined }
    expect(levelDb(square, 3)).toBeCloseTo(-9.54, 2)
    expect(levelDb(square, 11)).toBeCloseTo(-20.83, 2)
    expect(landingOf(square, 0, { id: 'even', fromHz: 1.9e6, toHz: 2.1e6 })).toBeUndefined()
    expect(
      landingOf({ ...square, waveform: 'pulse' }, 0, { id: 'even', fromHz: 1.9e6, toHz: 2.1e6 })?.terms[0]?.times,
    ).toBe(2)
  })

  test('an edge of 10 ns turns the envelope at 31.8 MHz: a decade above it 20 dB lower than 1/n', () => {
    expect(cornerHz(10e-9) / 1e6).toBeCloseTo(31.83, 2)
    const edged: Fundamental = { hz: 1e6, offFrac: 0, waveform: 'pulse', riseSec: 10e-9 }
    expect(levelDb(edged, 318)).toBeCloseTo(-20 * Math.log10(318) - 20 * Math.log10(318e6 / 31.831e6), 2)
    expect(levelDb(edged, 20)).toBeCloseTo(-20 * Math.log10(20), 9)
  })
})

describe('landings against a count one by one', () => {
  test('of random fundamentals and bands, every one that lands is named and counted', () => {
    const draw = random(7)
    for (let i = 0; i < 500; i++) {
      const waveform = draw() < 0.5 ? 'square' : 'pulse'
      const fundamental: Fundamental = {
        hz: 10 ** (5 + 3 * draw()),
        offFrac: 0.02 * draw(),
        waveform,
        riseSec: undefined,
      }
      const fromHz = 10 ** (6 + 2 * draw())
      const toHz = fromHz * (1 + 0.2 * draw())
      const inside = Array.from({ length: 5000 }, (_, n) => n + 1).filter(
        (n) =>
          (waveform === 'pulse' || n % 2 === 1) &&
          n * fundamental.hz * (1 + fundamental.offFrac) >= fromHz &&
          n * fundamental.hz * (1 - fundamental.offFrac) <= toHz,
      )
      const found = landingOf(fundamental, 0, { id: 'band', fromHz, toHz })
      expect(found?.count ?? 0, `run ${i}`).toBe(inside.length)
      if (found !== undefined) expect(inside, `run ${i}`).toContain(found.terms[0]?.times)
    }
  })

  test('fundamentals far apart: every k1·a + k2·b + k3·c with |k1| + |k2| + |k3| = 3 but the harmonics, whatever its sign', () => {
    const far = [1.2e6, 10e6, 121.5e6]
    const found = thirdOrder(far.map(sent), { id: 'all', fromHz: 1, toHz: 1e9 })
    const K = [-3, -2, -1, 0, 1, 2, 3]
    const wanted = K.flatMap((a) => K.flatMap((b) => K.map((c) => [a, b, c])))
      .filter((k) => k.reduce((sum, one) => sum + Math.abs(one), 0) === 3 && k.filter((one) => one !== 0).length > 1)
      .map((k) => k.reduce((sum, one, i) => sum + one * (far[i] ?? 0), 0))
      .filter((hz) => hz > 0)
    const sorted = (all: readonly number[]) => all.map((hz) => Math.round(hz)).sort((a, b) => a - b)
    expect(sorted(found.map(({ hz }) => hz))).toEqual(sorted(wanted))
    // 121.5 − 2 × 1.2 = 119.1 MHz: a converter beside a transmitter is no yes for that channel
    const beside = run(harmonicsCheck, {
      fundamentalHz: '1.2M;121.5M',
      waveforms: 'sine;transmitter',
      offFrac: '0',
      victimHz: '119.1M',
      widthHz: '25k',
    })
    expect(beside.verdict).toBe('fails')
    expect(plain(beside.headline)).toContain('−2 × 1.2 MHz + 1 × 121.5 MHz')
  })

  test('2 × 60 − 120 MHz is 0 Hz as typed, and up to 24 MHz where each is within 10 %', () => {
    const beside = (offFrac: string) =>
      run(harmonicsCheck, {
        fundamentalHz: '60M;120M',
        waveforms: 'sine;sine',
        offFrac,
        victimHz: '10M',
        widthHz: '25k',
      })
    expect(beside('0').verdict).toBe('ok')
    expect(beside('0.1').verdict).not.toBe('ok')
  })

  test('2 × 119 − 121 MHz lands on 117 MHz, and all of the third order of three are found once', () => {
    const all = [sent(119e6), sent(121e6), sent(125e6)]
    const products = thirdOrder(all, { id: 'all', fromHz: 1, toHz: 1e9 })
    const hz = products.map((one) => Math.round(one.hz / 1e6)).sort((a, b) => a - b)
    // by hand: 2a − b, 2a + b, a + b − c and a + b + c
    expect(hz).toEqual([113, 115, 117, 117, 123, 123, 127, 129, 131, 359, 361, 363, 365, 367, 369, 371])
    expect(hz).toContain(117)
    expect(
      new Set(
        products.map(({ terms }) =>
          terms
            .map(({ of, times }) => `${of}:${times}`)
            .sort()
            .join(),
        ),
      ).size,
    ).toBe(products.length)
    // 2a ± b of six ordered pairs, a + b − c of three, a + b + c once
    expect(products).toHaveLength(12 + 3 + 1)
  })
})

describe('the shift that avoids a channel', () => {
  test('leaves no harmonic within the channel over the tolerance, and no smaller one does', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e5, max: 2e8, noNaN: true }),
        fc.double({ min: 0, max: 1e-3, noNaN: true }),
        (hz, offFrac) => {
          const fundamental: Fundamental = { hz, offFrac, waveform: 'pulse', riseSec: undefined }
          const [channelHz, halfHz] = [121.5e6, 12.5e3]
          const touches = (f: number) => {
            for (let n = 1; n * f * (1 - offFrac) <= channelHz + halfHz; n++)
              if (n * f * (1 + offFrac) >= channelHz - halfHz) return true
            return false
          }
          const shift = avoidingShift(fundamental, channelHz, halfHz)
          if (shift === undefined) return
          expect(touches(hz + shift)).toBe(false)
          if (shift !== 0) {
            expect(touches(hz)).toBe(true)
            for (const share of [0.25, 0.5, 0.75, 0.99]) expect(touches(hz + share * shift)).toBe(true)
            for (const share of [0.5, 0.99]) expect(touches(hz - share * shift)).toBe(true)
          }
        },
      ),
    )
  })
})

describe('the check', () => {
  test('asks for a fundamental, and refuses lists that do not go together', () => {
    expect(run(harmonicsCheck, {}).headline).toBe('Not known: needs the fundamental.')
    expect(issuesOf(harmonicsCheck, { fundamentalHz: '1M;2M;3M', waveforms: 'square;pulse' })).toEqual([
      'waveforms: 2 for 3 fundamentals; give one for all, or one for each, separated by “;”.',
    ])
  })

  test('in a channel that suffers: yes where none lands, no where one does, not known where the tolerance decides', () => {
    expect(
      run(harmonicsCheck, { fundamentalHz: '10M', victimHz: '121.5M', offFrac: '0', widthHz: '25k' }).verdict,
    ).toBe('ok')
    expect(
      run(harmonicsCheck, { fundamentalHz: '10.125M', victimHz: '121.5M', offFrac: '0', widthHz: '25k' }).verdict,
    ).toBe('fails')
    // 12 × 10.1235 MHz lies 18 kHz off; 0.01 % of it is 12 kHz
    const open = run(harmonicsCheck, { fundamentalHz: '10.1235M', victimHz: '121.5M', widthHz: '25k' })
    expect([open.verdict, open.headline.startsWith('Not known')]).toEqual(['unknown', true])
  })
})

test('each fundamental has its own rise time; one alone is meant for all', () => {
  const rises = (riseSec: readonly number[]) => {
    const { fundamentals } = harmonicsFigures({
      fundamentalHz: [1e6, 2e6],
      waveforms: [{ is: 'word', word: 'pulse' }],
      riseSec,
      offFrac: [0],
      victimHz: undefined,
      widthHz: 25e3,
    }) as HarmonicsFigures
    return fundamentals.map((one) => one.riseSec)
  }
  expect(rises([10e-9, 40e-9])).toEqual([10e-9, 40e-9])
  expect(rises([10e-9])).toEqual([10e-9, 10e-9])
})

test('two waveforms before any fundamental are no fault', () => {
  expect(issuesOf(harmonicsCheck, { waveforms: 'pulse; square' })).toEqual([])
  expect(issuesOf(harmonicsCheck, { fundamentalHz: '1M; 2M; 3M', waveforms: 'pulse; square' })).toHaveLength(1)
})
