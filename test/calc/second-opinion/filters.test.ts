/**
 * Closed forms of single filters, each worked out a second time by mathjs with units: same number, same dimension.
 * Truth: the closed forms for ideal parts between resistive ends (derived; they also agree with published tables).
 */
import { describe, expect, it, test } from 'vitest'
import { asymptoteDbPerDecade } from '../../../src/calc/checks/slope.ts'
import { lossDb } from '../../../src/calc/network/chain.ts'
import {
  BENCH_LOAD,
  type FilterCircuit,
  NO_SERIES,
  NO_SHUNT,
  type NoiseLoad,
  TOPOLOGIES,
} from '../../../src/calc/network/circuit.ts'
import { CORNER_FROM_HZ, CORNER_TO_HZ, type Ends, findCorners, worstGain } from '../../../src/calc/network/shape.ts'
import type { Topology } from '../../../src/calc/types.ts'
import { opinion } from './opinion.ts'
import { type Parts, SEED, samples, withUnits } from './values.ts'

function ideal(topology: Topology, p: Parts): FilterCircuit {
  return {
    topology,
    shunt1: { ...NO_SHUNT, capacitanceF: p.C },
    shunt2: { ...NO_SHUNT, capacitanceF: p.C2 },
    series1: { ...NO_SERIES, inductanceH: p.L },
    series2: { ...NO_SERIES, inductanceH: p.L2 },
    bondOhm: 0,
    bondH: 0,
  }
}
const load = (ohm: number): NoiseLoad => ({ ...BENCH_LOAD, ohm })
const ends = (p: Parts): Ends => ({ source: { ohm: p.Rs, seriesH: 0 }, load: load(p.RL) })
const loss = (circuit: FilterCircuit, p: Parts, hz = p.f) => lossDb(circuit, { ohm: p.Rs, seriesH: 0 }, load(p.RL), hz)

/** Worst today is 9e-14 dB. */
const TOLERANCE_DB = 5e-13
/** At 10 THz the asymptote itself is 3.3e-6 dB off. */
const FAR_TOLERANCE_DB = 5e-6
const closeDb = (ours: number, theirs: number, tolerance = TOLERANCE_DB) =>
  expect(Math.abs(ours - theirs), `${ours} here, ${theirs} by mathjs`).toBeLessThan(tolerance)
const close = (ours: number | undefined, theirs: number, tolerance: number) =>
  expect(Math.abs((ours ?? Number.NaN) / theirs - 1), `${ours} here, ${theirs} by mathjs`).toBeLessThan(tolerance)

/** N of 20·log10|N|, exact and far above every corner. */
const FORMS: Readonly<Record<Topology, { exact: string; far: string }>> = {
  C: { exact: '1 + i*w*C*Rp', far: 'w*C*Rp' },
  L: { exact: '1 + i*w*L/S', far: 'w*L/S' },
  LC: { exact: '1 - w^2*L*C*RL/S + i*w*(L/S + C*Rp)', far: 'w^2*L*C*RL/S' },
  CL: { exact: '1 - w^2*L*C*Rs/S + i*w*(L/S + C*Rp)', far: 'w^2*L*C*Rs/S' },
  PI: {
    exact: '1 - w^2*L*(C2*RL + C*Rs)/S + i*w*(L/S + Rp*(C + C2 - w^2*L*C*C2))',
    far: 'w^3*L*C*C2*Rp',
  },
  T: {
    exact: '1 - w^2*C*(L*RL + L2*Rs)/S + i*w*((L + L2 - w^2*L*L2*C)/S + C*Rp)',
    far: 'w^3*L*L2*C/S',
  },
}

describe.each(TOPOLOGIES)(`%s between resistive ends, seed ${SEED}`, (topology) => {
  it('attenuates by its closed form', () => {
    for (const p of samples)
      closeDb(loss(ideal(topology, p), p), opinion(`20*log10(abs(${FORMS[topology].exact}))`, withUnits(p), ''))
  })

  it('ends on its asymptote, with the slope of its elements', () => {
    for (const p of samples) {
      const hz = 1e13
      const far = (f: number) => opinion(`20*log10(${FORMS[topology].far})`, withUnits({ ...p, f }), '')
      closeDb(loss(ideal(topology, p), p, hz), far(hz), FAR_TOLERANCE_DB)
      closeDb(far(10 * hz) - far(hz), asymptoteDbPerDecade(topology))
    }
  })
})

describe(`topologies against each other, seed ${SEED}`, () => {
  const hz = 1e13

  it('LC beats CL by the ratio of load to source', () => {
    for (const p of samples)
      closeDb(
        loss(ideal('LC', p), p, hz) - loss(ideal('CL', p), p, hz),
        opinion('20*log10(RL/Rs)', withUnits(p), ''),
        FAR_TOLERANCE_DB,
      )
  })

  it('a Pi beats a T of the same parts by Rs·RL·C/L', () => {
    for (const sample of samples) {
      const p = { ...sample, C2: sample.C, L2: sample.L }
      closeDb(
        loss(ideal('PI', p), p, hz) - loss(ideal('T', p), p, hz),
        opinion('20*log10(Rs*RL*C/L)', withUnits(p), ''),
        FAR_TOLERANCE_DB,
      )
    }
  })
})

/** A corner is read against the loss at 0.1 Hz instead of DC, which moves it by (0.1 Hz/corner)². */
const cornerTolerance = (hz: number) => 1e-9 + 1.01 * (CORNER_FROM_HZ / hz) ** 2

describe(`corners and resonances, seed ${SEED}`, () => {
  it('a shunt capacitor has its corner at 1/(2π·C·Rp)', () => {
    let found = 0
    for (const p of samples) {
      const theirs = opinion('1/(2*pi*C*Rp)', withUnits(p), 'Hz')
      if (theirs > CORNER_TO_HZ) continue
      found++
      const corners = findCorners(ideal('C', p), ends(p))
      close(corners.firstHz, theirs, cornerTolerance(theirs))
      close(corners.lastingHz, theirs, cornerTolerance(theirs))
    }
    expect(found).toBeGreaterThan(15)
  })

  it('between equal ends that is 1/(π·R·C)', () => {
    for (const sample of samples) {
      const p = { ...sample, RL: sample.Rs, C: Math.max(sample.C, 1e-9) }
      const theirs = opinion('1/(pi*Rs*C)', withUnits(p), 'Hz')
      close(findCorners(ideal('C', p), ends(p)).firstHz, theirs, cornerTolerance(theirs))
    }
  })

  it('a series inductor has its corner at (Rs + RL)/(2π·L)', () => {
    let found = 0
    for (const p of samples) {
      const theirs = opinion('(Rs+RL)/(2*pi*L)', withUnits(p), 'Hz')
      if (theirs > CORNER_TO_HZ) continue
      found++
      close(findCorners(ideal('L', p), ends(p)).firstHz, theirs, cornerTolerance(theirs))
    }
    expect(found).toBeGreaterThan(15)
  })

  it('an undamped LC peaks at 1/(2π·√(L·C))', () => {
    for (const sample of samples) {
      const p = { ...sample, Rs: 1e-4, RL: 1e9 }
      close(worstGain(ideal('LC', p), ends(p))?.atHz, opinion('1/(2*pi*sqrt(L*C))', withUnits(p), 'Hz'), 1e-6)
    }
  })

  it('a constant-k Pi of R0 ohms, L = R0/(π·fc) and C = 1/(π·R0·fc) halved, has its corner at fc', () => {
    for (const sample of samples) {
      const values = { R0: [sample.Rs, 'ohm'], fc: [Math.min(sample.f, 5e8), 'Hz'] } as const
      const L = opinion('R0/(pi*fc)', values, 'H')
      const half = opinion('1/(pi*R0*fc)/2', values, 'F')
      const p = { ...sample, RL: sample.Rs, L, C: half, C2: half }
      close(findCorners(ideal('PI', p), ends(p)).firstHz, values.fc[0], 1e-9)
    }
  })
})

describe(`real parts, seed ${SEED}`, () => {
  const [ESR, ESL, DCR, LOSS, SELF] = [0.0231, 0.83e-9, 0.0417, 2710, 1.93e-12] as const

  it('a capacitor with its leads attenuates by |1 + Rp/Z|', () => {
    for (const p of samples) {
      const circuit = { ...ideal('C', p), shunt1: { capacitanceF: p.C, esrOhm: ESR, eslH: ESL } }
      const values = { ...withUnits(p), ESR: [ESR, 'ohm'], ESL: [ESL, 'H'] } as const
      closeDb(loss(circuit, p), opinion('20*log10(abs(1 + Rp/(ESR + i*w*ESL + 1/(i*w*C))))', values, ''))
    }
  })

  it('an inductor with its losses attenuates by |1 + Z/S|', () => {
    for (const p of samples) {
      const series1 = { inductanceH: p.L, dcrOhm: DCR, parallelOhm: LOSS, parallelF: SELF }
      const values = { ...withUnits(p), DCR: [DCR, 'ohm'], Rx: [LOSS, 'ohm'], Cx: [SELF, 'F'] } as const
      const theirs = opinion('20*log10(abs(1 + (DCR + 1/(1/(i*w*L) + 1/Rx + i*w*Cx))/S))', values, '')
      closeDb(loss({ ...ideal('L', p), series1 }, p), theirs)
    }
  })

  it('the bond is the floor however large the capacitor: |1 + Rp/(Rb + jωLb)|', () => {
    for (const p of samples) {
      const [bondOhm, bondH] = [2.7e-3, 3.1e-9]
      const circuit = { ...ideal('C', { ...p, C: 1e6 }), bondOhm, bondH }
      const values = { ...withUnits(p), Rb: [bondOhm, 'ohm'], Lb: [bondH, 'H'] } as const
      closeDb(loss(circuit, p), opinion('20*log10(abs(1 + Rp/(Rb + i*w*Lb)))', values, ''), 5e-9)
    }
  })
})

test('a formula in the wrong unit is refused', () => {
  const [p] = samples
  if (!p) throw new Error('no sample')
  expect(() => opinion('1/(2*pi*L*C)', withUnits(p), 'Hz')).toThrow('not in Hz')
  expect(() => opinion('20*log10(abs(1 + w*C))', withUnits(p), '')).toThrow()
  expect(() => opinion('Rs*RL', withUnits(p), '')).toThrow('not a plain number')
})
