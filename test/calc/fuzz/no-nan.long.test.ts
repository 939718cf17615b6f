/**
 * No finite text in any field of any check ends in a number that is none, or in words that betray one.
 * Another seed or more runs: SEED=… RUNS=… npx vitest run --project long test/calc/fuzz
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { needCheck } from '../../../src/calc/checks/need/check.ts'
import { evaluateNow } from '../../../src/calc/line/evaluate.ts'
import { readFields } from '../../../src/calc/line/fields.ts'
import { CHECKS } from '../../../src/calc/registry.ts'
import type { Check, Result } from '../../../src/calc/types.ts'
import { faultsOf } from './faults.ts'
import { textsFor } from './texts.ts'

const SEED = Number(process.env['SEED'] ?? 90_417)
const RUNS = Number(process.env['RUNS'] ?? 300)

const answer = (check: Check, texts: Readonly<Record<string, string>>): Result =>
  evaluateNow(check, readFields(check, texts))

describe.each(CHECKS.map((check) => [check.id, check] as const))(`%s, seed ${SEED}`, (_id, check) => {
  it(`answers ${RUNS} sets of readable texts with finite numbers and whole words`, () => {
    let calculated = 0
    fc.assert(
      fc.property(textsFor(check, 0), (texts) => {
        const result = answer(check, texts)
        if (result.ok) calculated++
        expect(faultsOf(check, result)).toEqual([])
      }),
      { seed: SEED, numRuns: RUNS },
    )
    expect(calculated).toBeGreaterThan(RUNS / 2)
  })

  it(`refuses or answers ${RUNS} sets of texts with rubbish among them, in sentences`, () => {
    let refused = 0
    fc.assert(
      fc.property(textsFor(check, 60), (texts) => {
        const result = answer(check, texts)
        if (!result.ok) refused++
        expect(faultsOf(check, result)).toEqual([])
      }),
      { seed: SEED + 1, numRuns: RUNS },
    )
    expect(refused).toBeGreaterThan(RUNS / 20)
  })

  it('answers when every field is empty, and when every field is absent', () => {
    expect(faultsOf(check, answer(check, {}))).toEqual([])
    expect(faultsOf(check, answer(check, Object.fromEntries(check.inputs.map((i) => [i.key, '']))))).toEqual([])
  })

  it('answers at both ends of every range, all fields at once', () => {
    for (const end of ['min', 'max'] as const) {
      const texts = check.inputs.flatMap(({ key, type }) => (type.is === 'number' ? [[key, String(type[end])]] : []))
      expect(faultsOf(check, answer(check, Object.fromEntries(texts)))).toEqual([])
    }
  })
})

describe('the search for faults', () => {
  const sound: Result = {
    ok: true,
    headline: 'Enter the noise source.',
    findings: [],
    outputs: {},
    bounds: [],
    rungs: [],
    pictures: [],
    cautions: [],
  }

  it('finds a number that is none, wherever it hides', () => {
    const basis = { steps: [], assumptions: [], sources: [{ id: 'derived', standing: 'derived' }] } as const
    expect(faultsOf(needCheck, sound)).toEqual([])
    const output = { ...sound, outputs: { neededDb: { cell: { is: 'si', si: Number.NaN }, basis } } } as const
    expect(faultsOf(needCheck, output)).toEqual(['outputs.neededDb.cell.si = NaN'])
    const curve = {
      id: 'a',
      label: 'a',
      style: 'solid',
      x: Float64Array.of(1, 2),
      y: Float64Array.of(0, 1 / 0),
    } as const
    const plot = { is: 'plot', title: 'Loss', xLabel: 'f', xQuantity: 'frequency', xScale: 'log' } as const
    const rest = { yLabel: 'dB', yQuantity: 'decibel', curves: [curve], bands: [], limits: [], flags: [] } as const
    expect(faultsOf(needCheck, { ...sound, pictures: [{ ...plot, ...rest }] })).toEqual([
      'pictures.0.curves.0.y[1] = Infinity',
    ])
  })

  it('finds the words of a number that is none, but lets a typed text be quoted', () => {
    expect(faultsOf(needCheck, { ...sound, headline: 'At least NaN nF.' })).toHaveLength(1)
    expect(faultsOf(needCheck, { ...sound, headline: 'short' })).toHaveLength(1)
    const issue = { key: 'marginDb', code: 'not-a-number', message: '“NaN” is not a number; write 75 Ω.' }
    expect(faultsOf(needCheck, { ok: false, issues: [issue] })).toEqual([])
    expect(faultsOf(needCheck, { ok: false, issues: [] })).toHaveLength(1)
  })
})
