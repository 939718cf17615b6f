/** A field takes any text: a value that is right, or a sentence. Nothing hangs. */
import { describe, expect, it } from 'vitest'
import { readField } from '../../src/calc/line/fields.ts'
import { QUANTITIES, type Quantity } from '../../src/calc/quantity/quantity.ts'
import { CHECKS } from '../../src/calc/registry.ts'
import type { Input } from '../../src/calc/types.ts'
import { evaluateExpression, expressionReading, openCalculator } from '../../src/state/expression.ts'
import { calculation, damaged, rubbish } from './support/expressions.ts'
import { chance } from './support/random.ts'
import { clocked, HANG_MS, note, turns } from './support/table.ts'

const SEED = Number(process.env['SEED'] ?? 20_261_126)
const COUNT = turns(20_000, 1_000_000)
const NAMES = Object.keys(QUANTITIES) as Quantity[]
/** Every kind of field there is, each once. */
const INPUTS: readonly Input[] = [
  ...new Map(CHECKS.flatMap(({ inputs }) => inputs).map((input) => [JSON.stringify(input.type), input])).values(),
]

const isSentence = (message: string): boolean => message.length > 8 && /[.?]$/.test(message)
const isSound = (value: unknown): boolean =>
  typeof value === 'number'
    ? Number.isFinite(value)
    : typeof value === 'object' && value !== null
      ? Object.values(value).every(isSound)
      : typeof value === 'string' || typeof value === 'boolean'

describe(`${COUNT} texts, seed ${SEED}`, { timeout: 3_600_000 }, () => {
  it('come to the value they come to elsewhere, where they are calculations', async () => {
    await openCalculator()
    const by = chance(SEED)
    const wrong: string[] = []
    let slowestMs = 0
    const count = Math.ceil(COUNT / 4)
    for (let turn = 0; turn < count; turn++) {
      const { text, value } = calculation(by)
      const { value: reading, ms } = clocked(() => expressionReading(text, 'number'))
      slowestMs = Math.max(slowestMs, ms)
      if (reading?.is !== 'value') {
        // refused with reason: no number, too long, too large or too small to say
        const isTold = reading?.is === 'refused' && isSentence(reading.message)
        if (
          !isTold ||
          (Number.isFinite(value) && text.length < 150 && Math.abs(value) < 1e15 && Math.abs(value) > 1e-30)
        )
          wrong.push(`${text} = ${value}: ${JSON.stringify(reading)}`)
      } else if (Math.abs(reading.si - value) > 1e-9 * Math.abs(value) && !isCancelled(text, reading.si, value))
        wrong.push(`${text} = ${value}, not ${reading.si}`)
    }
    note({ attack: 'calculations against a second reckoning', times: count, seed: SEED, bad: wrong.length, slowestMs })
    expect(wrong.slice(0, 10)).toEqual([])
    expect(slowestMs).toBeLessThan(HANG_MS)
  })

  it('come to a value or a sentence in every kind of field, whatever they are', async () => {
    await openCalculator()
    const by = chance(SEED + 1)
    const wrong: string[] = []
    let slowestMs = 0
    const count = COUNT - Math.ceil(COUNT / 4)
    for (let turn = 0; turn < count; turn++) {
      const input = by.pick(INPUTS)
      const text = by.happens(0.5) ? damaged(by) : rubbish(by)
      const { value: field, ms } = clocked(() => readField(input, text, {}, expressionReading))
      slowestMs = Math.max(slowestMs, ms)
      if (field.text !== text) wrong.push(`text changed: ${JSON.stringify(text)}`)
      if (field.state === 'refused' ? !isSentence(field.issue?.message ?? '') : field.state === 'pending')
        wrong.push(`${field.state} without a sentence: ${JSON.stringify(text.slice(0, 200))} ${field.issue?.message}`)
      if (field.state === 'value' && !isSound(field.value))
        wrong.push(`${JSON.stringify(field.value)} from ${JSON.stringify(text.slice(0, 200))}`)
    }
    note({ attack: 'texts typed into every kind of field', times: count, seed: SEED + 1, bad: wrong.length, slowestMs })
    expect(wrong.slice(0, 10)).toEqual([])
    expect(slowestMs).toBeLessThan(HANG_MS)
  })

  it('are judged the same when the calculator is asked for and when it is there', async () => {
    const by = chance(SEED + 2)
    for (let turn = 0; turn < Math.min(COUNT / 20, 5000); turn++) {
      const text = damaged(by)
      const quantity = by.pick(NAMES)
      expect(await evaluateExpression(text, quantity)).toEqual(expressionReading(text, quantity))
    }
  })
})

/** Two nearly equal numbers taken from each other leave their last digits only: those may differ. */
const isCancelled = (text: string, own: number, value: number): boolean =>
  /-|cos|ln|log/.test(text) && Math.abs(own - value) < 1e-6 * Math.max(Math.abs(own), Math.abs(value))
