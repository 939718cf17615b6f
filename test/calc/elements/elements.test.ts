/** Inductance at the line current, the dielectric by its table, and damping: entered, judged and proposed. */
import { describe, expect, test } from 'vitest'
import { filterCheck } from '../../../src/calc/checks/filter/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { judgeLoading } from '../../../src/calc/loading/judge.ts'
import { lossDb } from '../../../src/calc/network/chain.ts'
import { NO_SERIES, NO_SHUNT } from '../../../src/calc/network/circuit.ts'
import { dampingFor } from '../../../src/calc/network/damping.ts'
import { supplyPeakA } from '../../../src/calc/network/saturation.ts'
import { DIELECTRICS } from '../../../src/reference/constructions.ts'
import {
  CASE_SIZES,
  CLASS_2_BIAS,
  dielectricById,
  lostToBias,
  usualBiasFrac,
} from '../../../src/reference/dielectric-bias.ts'
import { lineKindById } from '../../../src/reference/line-kinds.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'

const IDEAL = { eslH: '0', bondOhm: '0', bondH: '0', inductorParallelF: '0', suppressorF: '0', existingF: '0' }
const sentences = (result: ReturnType<typeof run>) =>
  result.findings.map(({ sentence }) => sentence.replaceAll('\u00a0', ' ')).join(' ')

const POWER = {
  ...IDEAL,
  lineKind: 'power-28-vdc',
  topology: 'LC',
  frequencyHz: '5M',
  neededDb: '40',
  sourceOhm: '5',
  loadOhm: '100',
  maxBuildableF: '100n',
  biasFrac: '12 %',
}

describe('an inductor at the current of its line', () => {
  test('loses what is stated up to the saturation current; above it nothing is known', () => {
    const rated = { ...POWER, inductanceH: '10u', saturationFrac: '30 %', saturationA: '5' }
    const known = run(windowCheck, { ...rated, lineA: '4' })
    const asLeast = run(windowCheck, { ...POWER, inductanceH: '7u', saturationFrac: '0' })
    expect(known.verdict).toBe('ok')
    expect((si(known, 'leastCapacitanceF') ?? 0) / (si(asLeast, 'leastCapacitanceF') ?? 1)).toBeCloseTo(1, 6)
    const beyond = run(windowCheck, { ...rated, lineA: '6' })
    expect(beyond.verdict).toBe('unknown')
    expect(sentences(beyond)).toContain('above the saturation current')
    expect(run(windowCheck, rated).verdict).toBe('unknown')
    expect(sentences(run(windowCheck, rated))).toContain('enter the line current')
    expect(run(windowCheck, { ...POWER, inductanceH: '10u', saturationA: '5', lineA: '1' }).verdict).toBe('unknown')
  })

  test('takes the current from the load of a supply, at its least voltage', () => {
    const rated = { ...POWER, inductanceH: '10u', saturationFrac: '30 %', saturationA: '5' }
    // 22 of 28 V is the least: 110 W are 5 A there
    expect(supplyPeakA({ loadW: 110, nominalRmsV: 28, isAc: false })).toBeCloseTo(5, 9)
    expect(run(windowCheck, { ...rated, loadW: '109' }).verdict).toBe('ok')
    expect(run(windowCheck, { ...rated, loadW: '111' }).verdict).toBe('unknown')
  })

  test('left open on a line with power is doubted, and on a signal line is not', () => {
    // 10 µH is enough for the part that is proposed, 7 µH is not.
    const tight = { ...POWER, inductanceH: '10u', maxBuildableF: '30n' }
    const said = run(windowCheck, tight)
    expect(run(windowCheck, { ...tight, saturationFrac: '0' }).verdict).not.toBe('unknown')
    expect(said.verdict).toBe('unknown')
    expect(sentences(said)).toContain('inductance lost to the current')
    const signal = { ...tight, lineKind: 'discrete-28v' }
    expect(sentences(run(windowCheck, signal))).not.toContain('inductance lost to the current')
  })

  test('filters with what is left, and may have all of it', () => {
    const filter = {
      ...POWER,
      capacitanceF: '10n',
      neededDb: '20',
      inductanceH: '10u',
      toleranceFrac: '0',
      temperatureFrac: '0',
      biasFrac: '0',
      ageingDecades: '0',
    }
    const left = run(filterCheck, { ...filter, saturationFrac: '40 %' })
    const least = run(filterCheck, { ...filter, inductanceH: '6u', saturationFrac: '0' })
    expect(si(left, 'worstInsertionLossDb')).toBeCloseTo(si(least, 'worstInsertionLossDb') ?? 0, 3)
  })
})

describe('a dielectric', () => {
  test('loses with voltage as its table has it, rising, every point with its source', () => {
    for (const size of CASE_SIZES)
      CLASS_2_BIAS[size].forEach((point, i) => {
        const before = CLASS_2_BIAS[size][i - 1]
        if (before) expect(point.lostFrac).toBeGreaterThan(before.lostFrac)
        expect(['read', 'memory', 'practice', 'derived']).toContain(point.source.standing)
      })
    const x7r = dielectricById('x7r')
    if (!x7r) throw new Error('no X7R')
    // read: 10 µF in an 0805 loses half at half its rated voltage, in a 1206 7 %
    expect(lostToBias(x7r, 'small-chip', 0.5)).toBe(0.5)
    expect(lostToBias(x7r, 'large-chip', 0.5)).toBe(0.07)
    expect(lostToBias(x7r, 'small-chip', 0.25)).toBe(0.25)
    expect(lostToBias(x7r, 'filter-part', 1)).toBe(0.4)
    for (const one of DIELECTRICS.filter(({ id }) => id !== 'x7r')) expect(lostToBias(one, 'small-chip', 1)).toBe(0)
  })

  test('chosen with voltage and build gives the shares; the fields do not count then', () => {
    const line = {
      ...IDEAL,
      lineKind: 'discrete-28v',
      topology: 'C',
      frequencyHz: '30M',
      neededDb: '20',
      sourceOhm: '50',
      loadOhm: '50',
      ageingDecades: '2',
      toleranceFrac: '10 %',
    }
    const least = (more: Readonly<Record<string, string>>) =>
      si(run(windowCheck, { ...line, ...more }), 'leastCapacitanceF') ?? 0
    const bare = least({ temperatureFrac: '0', biasFrac: '0', ageingDecades: '0' })
    const x7r = { dielectric: 'x7r', voltageFrac: '50 %', caseSize: 'small-chip' }
    expect(least(x7r) / bare).toBeCloseTo(1 / (0.85 * 0.5 * 0.975 ** 2), 9)
    expect(least({ dielectric: 'c0g' }) / bare).toBeCloseTo(1 / 0.997, 9)
    // nothing said of voltage and build: all of the rating on the smallest
    expect(least({ dielectric: 'x7r' }) / bare).toBeCloseTo(1 / (0.85 * 0.1 * 0.975 ** 2), 9)
    const filter = run(filterCheck, { ...line, capacitanceF: '10n', ...x7r })
    const typed = run(filterCheck, { ...line, capacitanceF: '10n', temperatureFrac: '15 %', biasFrac: '50 %' })
    expect(si(filter, 'worstInsertionLossDb')).toBeCloseTo(si(typed, 'worstInsertionLossDb') ?? 0, 9)
  })

  test('left open is taken as a large part, and doubted as a filter contact at the volts of its line', () => {
    const line = {
      ...IDEAL,
      lineKind: 'discrete-28v',
      topology: 'C',
      frequencyHz: '30M',
      neededDb: '20',
      sourceOhm: '50',
      loadOhm: '50',
    }
    const roomy = run(windowCheck, line)
    expect(roomy.verdict).toBe('ok')
    const tight = { ...line, maxBuildableF: '3.9n' }
    expect(run(windowCheck, { ...tight, biasFrac: '12 %' }).verdict).not.toBe('unknown')
    expect(run(windowCheck, tight).verdict).toBe('unknown')
    expect(sentences(run(windowCheck, tight))).toContain('voltage (taken as 12 %; 28.8 % would turn it)')
    // the worse end of 10 to 40 % at rated voltage, 36 V on a part of 50 V
    expect(usualBiasFrac(lineKindById('discrete-28v')?.ownPeaks)).toBeCloseTo(0.4 * (36 / 50), 12)
    expect(usualBiasFrac(undefined)).toBe(0.4)
  })
})

describe('damping', () => {
  const RINGING = {
    ...IDEAL,
    lineKind: 'microphone',
    topology: 'LC',
    frequencyHz: '20M',
    neededDb: '18',
    sourceOhm: '150',
    loadOhm: '150',
    inductanceH: '6.8u',
    maxBuildableF: '1n',
    biasFrac: '12 %',
  }

  test('√(L/C) and 4·C keep the gain of a filter that lifts by 23.6 dB below 3 dB (ngspice: the circuits of the long tests)', () => {
    const { ohm, farads } = dampingFor({ inductanceH: 10e-6, capacitanceF: 1e-6 })
    expect([ohm, farads]).toEqual([Math.sqrt(10), 4e-6])
    const circuit = {
      topology: 'LC',
      shunt1: { ...NO_SHUNT, capacitanceF: 1e-6, esrOhm: 5e-3 },
      shunt2: NO_SHUNT,
      series1: { ...NO_SERIES, inductanceH: 10e-6, dcrOhm: 5e-3 },
      series2: NO_SERIES,
      bondOhm: 0,
      bondH: 0,
    } as const
    const at = (hz: number, part: object) =>
      lossDb(
        { ...circuit, ...part },
        { ohm: 0.1, seriesH: 0 },
        { ohm: 100, parallelF: 0, parallelH: Number.POSITIVE_INFINITY },
        hz,
      )
    expect(at(50_329, {})).toBeCloseTo(-23.562858, 2)
    const damper = { damper: { capacitanceF: farads, esrOhm: ohm, eslH: 0 } }
    const worst = Math.min(...Array.from({ length: 400 }, (_, i) => at(5e3 * 10 ** (i / 200), damper)))
    expect(worst).toBeGreaterThan(-6)
    expect(worst).toBeLessThan(-1)
  })

  test('is proposed with values where a row rings, and its own window accepts them', () => {
    const rings = run(windowCheck, RINGING)
    expect(rings.verdict).toBe('marginal')
    const [, ohm, unit, farads, prefix] =
      /with ([\d.]+) (Ω|kΩ) and ([\d.]+) (p|n|µ)F in series/.exec(sentences(rings)) ?? []
    expect(ohm).toBeDefined()
    const entered = { ...RINGING, dampOhm: `${ohm}${unit === 'kΩ' ? 'k' : ''}`, dampF: `${farads}${prefix}` }
    expect(run(windowCheck, entered).verdict).toBe('ok')
  })

  test('damps nothing where there is no capacitor of the filter to stand across', () => {
    // 10 mH alone, 444 nF of suppressor behind it: the branch that was entered has nothing to stand across
    const kind = lineKindById('rtd')
    if (!kind) throw new Error('no RTD')
    const spread = (value: number) => ({ least: value, most: value })
    const filter = { topology: 'L', capacitorF: spread(0), inductanceH: spread(10e-3) } as const
    const taken = { isPair: kind.isPair, existingF: 0, crossF: 0, suppressorF: 444e-9 }
    const reasonsOf = (damper?: { farads: { least: number; most: number }; ohm: { least: number; most: number } }) =>
      judgeLoading({ facts: { kind }, taken, filter: { ...filter, ...(damper ? { damper } : {}) } }).reasons.map(
        ({ is }) => is,
      )
    expect(reasonsOf()).toContain('ringing')
    expect(reasonsOf({ farads: spread(1.5e-9), ohm: spread(2.2) })).toContain('ringing')
  })

  test('uses room like any other capacitor, and has to fit', () => {
    const most = (more: Readonly<Record<string, string>>) =>
      si(run(windowCheck, { ...RINGING, maxBuildableF: '', ...more }), 'mostCapacitanceF') ?? 0
    // 1.2·1.15 of the mark at its most, before the same of the capacitor beside it
    expect(most({}) - most({ dampOhm: '270', dampF: '470p' })).toBeCloseTo(470e-12, 18)
    expect(issuesOf(windowCheck, { ...RINGING, dampOhm: '270', dampF: '4.7n' })[0]).toContain(
      'Larger than what the contact takes',
    )
    expect(issuesOf(windowCheck, { ...RINGING, dampOhm: '270' })[0]).toContain('enter that too')
    expect(issuesOf(filterCheck, { dampF: '1n' })[0]).toContain('about √(L/C)')
  })
})
