/** An address takes anybody's text: an answer or a sentence, no figure that is none, and nothing holds the screen up. */
import { describe, expect, it } from 'vitest'
import { evaluate } from '../../src/calc/line/evaluate.ts'
import { readFields } from '../../src/calc/line/fields.ts'
import { CHECKS } from '../../src/calc/registry.ts'
import type { Check, Progress, Result } from '../../src/calc/types.ts'
import { expressionReading, openCalculator } from '../../src/state/expression.ts'
import { splitQuery } from '../../src/state/query.ts'
import { readHash, writeQuery } from '../../src/state/router.ts'
import { checkAddress, wildAddress } from './support/addresses.ts'
import { chance } from './support/random.ts'
import { clocked, HANG_MS, note, turns } from './support/table.ts'

const SEED = Number(process.env['SEED'] ?? 20_261_127)
const COUNT = turns(2_500, 50_000)
/** A surge may go on for longer than a test has: its first slices are watched, the rest is its own tests' matter. */
const MOST_SLICES = 400

type Watched = { readonly result: Result | undefined; readonly slowestMs: number }

function watched(running: Generator<Progress, Result>): Watched {
  let slowestMs = 0
  for (let slice = 0; slice < MOST_SLICES; slice++) {
    const { value: step, ms } = clocked(() => running.next())
    slowestMs = Math.max(slowestMs, ms)
    if (step.done) return { result: step.value, slowestMs }
  }
  return { result: undefined, slowestMs }
}

/** What must not be in an answer, wherever it stands. */
function faultsOf(result: Result): readonly string[] {
  if (!result.ok)
    return result.issues.every(({ message }) => /[.?]$/.test(message)) ? [] : ['refused without a sentence']
  const faults: string[] = []
  for (const [key, { cell }] of Object.entries(result.outputs))
    if (cell.is === 'si' && !Number.isFinite(cell.si)) faults.push(`${key} is ${cell.si}`)
  const words = JSON.stringify(result, (_key, value: unknown) => (value instanceof Float64Array ? [] : value))
  if (/\bNaN\b|\bundefined\b|\[object|-?Infinity/.test(words))
    faults.push(/.{40}(?:NaN|undefined|\[object|Infinity).{40}/.exec(words)?.[0] ?? words)
  for (const bound of result.bounds) if (!(bound.markedF >= 0)) faults.push(`${bound.id} is ${bound.markedF}`)
  return faults
}

describe(`${2 * COUNT} addresses, seed ${SEED}`, { timeout: 3_600_000 }, () => {
  it('of checks are answered or refused in words', async () => {
    await openCalculator()
    const by = chance(SEED)
    const bad: string[] = []
    let slowestMs = 0
    let answered = 0
    for (let turn = 0; turn < COUNT; turn++) {
      const check: Check = by.pick(CHECKS)
      const hash = checkAddress(check, by)
      const route = readHash(hash)
      if (route.place !== 'check' || route.id !== check.id) continue
      const { texts } = splitQuery(route.query, check.inputs)
      const { value: fields, ms } = clocked(() => readFields(check, texts, expressionReading))
      const { result, slowestMs: slice } = watched(evaluate(check, fields))
      slowestMs = Math.max(slowestMs, ms, slice)
      if (result?.ok === true) answered++
      if (Math.max(ms, slice) > HANG_MS) bad.push(`${Math.round(Math.max(ms, slice))} ms: ${hash}`)
      if (result !== undefined) bad.push(...faultsOf(result).map((fault) => `${fault}: ${hash}`))
    }
    note({ attack: 'addresses of checks', times: COUNT, seed: SEED, bad: bad.length, slowestMs })
    expect(bad.slice(0, 5)).toEqual([])
    // a test that only sees refusals proves little
    expect(answered).toBeGreaterThan(COUNT / 10)
  })

  it('of any kind lead somewhere, and what was read is written back alike', () => {
    const by = chance(SEED + 1)
    const bad: string[] = []
    let slowestMs = 0
    for (let turn = 0; turn < COUNT; turn++) {
      const hash = wildAddress(by)
      const { value: route, ms } = clocked(() => readHash(hash))
      slowestMs = Math.max(slowestMs, ms)
      if (route.place === 'nowhere') continue
      const again = readHash(`#/${route.place}?${writeQuery(route.query)}`)
      if (again.place === 'nowhere' || JSON.stringify(again.query) !== JSON.stringify(route.query)) bad.push(hash)
    }
    note({ attack: 'addresses of any kind', times: COUNT, seed: SEED + 1, bad: bad.length, slowestMs })
    expect(bad.slice(0, 5)).toEqual([])
    expect(slowestMs).toBeLessThan(HANG_MS)
  })
})
