/**
 * A capacitor alone judged by what the readings of a trial allow, against circuits drawn by chance and worked out here in
 * complex numbers: what the window proposes has to do in the circuit that was read, whatever was off inside the errors.
 */
import { describe, expect, test } from 'vitest'
import { trialCheck } from '../../../src/calc/checks/trial/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { isRefused } from '../../../src/calc/line/evaluate.ts'
import { checkLine, resolve, resolveFact } from '../../../src/calc/line/resolver.ts'
import { cornersOf, shuntNeedF } from '../../../src/calc/network/trial-region.ts'
import type { Line, Success } from '../../../src/calc/types.ts'
import { type Complex, parallel, series } from '../../support/complex.ts'
import { random } from '../../support/random.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'

const size = ({ re, im }: Complex): number => Math.hypot(re, im)

/** Fall of the level across the load when a capacitor with a lead is laid across it, from source and load apart. */
function fallDb(source: Complex, load: Complex, farad: number, hz: number, leadH = 0): number {
  const w = 2 * Math.PI * hz
  const part = { re: 0, im: w * leadH - 1 / (w * farad) }
  const share = (of: Complex) => size(of) / size(series(source, of))
  return 20 * Math.log10(share(load) / share(parallel(load, part)))
}

const typed = (text: string) => ({ text, origin: { by: 'user' } }) as const
const lineOf = (texts: Record<string, string>): Line => ({
  id: 'l',
  name: '',
  gate: 'clear',
  trials: [],
  facts: Object.fromEntries(Object.entries(texts).map(([key, text]) => [key, typed(text)])),
})
const on = (check: typeof windowCheck | typeof trialCheck, line: Line): Success => {
  const result = checkLine(check, line)
  if (!result.ok) throw new Error(JSON.stringify(result.issues))
  return result
}
const plain = (text: string) => text.replaceAll('\u00a0', ' ')
const said = (result: Success) => plain(result.findings.map(({ sentence }) => sentence).join(' '))

const EXACT_PART = {
  toleranceFrac: '0 %',
  temperatureFrac: '0',
  biasFrac: '0',
  ageingDecades: '0',
  esrOhm: '0',
  eslH: '0',
  bondOhm: '0',
  bondH: '0',
  suppressorF: '0',
  existingF: '0',
}
const HZ = 1e6
/** 1 MHz, a 28 V discrete of 10 kΩ; 100 Ω and 60 Ω with reactance, 1 nF and 4.7 nF read without error. */
const SOURCE = { re: 100, im: 80 }
const LOAD = { re: 60, im: -30 }
const readingOf = (farad: number): string => (62 - fallDb(SOURCE, LOAD, farad, HZ)).toFixed(9)
const NOTED = {
  lineKind: 'discrete-28v',
  signalOhm: '1k',
  noiseHz: '1M',
  neededDb: '20',
  trialSteps: 'bare; empty; 1n; 4.7n; empty; bare',
  trialNoise: `62; 62; ${readingOf(1e-9)}; ${readingOf(4.7e-9)}; 62; 62`,
  trialAdapterFrac: '0 %',
  trialLeadH: '0',
  readingOffDb: '0',
}

describe('without error the circuit itself is read', () => {
  test('the least is where this circuit takes 20 dB, and what is below does not', () => {
    const trial = on(trialCheck, lineOf(NOTED))
    const z = parallel(SOURCE, LOAD)
    expect(si(trial, 'sideLeastOhm')).toBeCloseTo(size(z), 5)
    expect(si(trial, 'sideMostDeg')).toBeCloseTo((Math.atan2(z.im, z.re) * 180) / Math.PI, 4)
    const angle = `−${((-Math.atan2(z.im, z.re) * 180) / Math.PI).toPrecision(2)} °`
    // without a reading error from one end of the span to the other
    expect(said(trial)).toContain(
      `side by side ${size(z).toFixed(1)} Ω to ${size(z).toFixed(1)} Ω in size, at ${angle} to ${angle}.`,
    )
    const leastF = si(trial, 'readLeastF') ?? 0
    expect(fallDb(SOURCE, LOAD, leastF, HZ)).toBeCloseTo(20, 6)
    expect(fallDb(SOURCE, LOAD, leastF * 0.99, HZ)).toBeLessThan(20)
  })

  test('a capacitor alone has a window with neither source nor load entered, and its need is a bound of the trial', () => {
    const line = lineOf({ ...NOTED, ...EXACT_PART, topology: 'C' })
    expect(resolveFact(line, 'noiseSourceOhm')).toBeUndefined()
    expect(resolveFact(line, 'trialSideReOhm')).toMatchObject({ origin: { by: 'trial' } })
    const window = on(windowCheck, line)
    const leastF = si(window, 'leastCapacitanceF') ?? 0
    expect(fallDb(SOURCE, LOAD, leastF, HZ)).toBeCloseTo(20, 3)
    expect(window.verdict).toBe('ok')
    const figures = resolve(line).figures(windowCheck)
    if (isRefused(figures)) throw new Error('refused')
    expect(figures.bounds).toContainEqual(
      expect.objectContaining({ id: 'trial-read', by: { is: 'trial', trial: 'noted' }, side: 'least', topology: 'C' }),
    )
    expect(said(window)).toContain('Worked out with the readings of the trial at 1 MHz')
  })

  test('anything in series waits for a clamp, and says so', () => {
    const window = on(windowCheck, lineOf({ ...NOTED, ...EXACT_PART, topology: 'LC' }))
    expect(window.verdict).toBe('unknown')
    expect(plain(window.headline)).toMatch(/^Not known: needs the reading of a clamp/u)
    expect(said(window)).toContain('take the reading of a clamp')
  })

  test('beside entered ends the worse of the two governs, whichever it is', () => {
    const least = (texts: Record<string, string>) =>
      si(on(windowCheck, lineOf({ ...NOTED, ...EXACT_PART, topology: 'C', ...texts })), 'leastCapacitanceF') ?? 0
    const alone = least({})
    // 50 Ω and 5 Ω need more than what was read, 1 kΩ and 1 kΩ less
    expect(least({ noiseSourceOhm: '50', noiseLoadOhm: '5' })).toBeGreaterThan(2 * alone)
    expect(least({ noiseSourceOhm: '1k', noiseLoadOhm: '1k' })).toBeCloseTo(alone, 14)
  })

  test('where the readings refute the ends entered, nothing that meets them apart says yes', () => {
    // read are some 51 Ω side by side; 1 kΩ beside 5 Ω are 5 Ω, beside a load that makes up the rest they are what was read
    const read = {
      ...NOTED,
      ...EXACT_PART,
      topology: 'LC',
      inductanceH: '10u',
      inductorParallelF: '0',
      noiseSourceOhm: '1k',
    }
    const apart = on(windowCheck, lineOf({ ...read, noiseLoadOhm: '5' }))
    expect(apart.verdict).toBe('unknown')
    expect(plain(apart.headline)).toContain('the readings of the trial refute those entered')
    const sizeOhm = size(parallel(SOURCE, LOAD))
    const load = String(1 / (1 / sizeOhm - 1 / 1000))
    expect(on(windowCheck, lineOf({ ...read, noiseLoadOhm: load })).headline).not.toContain('refute')
  })

  test('at another frequency, in the other mode, on a trial without its bare line or void, nothing is handed over', () => {
    const needs = (texts: Record<string, string>) => {
      const line = lineOf({ ...NOTED, ...EXACT_PART, topology: 'C', ...texts })
      return [resolveFact(line, 'trialSideReOhm') !== undefined, on(windowCheck, line).verdict]
    }
    expect(needs({})).toEqual([true, 'ok'])
    expect(needs({ noiseHz: '1M; 2M' })).toEqual([false, 'unknown'])
    expect(needs({ noiseMode: 'differential' })).toEqual([false, 'unknown'])
    expect(needs({ trialSteps: 'bare; empty; 1n; 4.7n', trialNoise: '62;62;56;45' })).toEqual([false, 'unknown'])
    expect(needs({ trialNoise: '62; 62; 55; 45; 62; 50' })).toEqual([false, 'unknown'])
    expect(needs({ traceNeedHz: '3M', traceNeedDb: '20' })).toEqual([true, 'unknown'])
    // in series: source and load are met apart
    expect(needs({ chokeH: '1m' })).toEqual([true, 'unknown'])
  })

  test('a list without its other half is refused in words', () => {
    expect(issuesOf(windowCheck, { frequencyHz: '1M', neededDb: '20', sideReOhm: '50;40', sideImOhm: '0' })).toEqual([
      'sideImOhm: 1 reactance for 2 resistances; give one for each, separated by “;”.',
    ])
  })
})

test('a capacitive line and a part above its own resonance: the readings say nothing there', () => {
  // 20 nH and 3.166 nF resonate at 20 MHz; above that the part is an inductor that may meet 30 Ω of capacitance anywhere
  const texts = { ...EXACT_PART, frequencyHz: '20M', neededDb: '3', topology: 'C', lineKind: 'discrete-28v' }
  const read = { ...texts, signalOhm: '100', sideReOhm: '0;0', sideImOhm: '-30;-20', eslH: '20n' }
  const window = run(windowCheck, read)
  const upTo = window.bounds.find(({ id }) => id === 'trial-read-up-to')
  expect((upTo?.markedF ?? 0) * 1e9).toBeCloseTo(3.166, 3)
  expect(plain(window.headline)).toContain(
    'above 3.16 nF its lead makes it an inductor, of which the readings say nothing',
  )
  expect(si(window, 'proposedF')).toBeLessThan(3.166e-9)
  // with a resistance beside it no resonance takes it all back
  const lossy = run(windowCheck, { ...read, sideReOhm: '10;10' })
  expect(lossy.bounds.map(({ id }) => id)).not.toContain('trial-read-up-to')
})

describe('over the errors', () => {
  test('400 trials read with error: what is proposed takes the need in the circuit that was read', () => {
    const draw = random(11_2026)
    let proposed = 0
    for (let i = 0; i < 400; i++) {
      const hz = 10 ** (5.5 + 1.5 * draw())
      const end = (): Complex => ({ re: 10 ** (0.5 + 2.3 * draw()), im: (draw() - 0.5) * 400 })
      const [source, load] = [end(), end()]
      const sizeOhm = size(parallel(source, load))
      const offDb = 0.5 * draw()
      const adapterFrac = 0.1 * draw()
      const marked = [2, 6, 20].map((times) => Number((times / (2 * Math.PI * hz * sizeOhm)).toPrecision(3)))
      const leadH = 0.04 / ((2 * Math.PI * hz) ** 2 * (marked[2] as number))
      const off = () => (2 * draw() - 1) * offDb
      const readings = marked.map((farad) => {
        const real = farad * (1 + (2 * draw() - 1) * adapterFrac)
        return 60 - fallDb(source, load, real, hz, leadH * draw()) + off()
      })
      const neededDb = 10 + 20 * draw()
      const texts = {
        noiseHz: String(hz),
        neededDb: String(neededDb),
        trialSteps: `bare; empty; ${marked.join('; ')}; empty; bare`,
        trialNoise: [60 + off(), 60, ...readings, 60, 60].join('; '),
        trialAdapterFrac: String(adapterFrac),
        trialLeadH: String(leadH),
        readingOffDb: String(offDb),
      }
      const line = lineOf({ ...EXACT_PART, ...texts, topology: 'C' })
      const leastF = si(on(windowCheck, line), 'leastCapacitanceF')
      if (leastF === undefined) continue
      proposed++
      for (const times of [1, 1.3, 4]) expect(fallDb(source, load, leastF * times, hz)).toBeGreaterThan(neededDb - 1e-6)
    }
    expect(proposed).toBeGreaterThan(300)
  })

  test('no more than the readings ask: some circuit inside their errors has no more than the need', () => {
    const draw = random(7)
    const ohms = Array.from({ length: 60 }, (_, i) => 10 ** (i / 20 - 0.5))
    for (let i = 0; i < 20; i++) {
      const z = { re: 10 ** (1 + draw()), im: (draw() - 0.5) * 60 }
      const at = (b: number, of: Complex) => 20 * Math.log10(size({ re: 1 - b * of.im, im: b * of.re }))
      const readings = [0.05, 0.3].map((b) => ({
        leastS: b * 0.95,
        mostS: b * 1.05,
        leastDb: at(b, z) - 1,
        mostDb: at(b, z) + 1,
      }))
      const corners = cornersOf(readings) ?? []
      expect(corners.length).toBeGreaterThan(1)
      const b = shuntNeedF(corners, 25, 1) * 2 * Math.PI
      const inside = corners.map(({ ohm, reactanceOhm }) => ({ re: ohm, im: reactanceOhm }))
      expect(Math.min(...inside.map((of) => at(b, of)))).toBeCloseTo(25, 6)
      // a lattice over the whole half plane: every point that gives both readings has the need at that susceptance
      for (const re of ohms)
        for (const turn of Array.from({ length: 61 }, (_, k) => (k - 30) / 30)) {
          const of = { re, im: re * Math.tan((turn * Math.PI) / 2.001) }
          const fits = readings.every(({ leastS, mostS, leastDb, mostDb }) =>
            [0, 0.25, 0.5, 0.75, 1].some((share) => {
              const fall = at(leastS + share * (mostS - leastS), of)
              return fall >= leastDb && fall <= mostDb
            }),
          )
          if (fits) expect(at(b, of)).toBeGreaterThan(25 - 1e-6)
        }
    }
  })

  test('two readings that no passive circuit gives leave none, a level that did not fall leaves it open', () => {
    expect(
      cornersOf([
        { leastS: 0.01, mostS: 0.01, leastDb: 20, mostDb: 20.1 },
        { leastS: 0.1, mostS: 0.1, leastDb: 6, mostDb: 6.1 },
      ]),
    ).toEqual([])
    expect(cornersOf([{ leastS: 0.01, mostS: 0.01, leastDb: -1, mostDb: 1 }])).toBeUndefined()
  })
})
