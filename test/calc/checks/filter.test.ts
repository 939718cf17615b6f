/** The filter check as an address fills it: absent and empty outputs, ends, worst of several, ngspice rows through the texts. */
import { expect, test } from 'vitest'
import { filterCheck } from '../../../src/calc/checks/filter/check.ts'
import { needCheck } from '../../../src/calc/checks/need/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { type FilterCircuit, NO_SERIES, NO_SHUNT } from '../../../src/calc/network/circuit.ts'
import golden from '../../golden/ngspice-filters.json' with { type: 'json' }
import { lcGainDb } from '../../support/lc-gain.ts'
import { nodalLossDb } from '../../support/nodal.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'

/** Elements of a golden row as address texts. */
function textsOf(row: (typeof golden.circuits)[number], hz: number): Record<string, string> {
  const caps = row.elements.filter((e) => e.kind === 'C')
  const coils = row.elements.filter((e) => e.kind === 'L')
  const put = (key: string, value: number | null | undefined) =>
    value === undefined || value === null || value === 0 ? {} : { [key]: String(value) }
  const isX13 = row.id === 'X13'
  return {
    topology: row.topology,
    ...put('capacitanceF', caps[0]?.C),
    ...put('capacitance2F', caps[1]?.C),
    ...put('esrOhm', caps[0]?.ESR),
    ...put('eslH', caps[0]?.ESL),
    ...put('inductanceH', coils[0]?.L),
    ...put('inductance2H', coils[1]?.L),
    ...put('dcrOhm', coils[0]?.Rdc),
    ...put('inductorParallelOhm', coils[0]?.Rpar),
    ...put('inductorParallelF', coils[0]?.Cpar),
    ...put('bondOhm', row.bond?.r_ohm),
    ...put('bondH', row.bond?.l_h),
    sourceOhm: isX13 ? '0.5' : String(row.source_ohm),
    loadOhm: isX13 ? '100' : String(row.load_ohm),
    ...(isX13 ? { sourceH: '5u' } : {}),
    frequencyHz: String(hz),
  }
}

/** F12's load network and X14's unequal parasitics have no field of their own; the solver tests cover them. */
const ADDRESSABLE = golden.circuits.filter((c) => c.id !== 'F12' && c.id !== 'X14')

for (const row of ADDRESSABLE) {
  test(`${row.id} from its address texts agrees with ngspice`, () => {
    for (const r of row.results) {
      const got = si(run(filterCheck, textsOf(row, r.f_hz)), 'insertionLossDb')
      expect(Math.abs((got ?? Number.NaN) - r.il_db)).toBeLessThan(r.il_db > 120 ? 0.01 : 6e-7)
    }
  })
}

test('twelve circuits are reachable by address', () => {
  expect(ADDRESSABLE).toHaveLength(12)
})

test('without source and load only the bench figure shows', () => {
  const result = run(filterCheck, { topology: 'C', capacitanceF: '10n', frequencyHz: '10M' })
  expect(Object.keys(result.outputs).sort()).toEqual(['asymptoteDbPerDecade', 'benchInsertionLossDb'])
  // Shunt C table: 10 nF at 10 MHz in 50/50 Ω is 23.9400 dB.
  expect(Math.abs((si(result, 'benchInsertionLossDb') ?? 0) - 23.94)).toBeLessThan(5.1e-5)
})

test('a capacitor alone has no gain: the outputs are absent', () => {
  const result = run(filterCheck, {
    topology: 'C',
    capacitanceF: '22n',
    frequencyHz: '1M',
    sourceOhm: '50',
    loadOhm: '50',
  })
  expect(result.outputs['peakGainDb']).toBeUndefined()
  expect(result.outputs['peakHz']).toBeUndefined()
  expect(Math.abs((si(result, 'cornerHz') ?? 0) / 289.373e3 - 1)).toBeLessThan(3e-6)
  expect(Math.abs((si(result, 'localSlopeDbPerDecade') ?? 0) - 20 * (1 - 10 ** (-11.1201 / 10)))).toBeLessThan(1e-3)
})

test('a leaded part that falls back below 3 dB has no lasting corner, and says why', () => {
  const result = run(filterCheck, {
    topology: 'C',
    capacitanceF: '10n',
    eslH: '10n',
    esrOhm: '50m',
    frequencyHz: '1M',
    sourceOhm: '50',
    loadOhm: '50',
  })
  const cell = result.outputs['cornerHz']?.cell
  expect(cell?.is).toBe('none')
  expect(si(result, 'firstCornerHz')).toBeGreaterThan(6e5)
  expect(result.findings.some((f) => f.sentence.includes('falls back below 3 dB'))).toBe(true)
})

test('with several sources and frequencies the lowest loss is the answer', () => {
  const base = { topology: 'C', capacitanceF: '10n', loadOhm: '50' }
  const worst = si(run(filterCheck, { ...base, sourceOhm: '150;5;50', frequencyHz: '30M;10M' }), 'insertionLossDb')
  expect(worst).toBe(si(run(filterCheck, { ...base, sourceOhm: '5', frequencyHz: '10M' }), 'insertionLossDb'))
})

test('resonant gain is shown loudly', () => {
  const result = run(filterCheck, {
    topology: 'LC',
    capacitanceF: '1u',
    inductanceH: '10u',
    sourceOhm: '0.1',
    loadOhm: '100',
    frequencyHz: '1M',
  })
  expect(result.findings[0]?.verdict).toBe('fails')
  expect(result.findings[0]?.sentence).toContain('Amplifies by 23.99')
})

test('a resonance that only parts at an end of their tolerance bring to 3 dB is said of those parts', () => {
  const [sourceOhm, loadOhm, inductanceH] = [10, 60, 10e-6]
  const gainDb = (capacitanceF: number) => lcGainDb({ sourceOhm, loadOhm, inductanceH, capacitanceF })
  const result = run(filterCheck, {
    topology: 'LC',
    capacitanceF: '10n',
    inductanceH: String(inductanceH),
    sourceOhm: String(sourceOhm),
    loadOhm: String(loadOhm),
    frequencyHz: '10M',
    neededDb: '20',
    toleranceFrac: '20 %',
    temperatureFrac: '0',
    biasFrac: '0',
    ageingDecades: '0',
  })
  expect(si(result, 'peakGainDb')).toBeCloseTo(gainDb(10e-9), 6)
  expect(gainDb(10e-9)).toBeLessThan(3)
  expect(gainDb(12e-9)).toBeGreaterThan(3)
  expect(result.verdict).toBe('fails')
  const said = result.findings.find(({ sentence }) => sentence.startsWith('Amplifies'))
  expect(said?.verdict).toBe('fails')
  expect(said?.sentence.replaceAll('\u00a0', ' ')).toMatch(
    new RegExp(
      `^Amplifies by ${gainDb(12e-9).toFixed(3)} dB at [\\d.]+ kHz with its parts at an end of their tolerance`,
      'u',
    ),
  )
})

test('both axes of the plot are named', () => {
  const ends = { sourceOhm: '50', loadOhm: '50', frequencyHz: '10M' }
  const plot = run(filterCheck, { topology: 'C', capacitanceF: '10n', ...ends }).pictures.find(
    ({ is }) => is === 'plot',
  )
  expect(plot).toMatchObject({ xLabel: 'frequency', yLabel: 'dB' })
})

test('a bead counts up to the last frequency it is known at, and not beyond', () => {
  const bead = { beadHz: '1M; 3M; 10M', beadOhm: '30; 60; 90', beadReactanceOhm: '20; 30; 20' }
  const at = (frequencyHz: string) =>
    run(filterCheck, { topology: 'L', ...bead, sourceOhm: '50', loadOhm: '50', frequencyHz, neededDb: '1' })
  const unknown = (frequencyHz: string) => at(frequencyHz).findings.some(({ verdict }) => verdict === 'unknown')
  expect([unknown('1M'), unknown('10M'), unknown('10.1M')]).toEqual([false, false, true])
  // (100 + 90 + j·20)/100, of a part that may be a quarter less
  expect(si(at('10M'), 'insertionLossDb')).toBeCloseTo(20 * Math.log10(Math.hypot(190, 20) / 100), 6)
})

test('a topology without its part asks for it', () => {
  expect(run(filterCheck, { topology: 'PI', capacitanceF: '4n7' }).headline).toBe('Not known: needs the inductance.')
  expect(run(filterCheck, { topology: 'T' }).headline).toBe('Not known: needs the capacitance and the inductance.')
})

test('refusals say what would be right', () => {
  expect(issuesOf(filterCheck, { capacitanceF: '1,000' })[0]).toMatch(/^capacitanceF: /)
  expect(issuesOf(filterCheck, { topology: 'X' })[0]).toContain('not one of the choices')
  // by the words of the list, not by what stands in an address
  const line = issuesOf(windowCheck, { lineKind: 'powr' })[0] ?? ''
  expect(line).toContain('“powr” is not one of the choices; choose one such as 28 V DC power; 270 V DC power; ')
  expect(line).not.toContain('power-28')
  expect(issuesOf(filterCheck, { loadOhm: '0' })[0]).toContain('outside what this field works with')
})

test('needed attenuation: 115 V lead, 105.0 dBµV against 76.4639 with 6 dB margin is 34.5361 dB (worked example 5.9)', () => {
  const result = run(needCheck, { measuredDb: '105.0', limitDb: '76.4639', marginDb: '6' })
  expect(Math.abs((si(result, 'neededDb') ?? 0) - 34.5361)).toBeLessThan(1e-9)
})

test('a level already under the limit by more than the margin needs nothing, never a negative figure', () => {
  expect(si(run(needCheck, { measuredDb: '50 dBµV', limitDb: '60', marginDb: '6 dB' }), 'neededDb')).toBe(0)
  const asked = run(needCheck, { measuredDb: '50' })
  expect(asked.outputs['neededDb']?.cell).toEqual({ is: 'none', why: 'needs the allowed level' })
})

test('frequency 0 is DC: only the winding resistance is left, and an inductance across the load leaves no figure', () => {
  const facts = { topology: 'LC', capacitanceF: '10n', inductanceH: '10u', dcrOhm: '5', sourceOhm: '50', loadOhm: '50' }
  const dc = si(run(filterCheck, { ...facts, frequencyHz: '0' }), 'insertionLossDb')
  expect(dc).toBeCloseTo(20 * Math.log10(105 / 100), 12)
  const shorted = run(filterCheck, { ...facts, frequencyHz: '0', loadH: '50u' })
  expect(shorted.outputs['insertionLossDb']?.cell.is).toBe('none')
  expect(shorted.findings[0]?.sentence).toContain('shorts it')
})

test('an inductor is as good as its self-resonance says: 10 µH that resonates at 30 MHz has 2.81 pF across it', () => {
  const facts = { topology: 'L', inductanceH: '10u', sourceOhm: '50', loadOhm: '50', frequencyHz: '100M' }
  // 1/((2π · 30 MHz)² · 10 µH) = 2.8145 pF; above its resonance the coil is that capacitor and less
  const farads = 1 / ((2 * Math.PI * 30e6) ** 2 * 10e-6)
  const by = (texts: Record<string, string>) => si(run(filterCheck, { ...facts, ...texts }), 'insertionLossDb')
  expect(by({ inductorResonanceHz: '30M' })).toBeCloseTo(by({ inductorParallelF: String(farads) }) ?? Number.NaN, 9)
  const omega = 2 * Math.PI * 100e6
  const coilOhm = 1 / (1 / (omega * 10e-6) - omega * farads)
  expect(by({ inductorResonanceHz: '30M' })).toBeCloseTo(20 * Math.log10(Math.hypot(100, coilOhm) / 100), 9)
})

test('a need that only the lead or the bond of a capacitor meets is no plain yes: less of either would lose it', () => {
  const facts = {
    topology: 'C',
    sourceOhm: '50',
    loadOhm: '50',
    toleranceFrac: '5 %',
    temperatureFrac: '0',
    biasFrac: '0',
    ageingDecades: '0',
  }
  for (const [texts, neededDb] of [
    [{ capacitanceF: '1n', eslH: '5n', frequencyHz: '71.18M' }, '25'],
    [{ capacitanceF: '10n', bondH: '10n', frequencyHz: '15.9M' }, '35'],
  ] as const) {
    // at resonance there is next to nothing left of 1/ωC; without the inductance 25 Ω stand against it
    const [farads, hz] = [Number(texts.capacitanceF.replace('n', 'e-9')), Number(texts.frequencyHz.replace('M', 'e6'))]
    const bareDb = 20 * Math.log10(Math.hypot(1, 25 * 2 * Math.PI * hz * farads))
    expect(bareDb).toBeLessThan(Number(neededDb))
    const result = run(filterCheck, { ...facts, ...texts, neededDb })
    expect(result.verdict).toBe('marginal')
    expect(result.headline).toContain('less of that would lose it')
    const less = String(Math.floor(bareDb) - 1)
    expect(run(filterCheck, { ...facts, ...texts, neededDb: less }).verdict).toBe('ok')
  }
})

test('a need that only the self-resonance of a coil meets is no plain yes: less self-capacitance would lose it', () => {
  const facts = {
    topology: 'L',
    inductanceH: '10u',
    sourceOhm: '50',
    loadOhm: '50',
    frequencyHz: '30M',
    toleranceFrac: '0 %',
    temperatureFrac: '0',
    biasFrac: '0',
    ageingDecades: '0',
  }
  // the coil alone: |1 + j·2π·30 MHz·10 µH/100 Ω|
  const bareDb = 20 * Math.log10(Math.hypot(1, (2 * Math.PI * 30e6 * 10e-6) / 100))
  expect(bareDb).toBeCloseTo(25.5, 1)
  const at = (texts: Record<string, string>) => run(filterCheck, { ...facts, ...texts })
  const carried = at({ inductorResonanceHz: '30M', neededDb: '33' })
  expect(carried.verdict).toBe('marginal')
  expect(carried.headline).toContain('less of that would lose it')
  expect(at({ inductorResonanceHz: '30M', neededDb: '25' }).verdict).toBe('ok')
  expect(at({ neededDb: '33' }).verdict).toBe('fails')
  // below its resonance, at 40 MHz, it looks larger: L/(1 − (30/40)²)
  const largerDb = 20 * Math.log10(Math.hypot(1, (2 * Math.PI * 30e6 * 10e-6) / 100 / (1 - 0.75 ** 2)))
  expect(si(at({ inductorResonanceHz: '40M', neededDb: '25' }), 'worstInsertionLossDb')).toBeCloseTo(largerDb, 6)
  expect(at({ inductorResonanceHz: '40M', neededDb: '30' }).verdict).toBe('marginal')
  expect(at({ inductorResonanceHz: '40M', neededDb: '25' }).verdict).toBe('ok')
})

test('a choke that only its own resonance makes good is no plain yes either', () => {
  const facts = { topology: 'C', chokeH: '100u', chokeLeakageH: '1u', mode: 'common', sourceOhm: '50', loadOhm: '50' }
  const at = (texts: Record<string, string>) =>
    run(filterCheck, { ...facts, frequencyHz: '7M', neededDb: '38', ...texts })
  expect(at({ chokeF: '0' }).verdict).toBe('fails')
  expect(at({ chokeF: '2.5p' }).verdict).toBe('marginal')
  expect(at({ chokeF: '2.5p', neededDb: '30' }).verdict).toBe('ok')
})

test('of several sources the one decides between which and the load the filter amplifies most', () => {
  const facts = {
    topology: 'CL',
    capacitanceF: '10n',
    inductanceH: '10u',
    esrOhm: '10m',
    eslH: '0.1n',
    bondOhm: '2.5m',
    bondH: '0.1n',
    inductorParallelF: '2p',
    loadOhm: '10',
    frequencyHz: '10M',
    neededDb: '20',
  }
  const circuit: FilterCircuit = {
    topology: 'CL',
    shunt1: { ...NO_SHUNT, capacitanceF: 10e-9 },
    shunt2: NO_SHUNT,
    series1: { ...NO_SERIES, inductanceH: 10e-6 },
    series2: NO_SERIES,
    bondOhm: 1e-9,
    bondH: 0,
  }
  const load = { ohm: 10, parallelF: 0, parallelH: Number.POSITIVE_INFINITY }
  // an independent solver finds 6.1 dB of gain from 150 Ω near 485 kHz, more than the filter stands
  expect(nodalLossDb(circuit, { ohm: 150, seriesH: 0 }, load, 484.8e3)).toBeCloseTo(-6.136, 2)
  const alone = run(filterCheck, { ...facts, sourceOhm: '150' })
  const among = run(filterCheck, { ...facts, sourceOhm: '1;10;50;150' })
  expect([alone.verdict, among.verdict]).toEqual(['fails', 'fails'])
  expect(among.headline).toMatch(/amplifies by .* from 150\sΩ/)
  expect(si(among, 'peakGainDb')).toBeCloseTo(si(alone, 'peakGainDb') ?? Number.NaN, 9)
})

test('a need on a pair is not judged without the mode, whose ends are half or twice those entered', () => {
  const facts = { topology: 'L', inductanceH: '10u', inductorParallelF: '0.1p', lineKind: 'arinc-429-high' }
  const at = (texts: Record<string, string>) =>
    run(filterCheck, { ...facts, sourceOhm: '50', loadOhm: '50', frequencyHz: '30M', ...texts })
  expect(at({ neededDb: '22', mode: 'common' }).verdict).toBe('fails')
  expect(at({ neededDb: '22' }).verdict).toBe('unknown')
  expect(at({ neededDb: '22' }).headline).toContain('the mode of the noise')
  // without a need the question is for a number
  expect(si(at({}), 'insertionLossDb')).toBeGreaterThan(20)
})
