/** What a line looks like to noise, and the topology that follows, against figures worked out by hand. */
import { describe, expect, it } from 'vitest'
import { clampFallDb, loopOhmFrom, pairFromSumAndParallel } from '../../src/calc/network/clamp.ts'
import { classOf, parallelOhm } from '../../src/calc/network/noise-input.ts'
import type { FactKey, Line } from '../../src/calc/types.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { advise } from '../../src/guide/rules.ts'
import { LINE_KINDS } from '../../src/reference/line-kinds.ts'
import { NOISE_SOURCES, noInputWhy, noiseInputOf } from '../../src/reference/noise-inputs.ts'
import { STANDING_WORDS } from '../../src/reference/standing.ts'

const adviceOf = (id: string, facts: Partial<Readonly<Record<FactKey, string>>>) => {
  const outcome = GUIDE.outcomes.find((each) => each.id === id)
  if (outcome === undefined) throw new Error(`no outcome ${id}`)
  const line: Line = {
    id: 'l',
    name: '',
    gate: 'clear',
    trials: [],
    facts: Object.fromEntries(Object.entries(facts).map(([key, text]) => [key, { text, origin: { by: 'user' } }])),
  }
  return advise({ guide: GUIDE, outcome, line, gate: 'clear' }).items.find(({ rule }) => rule === 'line-class')
}
const plain = (text = ''): string => text.replaceAll('\u00A0', ' ').replaceAll('\u2212', '-')

describe('the input at the noise frequency', () => {
  // 12 kohm with 50 pF: the reactance alone is 318, 106 and 26.5 ohm at 10, 30 and 120 MHz
  it.each([
    [10e6, 318, 'high'],
    [30e6, 106, 'middle'],
    [120e6, 26.5, 'low'],
  ])('is 12 kΩ with 50 pF at %d Hz: %d Ω, %s', (hz, ohm, word) => {
    const found = parallelOhm({ ohm: 12e3, farad: 50e-12, hz })
    expect(found / ohm).toBeCloseTo(1, 2)
    expect(classOf(found)).toBe(word)
  })
})

describe('the clamp', () => {
  it('lowers a loop of 50 Ω by 9.5 dB and one of 300 Ω by 2.5 dB, with 100 Ω', () => {
    expect(clampFallDb({ clampOhm: 100, loopOhm: 50 })).toBeCloseTo(9.54, 2)
    expect(clampFallDb({ clampOhm: 100, loopOhm: 300 })).toBeCloseTo(2.5, 2)
    expect(loopOhmFrom({ clampOhm: 100, fallDb: 9.5424 })).toBeCloseTo(50, 2)
  })

  it('solves with a capacitor for both ends: sum 200 and parallel 37.5 are 150 and 50 Ω', () => {
    expect(pairFromSumAndParallel({ sumOhm: 200, parallelOhm: 37.5 })).toEqual([150, 50])
    expect(pairFromSumAndParallel({ sumOhm: 100, parallelOhm: 30 })).toBeUndefined()
  })
})

describe('the class of every kind of line', () => {
  it('is given with its standing, or is said not to be known, never left out', () => {
    for (const kind of LINE_KINDS) {
      const input = noiseInputOf(kind)
      expect([kind.id, input === undefined]).toEqual([kind.id, noInputWhy(kind) !== undefined])
      if (input === undefined) continue
      expect(Object.keys(STANDING_WORDS)).toContain(input.source.standing)
      expect(input.ohm.least).toBeLessThanOrEqual(input.ohm.most)
      expect(input.farad.least).toBeLessThanOrEqual(input.farad.most)
    }
    for (const { ohm, usualOhm, source } of NOISE_SOURCES) {
      expect(usualOhm >= ohm.least && usualOhm <= ohm.most).toBe(true)
      expect(Object.keys(STANDING_WORDS)).toContain(source.standing)
    }
  })

  it('that is not known is said on the line, with what decides instead', () => {
    const found = adviceOf('filter-victim-box', { lineKind: 'usb-high-speed', noiseHz: '10 MHz' })
    expect(found).toMatchObject({ title: expect.stringContaining('not known'), missing: ['noise load impedance'] })
  })

  it('warns of a capacitor inside the box where that would turn it: 1 nF is 32 Ω at 5 MHz', () => {
    const high = (noiseHz: string) => plain(adviceOf('filter-victim-box', { lineKind: 'thermocouple', noiseHz })?.text)
    expect(high('10 MHz')).toContain('1 nF already inside')
    expect(high('4 MHz')).not.toContain('1 nF already inside')
  })
})

describe('topology from the class of the line', () => {
  it('is decided where the sign holds over the whole span', () => {
    // A bus of 0.5 to 10 ohm into 100 ohm and more: always LC. 20·log10(100/10) = 20
    expect(
      adviceOf('filter-victim-box', { lineKind: 'arinc-429-high', noiseHz: '1 MHz', noiseSourceOhm: '1;10' }),
    ).toMatchObject({
      topology: 'LC',
      text: expect.stringContaining('ARINC 429 receiver'),
    })
    // A cable of 50 to 300 ohm into 26.5 ohm: always CL
    const high = adviceOf('filter-victim-box', { lineKind: 'arinc-429-high', noiseHz: '120 MHz' })
    expect(high?.topology).toBe('CL')
    expect(plain(high?.text)).toContain('low at 120 MHz')
    expect(plain(high?.text)).toContain('common practice')
  })

  it('names the reading that decides where the sign changes', () => {
    const open = adviceOf('filter-victim-box', { lineKind: 'arinc-429-high', noiseHz: '30 MHz' })
    expect(open?.topology).toBeUndefined()
    expect(plain(open?.text)).toMatch(/100 Ω clamp.*9\.5\d* dB.*50 Ω.*2\.5 dB.*300 Ω/)
    const band = adviceOf('filter-victim-box', { lineKind: 'arinc-429-high', noiseHz: '2 MHz; 400 MHz' })
    expect(plain(band?.text)).toContain('the exact frequency decides')
  })

  it('takes a cable that may be shorter than a tenth of a wave for what it is, and decides less', () => {
    // 1 µH is 6.3 ohm and 20 pF are 8 kilohm at 1 MHz: the sign changes where 50 to 300 ohm would have decided
    const short = adviceOf('filter-victim-box', { lineKind: 'arinc-429-high', noiseHz: '1 MHz' })
    expect(short?.topology).toBeUndefined()
    expect(plain(short?.text)).toContain('of a metre or more')
    expect(plain(short?.text)).toContain('6.28 Ω to 7.96 kΩ')
  })

  it.each([
    // 300 ohm with 2.5 dB, less 26.5: 274 ohm before 26.5
    ['120 MHz', '2.4988', 'CL'],
    // 130 ohm with 4.96 dB, less 106: 24 ohm before 106
    ['30 MHz', '4.956', 'LC'],
  ])('at %s a clamp of 100 Ω that takes %s dB off decides: %s', (noiseHz, clampFallDb, topology) => {
    const facts = { lineKind: 'arinc-429-high', noiseHz, clampOhm: '100', clampFallDb }
    const found = adviceOf('filter-victim-box', facts)
    expect(found?.topology).toBe(topology)
    expect(plain(found?.text)).toContain('your clamp leaves beside the load')
  })

  it('asks for current and voltage where a clamp does not decide', () => {
    // 210 ohm, less 106: 104 ohm before 106, give or take a decibel
    const facts = { lineKind: 'arinc-429-high', noiseHz: '30 MHz', clampOhm: '100', clampFallDb: '3.38' }
    const found = adviceOf('filter-victim-box', { ...facts, readingOffDb: '1' })
    expect(found?.topology).toBeUndefined()
    expect(plain(found?.text)).toContain('in dBµA and dBµV')
  })

  it('is silent where both ends were stated: the figures decide then', () => {
    expect(
      adviceOf('filter-victim-box', { noiseSourceOhm: '5', noiseLoadOhm: '1k', noiseHz: '10 MHz' }),
    ).toBeUndefined()
  })
})
