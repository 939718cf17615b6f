/**
 * Noise on a supply and its return in either mode, with capacitors to chassis and from line to line. Truth: two 1 nF from
 * 50 Ω into 50 Ω, line to line, lose 2.086698 dB at 10 MHz in ngspice (half a nanofarad), and closed forms.
 */
import { describe, expect, it } from 'vitest'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import type { Success } from '../../../src/calc/types.ts'
import { nodalLossDb } from '../../support/nodal.ts'
import { run, si } from '../../support/run-check.ts'

type Texts = Readonly<Record<string, string>>
const window = (texts: Texts): Success => run(windowCheck, texts)
const words = (result: Success): string =>
  [result.headline, ...result.findings.map(({ sentence }) => sentence)].join(' ').replaceAll('\u00a0', ' ')

const SUPPLY = {
  lineKind: 'power-28-vdc',
  topology: 'C',
  frequencyHz: '10M',
  neededDb: '2.086698',
  sourceOhm: '50',
  loadOhm: '50',
  mode: 'differential',
  maxBuildableF: '1u',
  eslH: '0',
  bondOhm: '2.5m',
  bondH: '1n',
  suppressorF: '0',
  existingF: '0',
  toleranceFrac: '0',
  temperatureFrac: '0',
  biasFrac: '0',
  ageingDecades: '0',
}
const leastF = (more: Texts = {}) => si(window({ ...SUPPLY, ...more }), 'leastCapacitanceF') ?? Number.NaN

describe('differential noise on a supply', () => {
  it('is answered: 1 nF from each line to chassis is half of it between them, and the bond does nothing', () => {
    expect(leastF()).toBeGreaterThan(0.999_99e-9)
    expect(leastF()).toBeLessThan(1.000_01e-9)
    expect(window(SUPPLY).verdict).toBe('ok')
    expect(words(window(SUPPLY))).toContain('Computed in differential mode, per leg: half the impedance')
  })

  it('meets a capacitor from line to line twice in each leg', () => {
    expect(leastF({ crossF: '0.2n' })).toBeCloseTo(0.6e-9, 13)
    const done = window({ ...SUPPLY, crossF: '0.51n' })
    expect(leastF({ crossF: '0.51n' })).toBe(0)
    expect(done.headline).toContain('The line-to-line capacitor alone: yes.')
  })

  it('meets that capacitor with its own tolerance and its own lead', () => {
    expect(leastF({ crossF: '0.2n', toleranceFrac: '20 %' })).toBeCloseTo((1e-9 - 0.32e-9) / 0.8, 13)
    // Past the resonance of the larger one its lead and the smaller part resonate: no single part is as poor.
    const beside = { crossF: '100n', eslH: '1n', esrOhm: '1m', frequencyHz: '130M', neededDb: '20' }
    const open = window({ ...SUPPLY, ...beside, topology: 'C' })
    const lossDb = (farads: number) =>
      nodalLossDb(
        {
          topology: 'C',
          shunt1: { capacitanceF: farads, esrOhm: 1e-3, eslH: 1e-9 },
          shunt2: { capacitanceF: 0, esrOhm: 0, eslH: 0 },
          series1: { inductanceH: 0, dcrOhm: 0, parallelOhm: Number.POSITIVE_INFINITY, parallelF: 0 },
          series2: { inductanceH: 0, dcrOhm: 0, parallelOhm: Number.POSITIVE_INFINITY, parallelF: 0 },
          bondOhm: 0,
          bondH: 0,
          cross: { capacitanceF: 200e-9, esrOhm: 0.5e-3, eslH: 0.5e-9 },
        },
        { ohm: 25, seriesH: 0 },
        { ohm: 25, parallelF: 0, parallelH: Number.POSITIVE_INFINITY },
        130e6,
      )
    // Beside half a nanohenry 1 nF is a resonance: 1.4 dB, where the larger one by itself has 30.
    expect(lossDb(1e-9)).toBeLessThan(2)
    const foundF = si(open, 'leastCapacitanceF') ?? Number.NaN
    expect(foundF).toBeGreaterThan(1e-9)
    expect(lossDb(foundF)).toBeCloseTo(20, 6)
  })
})

describe('common-mode noise on a supply', () => {
  it('meets nothing of a capacitor from line to line', () => {
    expect(leastF({ mode: 'common', crossF: '0.5n' })).toBe(leastF({ mode: 'common' }))
  })

  it('with a choke around line and return meets both lines, each with twice the ends', () => {
    // 20·log10 |1 + jX/200| of 2·10 µH less half of 0.2 µH.
    const choked = window({
      ...SUPPLY,
      mode: 'common',
      neededDb: '12',
      chokeH: '10u',
      chokeLeakageH: '0.2u',
      chokeF: '0',
    })
    expect(choked.headline).toContain('The choke alone: yes.')
    expect(si(choked, 'worstLossDb')).toBeCloseTo(
      20 * Math.log10(Math.hypot(1, (2 * Math.PI * 10e6 * 19.9e-6) / 200)),
      6,
    )
  })
})

describe('the chassis current of an AC supply', () => {
  const AC = {
    ...SUPPLY,
    lineKind: 'power-115-vac-400',
    maxBuildableF: '',
    chassisLimitA: '5m',
    frequencyHz: '150k',
    neededDb: '20',
  }

  it('stays a bound in differential mode, and a capacitor from line to line opens what it shuts', () => {
    const shut = window(AC)
    expect(shut.verdict).toBe('fails')
    // 5 mA at 118 V and 407 Hz
    expect(si(shut, 'mostCapacitanceF')).toBeCloseTo(5e-3 / (2 * Math.PI * 407 * 118), 14)
    const crossF = /A line-to-line capacitor of ([\d.]+ .?F) opens it/u.exec(words(shut))?.[1] ?? ''
    expect(crossF).not.toBe('')
    const opened = window({ ...AC, crossF })
    expect(['ok', 'marginal']).toContain(opened.verdict)
    expect(si(opened, 'mostCapacitanceF')).toBe(si(shut, 'mostCapacitanceF'))
  })
})
