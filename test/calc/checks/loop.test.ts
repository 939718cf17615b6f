/** The loop check against circuits worked out with complex impedances in the test, and against figures of the trade. */
import { describe, expect, it } from 'vitest'
import { filterCheck } from '../../../src/calc/checks/filter/check.ts'
import { loopCheck } from '../../../src/calc/checks/loop/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { resolve } from '../../../src/calc/line/resolver.ts'
import type { FactKey, Line } from '../../../src/calc/types.ts'
import { type Complex, inverse, parallel, series } from '../../support/complex.ts'
import fc from '../../support/property.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'

const loop = (texts: Record<string, string>) => run(loopCheck, texts)
const size = ({ re, im }: Complex): number => Math.hypot(re, im)
const db = (ratio: number): number => 20 * Math.log10(ratio)
const HZ = 10e6
const capacitor = (farad: number): Complex => ({ re: 0, im: -1 / (2 * Math.PI * HZ * farad) })
/** Fall of the load voltage when a capacitor is laid across: a divider before and after. */
const dropBy = (source: Complex, load: Complex, farad: number): number => {
  const after = parallel(load, capacitor(farad))
  const share = (of: Complex) => size(of) / size(series(source, of))
  return db(share(load) / share(after))
}
const plain = (text: string): string => text.replaceAll(/[\u00A0\u202F]/g, ' ')

describe('a clamp', () => {
  // 20·log10(1 + 100/50) = 9.54 dB, 20·log10(1 + 100/300) = 2.50 dB
  it('of 100 Ω that takes 9.54 dB off reads 50 Ω, one that takes 2.5 dB off 300 Ω', () => {
    expect(si(loop({ clampOhm: '100', fallDb: '9.5424' }), 'loopOhm')).toBeCloseTo(50, 3)
    expect(si(loop({ clampOhm: '100', fallDb: '2.4988' }), 'loopOhm')).toBeCloseTo(300, 1)
  })

  it('says no figure where it changes nothing or the noise rises, and why', () => {
    expect(loop({ clampOhm: '100', fallDb: '0' }).headline).toContain('another cable')
    expect(loop({ clampOhm: '100', fallDb: '-3' }).headline).toContain('resonate')
    for (const fallDb of ['0', '-3']) expect(si(loop({ clampOhm: '100', fallDb }), 'loopOhm')).toBeUndefined()
  })

  it('says what a decibel would change where nobody said how far it may be off, and counts it where somebody did', () => {
    const open = loop({ clampOhm: '100', fallDb: '9.5424' })
    // 100/(10^(10.5424/20) − 1) = 42.3 and 100/(10^(8.5424/20) − 1) = 59.7
    expect(plain(open.findings.at(-1)?.sentence ?? '')).toMatch(/not entered.*42\.3 Ω or 59\.7 Ω/)
    const told = loop({ clampOhm: '100', fallDb: '9.5424', offDb: '1' })
    // a fall is the difference of two readings, each off by 1 dB: 7.5424 to 11.5424 dB, not 8.5424 to 10.5424
    expect(si(told, 'loopMostOhm')).toBeCloseTo(100 / (10 ** (7.5424 / 20) - 1), 6)
    expect(si(told, 'loopLeastOhm')).toBeCloseTo(100 / (10 ** (11.5424 / 20) + 1), 6)
  })

  it('counts the error of both readings of a fall, in the loop and in the source that comes of it', () => {
    const told = loop({ clampOhm: '100', fallDb: '6.02', currentDb: '60', voltageDb: '80', offDb: '1' })
    // 100/(10^(8.02/20) + 1) = 28.43 and 100/(10^(4.02/20) − 1) = 169.91
    expect(si(told, 'loopLeastOhm')).toBeCloseTo(28.43, 2)
    expect(si(told, 'loopMostOhm')).toBeCloseTo(169.91, 2)
    // the load at most 10^((81 − 59)/20) = 12.59: 169.91 + 12.59
    expect(si(told, 'sourceMostOhm')).toBeCloseTo(182.5, 2)
  })

  it('counts the error of both readings of a capacitor, and of clamp and capacitor in both ends', () => {
    const read = { clampOhm: '150', fallDb: '6', firstF: '1n', firstDb: '12', readAtHz: '30M', offDb: '1' }
    const told = loop(read)
    // √(10^(A/10) − 1)/(2π · 30 MHz · 1 nF) at 10 and 14 dB: 3 · 5.3052 = 15.915, 4.9111 · 5.3052 = 26.054
    expect(si(told, 'parallelLeastOhm')).toBeCloseTo(15.915, 2)
    expect(si(told, 'parallelMostOhm')).toBeCloseTo(26.054, 2)
    // S = 150/(10^(4/20) − 1) = 256.46, P = 15.915: (S ± √(S² − 4·S·P))/2 = 239.4 and 17.05
    expect(si(told, 'higherMostOhm')).toBeCloseTo(239.4, 1)
    expect(si(told, 'lowerLeastOhm')).toBeCloseTo(17.05, 1)
  })

  it('is an answer only when both ends go to the checks; before, it is not known which is which', () => {
    const alone = loop({ clampOhm: '100', fallDb: '9.5424' })
    expect([alone.verdict, alone.headline.startsWith('Not known')]).toEqual(['unknown', true])
    expect(loop({}).verdict).toBe('unknown')
    const read = { clampOhm: '100', fallDb: '9.5424', currentDb: '60 dBµA', voltageDb: '80 dBµV' }
    const both = loop({ ...read, offDb: '0' })
    expect(both.verdict).toBe('ok')
    expect(plain(both.headline)).toBe('The load is 10 Ω, the source 15 Ω to 60 Ω.')
    // one decibel of either reading makes the load 8.9 Ω: a figure that rests on none being off is no plain answer
    const unsaid = loop(read)
    expect(unsaid.verdict).toBe('marginal')
    expect(plain(unsaid.headline)).toBe(
      'With care, as if no reading were off: the load is 10 Ω, the source 15 Ω to 60 Ω.',
    )
  })

  it('is no plain yes where the load alone is more than the whole loop: both ends cancel', () => {
    // 1 + j100 into 9.6 − j99.5: together 10.61 Ω, the load alone 99.96 Ω; 20·log10(|100 + 10.6 + j0.5| / 10.61) = 20.36 dB
    const [source, load] = [
      { re: 1, im: 100 },
      { re: 9.6, im: -99.5 },
    ]
    const around = series(source, load)
    const fallDb = String(db(size(series(around, { re: 100, im: 0 })) / size(around)))
    const read = { clampOhm: '100', fallDb, currentDb: '40 dBµA', voltageDb: String(40 + db(size(load))) }
    const both = loop({ ...read, offDb: '1' })
    expect(both.verdict).toBe('marginal')
    expect(both.headline).toMatch(/^With care, both ends cancel: the load is/u)
    expect(both.findings.map(({ sentence }) => sentence).join(' ')).toContain('cancel there, a resonance')
  })

  it('is no plain yes to a load that was read where clamp and capacitor fit no two resistances', () => {
    // a sum of 50 Ω leaves at most 12.5 Ω side by side; 100 pF at 10 MHz that takes 1 dB off reads 81 Ω
    const read = { clampOhm: '100', fallDb: '9.5424', currentDb: '60 dBµA', voltageDb: '80 dBµV' }
    const refuted = loop({ ...read, firstF: '100p', firstDb: '1', readAtHz: '10M' })
    expect(refuted.verdict).toBe('marginal')
    expect(refuted.headline).toMatch(/^With care, something resonates or a reading is off: the load is/u)
  })

  it('hands the load of a current and a voltage over at its least, as far as both may be off', () => {
    const read = { clampOhm: '100', fallDb: '6', currentDb: '20 dBµA', voltageDb: '60 dBµV' }
    expect(si(loop(read), 'loadOhm')).toBeCloseTo(100, 9)
    // one decibel less voltage, one more current: 10^(38/20)
    expect(si(loop({ ...read, offDb: '1' }), 'loadOhm')).toBeCloseTo(10 ** 1.9, 9)
  })

  it('is no plain yes where one capacitor took both ends for resistances, or two showed that they are none', () => {
    const read = { clampOhm: '150', fallDb: '6', firstF: '1n', firstDb: '12', readAtHz: '30M', higherEnd: 'source' }
    const one = loop(read)
    expect(one.verdict).toBe('marginal')
    expect(plain(one.headline)).toMatch(/^With care, if both are resistances: the load is/u)
    // ω·C·R of 20.44 Ω ten times as far: 10·log10(1 + 38.54²) = 31.7 dB; 24 dB is that of a line that resonates
    expect(loop({ ...read, secondF: '10n', secondDb: '31.72', offDb: '0' }).verdict).toBe('ok')
    expect(loop({ ...read, secondF: '10n', secondDb: '29' }).verdict).not.toBe('ok')
  })

  it('is no plain yes where a reactance fits two capacitors inside the error of the readings', () => {
    // G = 10 mS alone with 100 and 300 pF at 10 MHz, b = 6.2832 and 18.850 mS: 10·log10(1 + 0.62832²) = 1.445 dB and 6.582 dB;
    // with B = +2 mS beside it 10·log10((100 + 8.2832²)/104) = 2.099 dB and 10·log10((100 + 20.850²)/104) = 7.110 dB, both within 1 dB
    const read = { clampOhm: '300', fallDb: '4.437', firstF: '100p', secondF: '300p', readAtHz: '10M' }
    const resistive = { ...read, firstDb: '1.445', secondDb: '6.582', higherEnd: 'source' }
    const said = (offDb: string) =>
      loop({ ...resistive, offDb })
        .findings.map(({ sentence }) => sentence)
        .join(' ')
    expect(loop({ ...resistive, offDb: '1' }).verdict).toBe('marginal')
    expect(said('1')).toContain('a reactance beside both ends gives the same readings')
    expect(said('1')).not.toContain('nothing that resonates')
    // falls off by 0.04 dB: 1.485 and 6.542 dB give e = 64.88 and 186.2 1/S, Y² = 103.6 µS², B = 0.218 mS, 2.1 % of G
    expect(loop({ ...resistive, offDb: '0.02' }).verdict).toBe('ok')
    expect(said('0.02')).toContain('nothing that resonates')
  })

  it('leaves the source open, and bounds what a capacitor can work against by a quarter', () => {
    const result = loop({ clampOhm: '100', fallDb: '9.5424' })
    expect(plain(result.findings.map(({ sentence }) => sentence).join(' '))).toContain('12.5 Ω at most')
    expect(si(result, 'sourceLeastOhm')).toBeUndefined()
    expect(si(result, 'loadOhm')).toBeUndefined()
  })
})

describe('clamp, probe and capacitors together', () => {
  it('solve sum 200 and parallel 37.5 for 150 and 50 Ω, and hand over only the way round that was named', () => {
    // one capacitor of b = 1/37.5 S lowers a real circuit by 10·log10(2)
    const farad = 1 / 37.5 / (2 * Math.PI * HZ)
    const read = { clampOhm: '100', fallDb: String(db(1.5)), firstF: String(farad), firstDb: String(db(Math.SQRT2)) }
    const open = loop({ ...read, readAtHz: '10M' })
    expect(si(open, 'higherOhm')).toBeCloseTo(150, 6)
    expect(si(open, 'lowerOhm')).toBeCloseTo(50, 6)
    expect(si(open, 'loadOhm')).toBeUndefined()
    const named = loop({ ...read, readAtHz: '10M', higherEnd: 'source' })
    expect(
      [si(named, 'sourceLeastOhm'), si(named, 'sourceMostOhm'), si(named, 'loadOhm')].map((each) =>
        Math.round(each ?? 0),
      ),
    ).toEqual([150, 150, 50])
  })

  it('say so when no two resistances fit', () => {
    const read = { clampOhm: '100', fallDb: '9.5424', firstF: '100p', firstDb: '1', readAtHz: '10M' }
    expect(loop(read).findings[0]?.sentence).toContain('No two resistances')
  })

  it('say so when a capacitor lowers nothing, alone or against another reading', () => {
    const headlineOf = (texts: Record<string, string>) => loop({ ...texts, firstF: '1n', readAtHz: '1M' }).headline
    expect(headlineOf({ firstDb: '0' })).toContain('lowers nothing')
    expect(headlineOf({ firstDb: '6', secondF: '2n', secondDb: '1' })).toContain('both capacitor readings')
  })

  it('ask for the frequency of a capacitor, and refuse a level of another kind', () => {
    expect(loop({ firstF: '1n', firstDb: '6' }).needs?.key).toBe('readAtHz')
    expect(issuesOf(loopCheck, { currentDb: '40 dBm', voltageDb: '60 dBµV' }).join()).toContain('dBµA')
    expect(issuesOf(loopCheck, { currentDb: '40 dBµA', voltageDb: '60 dBµV/m' }).join()).toContain('dBµV')
  })

  // 0 dBV is 1 V, 120 dBµV: −40 dBV are 10 mV, 60 dBµA are 1 mA, together 10 Ω
  it('take a voltage in dBV, which no impedance stands between', () => {
    const read = loop({ currentDb: '60 dBµA', voltageDb: '-40 dBV' })
    expect(si(read, 'loadOhm')).toBeCloseTo(10, 9)
    const load = read.outputs['loadOhm']?.basis.steps.map(({ withNumbers }) => withNumbers) ?? []
    expect(plain(load.join())).toContain('10^((80 dB − 60 dB)/20)')
  })
})

const ohms = fc.double({ min: 1, max: 1e3, noNaN: true })
const reactance = fc.double({ min: -300, max: 300, noNaN: true })
const impedance = fc.record({ re: ohms, im: reactance })

describe('whatever the impedances are', () => {
  it('loop, load and source lie within what is said of them', () => {
    fc.assert(
      fc.property(impedance, impedance, fc.record({ re: ohms, im: reactance }), (source, load, clamp) => {
        const around = series(source, load)
        const current = 1 / size(around)
        const result = loop({
          clampOhm: String(size(clamp)),
          fallDb: String(db(size(series(around, clamp)) / size(around))),
          currentDb: String(db(current * 1e6)),
          voltageDb: String(db(current * size(load) * 1e6)),
        })
        const least = si(result, 'loopLeastOhm') ?? Number.NaN
        expect(size(around)).toBeGreaterThanOrEqual(least * (1 - 1e-9))
        expect(size(around)).toBeLessThanOrEqual((si(result, 'loopMostOhm') ?? Number.POSITIVE_INFINITY) * (1 + 1e-6))
        expect(si(result, 'loadOhm')).toBeCloseTo(size(load), 3)
        expect(size(source)).toBeGreaterThanOrEqual((si(result, 'sourceLeastOhm') ?? 0) * (1 - 1e-6))
        expect(size(source)).toBeLessThanOrEqual((si(result, 'sourceMostOhm') ?? Number.POSITIVE_INFINITY) * (1 + 1e-6))
      }),
    )
  })

  it('two capacitors find what stands side by side, with the reactance beside it', () => {
    fc.assert(
      fc.property(impedance, impedance, (source, load) => {
        const [one, two] = [470e-12, 2.2e-9]
        const texts = {
          firstF: '470p',
          firstDb: String(dropBy(source, load, one)),
          secondF: '2.2n',
          secondDb: String(dropBy(source, load, two)),
        }
        const result = loop({ ...texts, readAtHz: '10M' })
        const expected = 1 / inverse(parallel(source, load)).re
        expect((si(result, 'parallelOhm') ?? 0) / expected).toBeCloseTo(1, 3)
      }),
    )
  })
})

describe('what the loop check decides', () => {
  const lineOf = (facts: Partial<Record<FactKey, string>>): Line => ({
    id: 'l',
    name: '',
    gate: 'clear',
    trials: [],
    facts: Object.fromEntries(Object.entries(facts).map(([key, text]) => [key, { text, origin: { by: 'user' } }])),
  })
  const READ = { clampOhm: '100', clampFallDb: '9.5424', probeCurrentDb: '60', probeVoltageDb: '80' }
  const fieldOf = (
    facts: Partial<Record<FactKey, string>>,
    check: typeof windowCheck | typeof filterCheck,
    key: string,
  ) =>
    resolve(lineOf(facts))
      .fields(check as never)
      .find((field) => field.key === key)

  it.each([windowCheck, filterCheck])('goes to $id with its origin, the source with both its ends', (check) => {
    // load 10^(20/20) = 10 Ω; loop 25 to 50 Ω whatever its phase; source 15 to 60 Ω
    expect(fieldOf(READ, check, 'loadOhm')).toMatchObject({ origin: { by: 'check', check: 'loop' } })
    const source = fieldOf(READ, check, 'sourceOhm')
    expect(source?.origin).toEqual({ by: 'check', check: 'loop' })
    expect(source?.text.split(';').map((each) => Math.round(Number.parseFloat(each)))).toEqual([15, 60])
  })

  it('gives way to what was typed, and decides nothing by a clamp alone', () => {
    expect(fieldOf({ ...READ, noiseSourceOhm: '5' }, windowCheck, 'sourceOhm')?.text).toBe('5')
    expect(fieldOf({ clampOhm: '100', clampFallDb: '9.5' }, windowCheck, 'sourceOhm')?.state).toBe('missing')
  })
})

describe('workings of a clamp', () => {
  const formulas = (texts: Record<string, string>) =>
    loop(texts)
      .bounds.flatMap(({ basis }) => basis)
      .concat(Object.values(loop(texts).outputs).flatMap((one) => one.basis ?? []))
      .flatMap(({ steps }) => steps)
      .map(({ formula }) => formula)
  const CLAMP = 'Zs + Zl = Zb / (10^(A/20) − 1)'

  it('stand where a loop came of it, and not where the noise rose', () => {
    expect(formulas({ clampOhm: '100', fallDb: '9.5424' })).toContain(CLAMP)
    expect(formulas({ clampOhm: '100', fallDb: '-3' })).not.toContain(CLAMP)
  })
})

it('says of readings that may be off that both ends count it', () => {
  const said = loop({ clampOhm: '100', fallDb: '9.5424', offDb: '1' }).findings.map(({ sentence }) => plain(sentence))
  expect(said).toContain(
    'The ends of every span count ±1 dB on each reading, ±2 dB on a fall: it is the difference of two.',
  )
})

it('says only of a capacitor that it reads both ends side by side', () => {
  const said = (texts: Record<string, string>) =>
    loop(texts)
      .findings.map(({ sentence }) => sentence)
      .join(' ')
  expect(said({ clampOhm: '100', fallDb: '9.5424' })).not.toContain('A capacitor reads both ends')
})
