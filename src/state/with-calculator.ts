/** A long computation over typed texts, some of which may be calculations. */
import type { Express } from '../calc/line/fields.ts'
import { expressionReading, openCalculator } from './expression.ts'

/** Works with the calculator: where a calculation was typed and the calculator is not there yet, once more when it is. */
export async function withCalculator<R>(work: (express: Express) => Promise<R>): Promise<R> {
  let isWaiting = false
  const express: Express = (text, quantity) => {
    const reading = expressionReading(text, quantity)
    if (reading === undefined) isWaiting = true
    return reading
  }
  const worked = await work(express)
  if (!isWaiting) return worked
  await openCalculator()
  return work(express)
}
