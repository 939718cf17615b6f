/** A measured insertion loss as what a capacitor did: the reading from which the loop check finds source and load. */
import { resolve } from '../calc/line/resolver.ts'
import { printText } from '../calc/quantity/format.ts'
import type { MeasuredLoss } from '../calc/trace/compare.ts'
import type { FactKey } from '../calc/types.ts'
import type { Desk } from './desk.ts'

type Loss = Extract<MeasuredLoss, { ok: true }>

/** The row nearest to the noise frequency of the line where one is typed inside the trace; else the row of most loss. */
export function readingRow({ line }: Pick<Desk, 'line'>, { hz, db }: Loss): number {
  const resolution = resolve(line.value)
  const [noiseHz] = resolution.numbers(resolution.stated('noiseHz'), 'frequency')
  const nearest = (at: number) =>
    hz.reduce((best, one, row) => (Math.abs(one - at) < Math.abs((hz[best] as number) - at) ? row : best), 0)
  if (noiseHz !== undefined && noiseHz >= (hz[0] ?? Number.POSITIVE_INFINITY) && noiseHz <= (hz.at(-1) ?? 0))
    return nearest(noiseHz)
  return db.reduce((most, one, row) => (one > (db[most] as number) ? row : most), 0)
}

/** Writes the reading: the loss, the capacitor that is marked, and the frequency where the line has none. */
export function takeReading({ line, write }: Desk, { hz, db }: Loss, row: number): void {
  const { facts } = line.peek()
  const put = (fact: FactKey, text: string) => {
    const before = facts[fact]?.text
    if (before !== text) write(fact, { text, origin: { by: 'user' } }, before ?? '')
  }
  put('trialFirstDb', printText(Number((db[row] as number).toPrecision(4)), 'decibel'))
  if (facts.markedF !== undefined) put('trialFirstF', facts.markedF.text)
  if ((facts.noiseHz?.text ?? '').trim() === '')
    put('noiseHz', printText(Number((hz[row] as number).toPrecision(6)), 'frequency'))
}
