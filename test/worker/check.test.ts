import { describe, expect, it } from 'vitest'
import { evaluateNow } from '../../src/calc/line/evaluate.ts'
import { resolve } from '../../src/calc/line/resolver.ts'
import { CHECKS } from '../../src/calc/registry.ts'
import type { Check, Progress, Result } from '../../src/calc/types.ts'
import { jobOf } from '../../src/state/check.ts'
import { lineFrom } from '../../src/state/opening.ts'
import { readQuery } from '../../src/state/router.ts'
import { checkJob } from '../../src/worker/answer.ts'
import { run as runPlain } from '../../src/worker/check.ts'
import { run as runProvider } from '../../src/worker/provider.ts'
import { run as runSurge } from '../../src/worker/surge.ts'
import { run as runWindow } from '../../src/worker/window.ts'
import { WORKED } from '../e2e/support/worked-checks.ts'

/** What a message between two threads does to data. */
const sent = <T>(value: T): T => structuredClone(value)

const RUNS = { check: runPlain, provider: runProvider, window: runWindow, surge: runSurge }

const runOf = (check: Check) => RUNS[jobOf(check)]

function toTheEnd(running: Generator<Progress, Result>): Result {
  for (;;) {
    const step = running.next()
    if (step.done) return step.value
  }
}

describe('a check in the worker', () => {
  it.each(CHECKS.map((check) => [check.id, check] as const))('answers %s as this thread does', (id, check) => {
    const worked = WORKED[id]
    const fields = resolve(lineFrom(check, readQuery(worked?.query ?? ''))).fields(check)
    const here = evaluateNow(check, fields)
    expect(here.ok, 'the worked example has an answer').toBe(true)
    const there = toTheEnd(runOf(check)(sent(checkJob(check, fields))))
    expect(sent(there)).toEqual(here)
    expect(JSON.stringify(there)).toBe(JSON.stringify(here))
  })

  it('is answered by the worker that holds it, and by no other', () => {
    for (const [name, run] of Object.entries(RUNS))
      for (const check of CHECKS.filter((one) => jobOf(one) !== name))
        expect(() => toTheEnd(run({ check: check.id, fields: [] })), `${check.id} by ${name}`).toThrow()
    expect(CHECKS.map(jobOf).filter((name) => name === 'window' || name === 'surge')).toEqual(['window', 'surge'])
  })

  it('answers what is refused with the same refusals', () => {
    for (const check of CHECKS) {
      const fields = resolve(lineFrom(check, readQuery('capacitanceF=ten&lineKind=nothing'))).fields(check)
      expect(toTheEnd(runOf(check)(sent(checkJob(check, fields))))).toEqual(evaluateNow(check, fields))
    }
  })

  it('sends what is said and no descriptor: the worker has its own', () => {
    for (const check of CHECKS) {
      const worked = readQuery(WORKED[check.id]?.query ?? '')
      const { fields } = checkJob(check, resolve(lineFrom(check, worked)).fields(check))
      expect(fields.map(({ key }) => key).toSorted()).toEqual(worked.map(({ key }) => key).toSorted())
      expect(fields.filter((field) => 'input' in field)).toEqual([])
    }
  })

  it('names a check it does not have', () => {
    expect(() => toTheEnd(runPlain({ check: 'nothing' as 'window', fields: [] }))).toThrow('There is no check nothing.')
  })
})
