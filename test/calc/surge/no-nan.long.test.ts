/** No readable text in any field of the surge check ends in a number that is none, in a broken word, or in no end. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { surgeCheck } from '../../../src/calc/checks/surge/check.ts'
import { evaluateNow } from '../../../src/calc/line/evaluate.ts'
import { readFields } from '../../../src/calc/line/fields.ts'
import type { Result } from '../../../src/calc/types.ts'
import { faultsOf } from '../fuzz/faults.ts'
import { textsFor } from '../fuzz/texts.ts'

const SEED = Number(process.env['SEED'] ?? 61_703)
const RUNS = Number(process.env['RUNS'] ?? 150)

const answer = (texts: Readonly<Record<string, string>>): Result =>
  evaluateNow(surgeCheck, readFields(surgeCheck, texts))

describe(`surge, seed ${SEED}`, () => {
  it(`answers ${RUNS} sets of readable texts with finite numbers and whole words`, { timeout: 120_000 }, () => {
    let judged = 0
    const without = ['level', 'breakdownV', 'peakSec']
    fc.assert(
      fc.property(textsFor(surgeCheck, 0), fc.boolean(), (texts, own) => {
        // half the sets carry their own volts and ohms, so that most of them can be run at all
        const kept = own ? Object.fromEntries(Object.entries(texts).filter(([key]) => !without.includes(key))) : texts
        const result = answer(own ? { ...kept, openCircuitV: '517', sourceOhm: '3.7' } : kept)
        if (result.ok && result.verdict !== undefined) judged++
        expect(faultsOf(surgeCheck, result)).toEqual([])
      }),
      { seed: SEED, numRuns: RUNS },
    )
    expect(judged).toBeGreaterThan(RUNS / 5)
  })

  it(`refuses or answers ${RUNS} sets with rubbish among them, in sentences`, { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(textsFor(surgeCheck, 60), (texts) => {
        expect(faultsOf(surgeCheck, answer(texts))).toEqual([])
      }),
      { seed: SEED + 1, numRuns: RUNS },
    )
  })

  it('answers with every field empty, with every field absent, and at both ends of every range', () => {
    expect(faultsOf(surgeCheck, answer({}))).toEqual([])
    expect(faultsOf(surgeCheck, answer(Object.fromEntries(surgeCheck.inputs.map((i) => [i.key, '']))))).toEqual([])
    for (const end of ['min', 'max'] as const) {
      const texts = surgeCheck.inputs.flatMap(({ key, type }) =>
        type.is === 'number' && key !== 'level' ? [[key, String(type[end])]] : [],
      )
      for (const waveform of ['wf4', 'custom', 'iec-esd'])
        expect(faultsOf(surgeCheck, answer({ ...Object.fromEntries(texts), waveform }))).toEqual([])
    }
  })
})
