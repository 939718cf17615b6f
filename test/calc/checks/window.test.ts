/**
 * The window end to end, as an address fills it. Ceilings: ARINC 429 edge (R2, R4 read), CAN recessive edge (R18 read),
 * 1553 terminal impedance (R7 memory), Navy rule (S30 read). Least: closed form of the shunt capacitor (derived).
 */
import { describe, expect, test } from 'vitest'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import type { Picture } from '../../../src/calc/types.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'

/** No spread at all, so that marked equals actual. */
const EXACT = {
  toleranceFrac: '0',
  temperatureFrac: '0',
  biasFrac: '0',
  ageingDecades: '0',
  ageingFracPerDecade: '0',
  eslH: '0',
  bondH: '0',
  bondOhm: '0',
  esrOhm: '0',
}
const SPREAD = {
  toleranceFrac: '20 %',
  temperatureFrac: '25 %',
  biasFrac: '0',
  ageingDecades: '2',
  ageingFracPerDecade: '2.5 %',
}
const LN9 = Math.log(9)

function closedF(rs: number, rl: number, hz: number, db: number): number {
  return Math.sqrt(10 ** (db / 10) - 1) / (2 * Math.PI * hz * ((rs * rl) / (rs + rl)))
}

function strip(pictures: readonly Picture[]) {
  const found = pictures.find((p) => p.is === 'strip')
  if (found?.is !== 'strip') throw new Error('no strip')
  return found
}

describe('ARINC 429 high speed, one capacitor a leg', () => {
  const facts = {
    lineKind: 'arinc-429-high',
    topology: 'C',
    frequencyHz: '12M',
    neededDb: '20',
    sourceOhm: '50',
    loadOhm: '50',
  }

  test('common mode: per leg the impedance doubles and the differential ceiling of 8.03 nF doubles', () => {
    const result = run(windowCheck, { ...facts, ...EXACT })
    expect(si(result, 'leastCapacitanceF')).toBeCloseTo(closedF(100, 100, 12e6, 20), 16)
    const dm = Math.sqrt(2e-6 ** 2 - 1.5e-6 ** 2) / (LN9 * 75)
    expect(Math.abs(dm - 8.03e-9)).toBeLessThan(5e-12)
    expect(si(result, 'mostCapacitanceF')).toBeCloseTo(2 * dm, 16)
  })

  test('differential mode: half the impedance, and the line-to-line capacitor works as 2·Cx per leg', () => {
    const result = run(windowCheck, { ...facts, ...EXACT, mode: 'differential', crossF: '1n' })
    expect(si(result, 'leastCapacitanceF')).toBeCloseTo(closedF(25, 25, 12e6, 20) - 2e-9, 16)
    const dm = Math.sqrt(2e-6 ** 2 - 1.5e-6 ** 2) / (LN9 * 75)
    expect(si(result, 'mostCapacitanceF')).toBeCloseTo(2 * (dm - 1e-9), 16)
  })

  test('the worst part is marked: 0.570375 below, 1.2 × 1.25 above (worked stack)', () => {
    const result = run(windowCheck, { ...facts, ...EXACT, ...SPREAD })
    expect(si(result, 'leastCapacitanceF')).toBeCloseTo(closedF(100, 100, 12e6, 20) / 0.570375, 15)
    const dm = Math.sqrt(2e-6 ** 2 - 1.5e-6 ** 2) / (LN9 * 75)
    expect(si(result, 'mostCapacitanceF')).toBeCloseTo((2 * dm) / 1.5, 15)
  })

  test('suppressor and existing capacitance come off first; a Pi counts twice', () => {
    const result = run(windowCheck, {
      ...facts,
      ...EXACT,
      suppressorF: '1.1n',
      existingF: '700p',
      topology: 'PI',
      inductanceH: '1u',
    })
    const dm = Math.sqrt(2e-6 ** 2 - 1.5e-6 ** 2) / (LN9 * 75)
    expect(si(result, 'mostCapacitanceF')).toBeCloseTo((2 * (dm - 0.7e-9) - 1.1e-9) / 2, 16)
  })

  test('above 50 pF a node is marginal: the document is named', () => {
    const result = run(windowCheck, { ...facts, ...EXACT })
    expect(result.verdict).toBe('marginal')
    expect(result.findings.some((f) => f.sentence.includes('ARINC 429 receiver'))).toBe(true)
  })

  test('a driver already at its slowest legal edge leaves no room', () => {
    const result = run(windowCheck, { ...facts, ...EXACT, driverEdgeSec: '2u' })
    expect(result.verdict).toBe('fails')
    expect(result.headline).toContain('No room')
  })
})

describe('shut windows say what opens them, by recomputation', () => {
  test('the six topologies are tried, then the part, the bond, what is taken and the need', () => {
    const facts = {
      lineKind: 'mil-std-1553-stub',
      topology: 'C',
      frequencyHz: '30M',
      neededDb: '20',
      sourceOhm: '50',
      loadOhm: '1k',
      inductanceH: '1u',
    }
    const result = run(windowCheck, { ...facts, ...EXACT })
    expect(result.verdict).toBe('fails')
    expect(result.headline).toMatch(
      /^No single capacitor does both: the noise needs .* the signal stands 318.* What opens it: /,
    )
    const need = result.bounds.find((b) => b.side === 'least')?.openedBy.find((o) => o.id === 'need')
    // Room 318.3 pF a leg against 100 ‖ 2000 Ω at 30 MHz: its own closed form says how much less would do.
    const leg = 2 * (1 / (2 * Math.PI * 1e6 * 1000))
    const reached = 10 * Math.log10(1 + (2 * Math.PI * 30e6 * leg * ((100 * 2000) / 2100)) ** 2)
    expect(need?.sentence).toContain(`${(20 - reached).toFixed(1)}`)
  })

  test('each opener really opens', () => {
    const facts = {
      lineKind: 'can',
      bitRateHz: '1M',
      topology: 'C',
      frequencyHz: '20M',
      neededDb: '20',
      sourceOhm: '10',
      loadOhm: '60',
      suppressorF: '900p',
      toleranceFrac: '20 %',
    }
    const shut = run(windowCheck, facts)
    expect(shut.verdict).toBe('fails')
    const openers = shut.bounds[0]?.openedBy ?? []
    expect(openers.length).toBeGreaterThan(0)
    for (const opener of openers) {
      const topology = /^topology-(.*)$/.exec(opener.id)?.[1]
      if (topology) expect(run(windowCheck, { ...facts, topology }).verdict).not.toBe('fails')
      const less = /(\d+(\.\d+)?)\s?dB less/u.exec(opener.sentence)?.[1]
      if (less)
        expect(run(windowCheck, { ...facts, neededDb: String(20 - Number(less) - 0.05) }).verdict).not.toBe('fails')
    }
  })
})

test('the strip carries six rows and the chosen value', () => {
  const result = run(windowCheck, {
    lineKind: 'microphone',
    frequencyHz: '120M',
    neededDb: '30',
    sourceOhm: '50',
    loadOhm: '150',
  })
  const picture = strip(result.pictures)
  expect(picture.rows.map((r) => r.label)).toEqual(['C', 'L', 'LC', 'CL', 'Pi', 'T'])
  expect(picture.chosenF).toBe(si(result, 'proposedF'))
  expect(picture.rows.filter((r) => r.best)).toHaveLength(1)
})

test('a larger source spread is governed by its worst value', () => {
  const facts = { lineKind: 'audio', topology: 'C', frequencyHz: '120M', neededDb: '30', loadOhm: '600', ...EXACT }
  const one = si(run(windowCheck, { ...facts, sourceOhm: '10' }), 'leastCapacitanceF')
  const many = si(run(windowCheck, { ...facts, sourceOhm: '150;10;50' }), 'leastCapacitanceF')
  expect(many).toBe(one)
})

test('differential noise inside the signal band is refused a low-pass', () => {
  const result = run(windowCheck, {
    lineKind: 'arinc-429-high',
    mode: 'differential',
    frequencyHz: '200k',
    neededDb: '20',
    sourceOhm: '50',
    loadOhm: '50',
  })
  expect(result.verdict).toBe('fails')
  expect(result.headline).toContain('no low-pass filter can cure it')
})

test('a line that is never fitted gets the reason and no figures', () => {
  const result = run(windowCheck, {
    lineKind: 'pyrotechnic',
    frequencyHz: '1M',
    neededDb: '20',
    sourceOhm: '50',
    loadOhm: '50',
  })
  expect(result.outputs).toEqual({})
  expect(result.verdict).toBe('fails')
  expect(result.cautions).toContain('no-trial')
})

test('the Navy rule caps a 28 V line at 0.075 µF per kW and asks for the load', () => {
  const facts = {
    lineKind: 'power-28-vdc',
    topology: 'C',
    frequencyHz: '5M',
    neededDb: '20',
    sourceOhm: '50',
    loadOhm: '50',
    navyRule: 'true',
    ...EXACT,
  }
  expect(si(run(windowCheck, { ...facts, loadW: '2k' }), 'mostCapacitanceF')).toBeCloseTo(0.15e-6, 15)
  expect(si(run(windowCheck, { ...facts, loadW: '400' }), 'mostCapacitanceF')).toBeCloseTo(0.03e-6, 15)
  const asked = run(windowCheck, facts)
  expect(si(asked, 'mostCapacitanceF')).toBeUndefined()
  expect(asked.verdict).toBe('unknown')
  expect(asked.findings.some((f) => f.sentence.includes('load'))).toBe(true)
})

test('what fits the contact bounds from above and is said', () => {
  const facts = {
    lineKind: 'power-28-vdc',
    topology: 'C',
    frequencyHz: '10M',
    neededDb: '30',
    sourceOhm: '50',
    loadOhm: '50',
    ...EXACT,
  }
  const fits = run(windowCheck, { ...facts, maxBuildableF: '100n' })
  expect(fits.verdict).toBe('ok')
  const tooSmall = run(windowCheck, { ...facts, maxBuildableF: '10n' })
  expect(tooSmall.verdict).toBe('fails')
  expect(tooSmall.findings.some((f) => f.sentence.includes('the contact takes'))).toBe(true)
})

test('without a ceiling the verdict is unknown and there is still a proposal', () => {
  const result = run(windowCheck, {
    lineKind: 'power-28-vdc',
    topology: 'C',
    frequencyHz: '1M',
    neededDb: '30',
    sourceOhm: '50',
    loadOhm: '50',
  })
  expect(result.verdict).toBe('unknown')
  expect(si(result, 'proposedF')).toBeGreaterThan(0)
})

test('needs and frequencies that do not pair up are refused in words', () => {
  const said = issuesOf(windowCheck, {
    lineKind: 'can',
    frequencyHz: '1M;2M;3M',
    neededDb: '10;20',
    sourceOhm: '50',
    loadOhm: '50',
  })
  expect(said[0]).toContain('one need for all')
})

test('a favourable assumption that would turn the verdict makes it unknown and is named', () => {
  // 60 dB at 300 MHz: an ideal bond passes, 0.5 nH does not.
  const result = run(windowCheck, {
    lineKind: 'power-28-vdc',
    topology: 'C',
    frequencyHz: '300M',
    neededDb: '60',
    sourceOhm: '50',
    loadOhm: '50',
    maxBuildableF: '100n',
  })
  expect(result.verdict).toBe('unknown')
  expect(result.findings[0]?.sentence).toContain('bond inductance')
})

test('the strip shows the suppressor’s share beside what is left for the filter', () => {
  const facts = {
    lineKind: 'arinc-429-high',
    topology: 'C',
    frequencyHz: '12M',
    neededDb: '20',
    sourceOhm: '50',
    loadOhm: '50',
    ...EXACT,
  }
  const bare = si(run(windowCheck, facts), 'mostCapacitanceF') ?? 0
  const row = strip(run(windowCheck, { ...facts, suppressorF: '3.1n' }).pictures).rows.find((r) => r.topology === 'C')
  expect(row?.takenToF).toBeCloseTo(bare, 16)
  expect((row?.takenToF ?? 0) - (row?.mostF ?? 0)).toBeCloseTo(3.1e-9, 16)
})
