/** What an answer says and how it is judged agree: a failing finding never stands beside ok. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { filterCheck } from '../../../src/calc/checks/filter/check.ts'
import { loadingCheck } from '../../../src/calc/checks/loading/check.ts'
import { needCheck } from '../../../src/calc/checks/need/check.ts'
import { pairCheck } from '../../../src/calc/checks/pair/check.ts'
import { powerCheck } from '../../../src/calc/checks/power/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { evaluateNow } from '../../../src/calc/line/evaluate.ts'
import { readFields } from '../../../src/calc/line/fields.ts'
import type { Check, Input } from '../../../src/calc/types.ts'
import { VERDICT_RANK } from '../../../src/calc/verdict.ts'
import { run, si } from '../../support/run-check.ts'

const CHECKS: readonly Check[] = [filterCheck, windowCheck, loadingCheck, needCheck, pairCheck, powerCheck]

/** Sizes as they occur on aircraft lines; a third of the fields that may stay empty do. */
const SIZES: Readonly<Record<string, readonly [number, number]>> = {
  capacitance: [1e-12, 1e-6],
  inductance: [1e-9, 1e-3],
  resistance: [1, 1e4],
  frequency: [1e4, 1e9],
  bitRate: [1e4, 1e8],
  voltage: [1, 400],
  current: [1e-3, 10],
  time: [1e-9, 1e-3],
  power: [1, 1e4],
  energy: [1e-6, 1],
  temperature: [-40, 100],
  fraction: [0, 0.4],
  angle: [0.1, 40],
  number: [0, 3],
}

function textOf({ type, whenEmpty }: Input): fc.Arbitrary<string> {
  const isAsked = whenEmpty.do === 'ask'
  if (type.is === 'choice') return fc.constantFrom(...(isAsked ? [] : ['']), ...type.options.map(({ value }) => value))
  if (type.is === 'flag') return fc.constantFrom('', 'true')
  if (type.is === 'tolerance') return fc.constantFrom('', '5 %')
  if (type.is === 'level') return fc.constantFrom('40 dBm', '60', '71.3 dBµV', '30 dBµA')
  if (type.is === 'column') return fc.constant('')
  if (type.quantity === 'count') return fc.constantFrom('1', '3')
  const [low, high] = SIZES[type.quantity] ?? [0, 80]
  const inside = (si: number) => String(Math.min(type.max, Math.max(type.min, si)))
  const value = fc
    .double({ min: 0, max: 1, noNaN: true })
    .map((t) => inside(low > 0 ? low * (high / low) ** t : low + (high - low) * t))
  return fc.oneof({ weight: 2, arbitrary: value }, { weight: isAsked ? 0 : 1, arbitrary: fc.constant('') })
}

describe('verdict and findings', () => {
  for (const check of CHECKS)
    it(`of ${check.id} agree (seed 30717)`, () => {
      const texts = fc.record(Object.fromEntries(check.inputs.map((input) => [input.key, textOf(input)])))
      fc.assert(
        fc.property(texts, (given) => {
          const result = evaluateNow(check, readFields(check, given))
          if (!result.ok || result.verdict === undefined) return
          // The window adds what to take care of (a bond that every contact shares) beside a yes; nowhere a failure.
          const counts = check === windowCheck ? VERDICT_RANK.unknown : 0
          const ranks = result.findings.map(({ verdict }) => VERDICT_RANK[verdict]).filter((rank) => rank >= counts)
          const worst = Math.max(0, ...ranks)
          expect(VERDICT_RANK[result.verdict], JSON.stringify(given)).toBeGreaterThanOrEqual(worst)
        }),
        // Filter and window search a box of tolerances: fewer of them.
        { seed: 30717, numRuns: check === windowCheck ? 12 : check === filterCheck ? 60 : 300 },
      )
    })
})

describe('a filter that meets the need and amplifies elsewhere', () => {
  // 10 µH with 1 µF from 0.1 Ω into 100 Ω rings by 24 dB near 50 kHz; at 1 MHz it attenuates.
  const ringing = {
    topology: 'LC',
    capacitanceF: '1u',
    inductanceH: '10u',
    sourceOhm: '0.1',
    loadOhm: '100',
    frequencyHz: '1M',
    neededDb: '30',
  }

  it('is not ok, and the sentence at the head says why', () => {
    const result = run(filterCheck, ringing)
    expect(result.verdict).toBe('fails')
    expect(result.headline).toContain('but it amplifies by')
    expect(result.findings[0]?.sentence).toContain('Amplifies by 23.99')
  })

  it('says which parts a yes is for', () => {
    const plain = { topology: 'C', capacitanceF: '100n', sourceOhm: '50', loadOhm: '50', frequencyHz: '10M' }
    const calm = { ...plain, eslH: '0.02n', bondOhm: '2.5m', bondH: '0.2n', neededDb: '20' }
    expect(run(filterCheck, calm).verdict).toBe('ok')
    expect(run(filterCheck, calm).headline).toContain('with the worst part')
    const uneven = { ...calm, topology: 'PI', inductanceH: '1u', capacitance2F: '220n', inductorParallelF: '2p' }
    expect(run(filterCheck, uneven).headline).toContain('with the worst part')
    // An inductor of no size has no tolerance either: only what was entered is known.
    const sizeless = { ...calm, topology: 'L', inductanceH: '0', inductorParallelF: '2p', neededDb: '0' }
    expect(run(filterCheck, sizeless).headline).toContain('with the parts as entered')
  })
})

describe('a filter over its tolerance', () => {
  // A Pi whose resonance lies inside its box: 29.6 dB at the corners of its capacitors, nothing where L·C1·C2/(C1 + C2) = 1/ω².
  const pi = {
    topology: 'PI',
    capacitanceF: '124n',
    inductanceH: '4.52u',
    sourceOhm: '1366',
    loadOhm: '1732',
    frequencyHz: '318.8k',
    esrOhm: '0',
    eslH: '0',
    bondOhm: '0',
    bondH: '0',
    inductorParallelF: '0',
    toleranceFrac: '20 %',
    temperatureFrac: '0',
    biasFrac: '0',
    ageingDecades: '0',
  }

  it('is judged by its worst part, which may lie inside the box', () => {
    const result = run(filterCheck, { ...pi, neededDb: '10' })
    expect(si(result, 'worstInsertionLossDb')).toBeLessThan(0.1)
    expect(result.verdict).toBe('fails')
    expect(si(result, 'insertionLossDb')).toBeGreaterThan(10)
    expect(result.headline).toMatch(/needed; as entered \d/u)
  })
})
