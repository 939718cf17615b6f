/** Closed forms of need and window, worked out a second time by mathjs with units. Truth: the definitions (derived). */
import { describe, expect, it } from 'vitest'
import { leastMarkedF, leastMarkedH } from '../../../src/calc/bounds/least-marked.ts'
import { crossPerLegF, legFactor, loadPerLeg, sourcePerLeg } from '../../../src/calc/bounds/legs.ts'
import { mostMarkedF, roomPerLegF } from '../../../src/calc/bounds/room.ts'
import type { Surroundings } from '../../../src/calc/bounds/surroundings.ts'
import { leastShare, mostShare, type Spread } from '../../../src/calc/bounds/worst-case.ts'
import { needCheck } from '../../../src/calc/checks/need/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { BENCH_LOAD } from '../../../src/calc/network/circuit.ts'
import { run, si } from '../../support/run-check.ts'
import { opinion } from './opinion.ts'
import { type Parts, SEED, samples, withUnits } from './values.ts'

const close = (ours: number | undefined, theirs: number, tolerance = 1e-12) =>
  expect(Math.abs((ours ?? Number.NaN) / theirs - 1), `${ours} here, ${theirs} by mathjs`).toBeLessThan(tolerance)

/** A need for each sample, 3 to 75 dB. */
const needs = samples.map((_, i) => 3 + 2.97 * i)
const each = (check: (p: Parts, N: number) => void) => {
  samples.forEach((p, i) => {
    check(p, needs[i] ?? 0)
  })
}

const SPREAD: Spread = {
  tolerance: { lowFrac: 0.17, highFrac: 0.23 },
  temperatureFrac: 0.13,
  biasFrac: 0.31,
  ageingDecades: 2.5,
  ageingFracPerDecade: 0.021,
}
const SHARES = { tl: 0.17, th: 0.23, temp: 0.13, bias: 0.31, d: 2.5, k: 0.021 } as const
const K_LOW = '((1-tl)*(1-temp)*(1-bias)*(1-k)^d)'
const K_HIGH = '((1+th)*(1+temp))'

function around(p: Parts, db: number, topology: 'C' | 'L'): Surroundings {
  return {
    topology,
    needs: [{ hz: p.f, db }],
    sources: [{ ohm: p.Rs, seriesH: 0 }],
    load: { ...BENCH_LOAD, ohm: p.RL },
    esrOhm: 0,
    eslH: 0,
    bondOhm: 0,
    bondH: 0,
    inductancesH: [p.L],
  }
}

describe(`the least and the most, seed ${SEED}`, () => {
  const LEAST = 'sqrt(10^(N/10) - 1)/(w*Rp)'
  /** Crossings are located to 1e-9 on the log axis. */
  const LOCATED = 2e-9

  it('a single capacitor needs √(10^(N/10) − 1)/(ω·Rp)', () => {
    each((p, N) => {
      const least = leastMarkedF(around(p, N, 'C'), { least: 1, most: 1 })
      if (least.is !== 'found') throw new Error(`no least for ${JSON.stringify(p)}`)
      close(least.marked, opinion(LEAST, { ...withUnits(p), N }, 'F'), LOCATED)
    })
  })

  it('the check marks it up by what the part loses, per leg of a pair in either mode', () => {
    for (const [mode, g] of [
      ['common', 2],
      ['differential', 1 / 2],
    ] as const) {
      each((p, N) => {
        const result = run(windowCheck, {
          lineKind: 'rs-422',
          mode,
          topology: 'C',
          frequencyHz: String(p.f),
          neededDb: String(N),
          sourceOhm: String(p.Rs),
          loadOhm: String(p.RL),
          toleranceFrac: '+23/-17 %',
          temperatureFrac: '13 %',
          biasFrac: '31 %',
          ageingDecades: '2.5',
          ageingFracPerDecade: '2.1 %',
        })
        const perLeg = { ...withUnits(p), Rs: [p.Rs * g, 'ohm'], RL: [p.RL * g, 'ohm'], N, ...SHARES } as const
        close(si(result, 'leastCapacitanceF'), opinion(`${LEAST}/${K_LOW}`, perLeg, 'F'), LOCATED)
      })
    }
  })

  it('a single inductor needs √(10^(N/10) − 1)·(Rs + RL)/ω', () => {
    let found = 0
    each((p, N) => {
      const theirs = opinion('sqrt(10^(N/10) - 1)*S/w', { ...withUnits(p), N }, 'H')
      const ours = leastMarkedH(around(p, N, 'L'), { least: 1, most: 1 })
      if (theirs > 1) return expect(ours.is).toBe('never')
      found++
      close(ours.is === 'found' ? ours.marked : undefined, theirs, LOCATED)
    })
    expect(found).toBeGreaterThan(12)
  })

  it('what is left of a part is k_low, what it may have is k_high, and ageing is (1 − k)^decades', () => {
    close(leastShare(SPREAD), opinion(K_LOW, SHARES, ''))
    close(mostShare(SPREAD), opinion(K_HIGH, SHARES, ''))
    const fresh = { ...SPREAD, tolerance: { lowFrac: 0, highFrac: 0 }, temperatureFrac: 0, biasFrac: 0 }
    close(leastShare(fresh), opinion('(1-k)^d', SHARES, ''))
  })

  it('the room of a pair is twice what its wires stand less the suppressor; a Pi has two capacitors to share it', () => {
    const values = { Cw: [8.3e-9, 'F'], Cx: [0.41e-9, 'F'], Ce: [1.7e-9, 'F'], Cs: [0.23e-9, 'F'], n: 2 } as const
    const taken = { isPair: true, crossF: 0.41e-9, existingF: 1.7e-9, suppressorF: 0.23e-9 }
    const ROOM = '(2*(Cw - Cx - Ce) - Cs)'
    const roomF = roomPerLegF(8.3e-9, taken)
    close(roomF, opinion(ROOM, values, 'F'))
    close(roomPerLegF(8.3e-9, { ...taken, isPair: false }), opinion('Cw - Ce - Cs', values, 'F'))
    close(mostMarkedF(roomF, 2, mostShare(SPREAD)), opinion(`${ROOM}/(n*${K_HIGH})`, { ...values, ...SHARES }, 'F'))
  })
})

describe('what one leg of a pair sees', () => {
  const load = { ohm: 91, parallelF: 37e-12, parallelH: 6.1e-6 }
  const source = { ohm: 23, seriesH: 0.37e-6 }
  const values = { R: [91, 'ohm'], C: [37e-12, 'F'], L: [6.1e-6, 'H'], Zs: [23, 'ohm'], Ls: [0.37e-6, 'H'] } as const

  it.each([
    ['common', 2],
    ['differential', 0.5],
  ] as const)('is the pair in %s mode times %d: ohms and henries by it, farads by its inverse', (mode, g) => {
    const factor = legFactor(true, mode)
    const leg = loadPerLeg(load, factor)
    close(leg.ohm, opinion('g*R', { ...values, g }, 'ohm'))
    close(leg.parallelF, opinion('C/g', { ...values, g }, 'F'))
    close(leg.parallelH, opinion('g*L', { ...values, g }, 'H'))
    close(sourcePerLeg(source, factor).ohm, opinion('g*Zs', { ...values, g }, 'ohm'))
    close(sourcePerLeg(source, factor).seriesH, opinion('g*Ls', { ...values, g }, 'H'))
  })

  it('is twice the line-to-line capacitor in differential mode', () => {
    close(crossPerLegF(470e-12, true, 'differential'), opinion('2*Cx', { Cx: [470e-12, 'F'] }, 'F'))
  })
})

describe('the need', () => {
  it.each([
    [83.7, 61.2, 5.5],
    [41.3, 60.9, 6],
  ])('is the measured level over the limit with its margin, never below zero: %d, %d, %d', (m, l, margin) => {
    const result = run(needCheck, { measuredDb: String(m), limitDb: String(l), marginDb: String(margin) })
    const theirs = opinion('max(0, m - l + margin)', { m, l, margin }, '')
    expect(Math.abs((si(result, 'neededDb') ?? Number.NaN) - theirs)).toBeLessThan(1e-12)
  })
})
