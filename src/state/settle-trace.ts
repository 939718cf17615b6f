/** The points of a long trace that carry its need, worked out anew whenever what they rest on changes. */
import { type ReadonlySignal, signal } from '@preact/signals'
import { choiceOfUnit } from '../calc/checks/trace/setup.ts'
import type { Settled } from '../calc/trace/settle.ts'
import type { FactKey, Line } from '../calc/types.ts'
import type { Desk } from './desk.ts'
import type { SpectrumTrace } from './traces.ts'
import { runInWorker } from './work.ts'

const result = signal<Settled | undefined>(undefined)
const under = signal<number | undefined>(undefined)
export const settled: ReadonlySignal<Settled | undefined> = result
/** how far it is, while it is worked out */
export const settling: ReadonlySignal<number | undefined> = under

/** What only an opened trace fills in: how many rows it has, and under what the few in the fields stand for them. */
const OPENED: readonly FactKey[] = ['traceRowCount', 'traceSettledFor', 'traceHeldFor']
const POINTS: readonly FactKey[] = ['traceHz', 'traceDb', 'traceUnit', 'traceNeedHz', 'traceNeedDb', ...OPENED]

/** Everything the points rest on, as one text. */
export const groundsOf = (line: Line): string =>
  JSON.stringify(
    Object.entries(line.facts)
      .filter(([key]) => !POINTS.includes(key as FactKey))
      .map(([key, fact]) => [key, fact?.text]),
  )

let stopping: AbortController | undefined

export function stopSettling(): void {
  stopping?.abort()
  stopping = undefined
  under.value = undefined
}

/** Works the points out and writes them to the line as they are measured; what was typed there stands again by undo. */
export async function settleOn({ line, write }: Desk, { spectrum, rows }: SpectrumTrace): Promise<void> {
  stopSettling()
  const mine = new AbortController()
  stopping = mine
  under.value = 0
  const { id, facts } = line.peek()
  try {
    const plain = { ...line.peek(), facts }
    const found = await runInWorker(
      { is: 'settleTrace', input: { line: plain, unit: spectrum.unit, rows } },
      ({ doneFrac }) => {
        if (stopping === mine) under.value = doneFrac
      },
      mine.signal,
    )
    if (mine.signal.aborted || line.peek().id !== id) return
    result.value = found
    if (!found.ok) return
    const put = (fact: FactKey, text: string) => {
      if (line.peek().facts[fact]?.text !== text) write(fact, { text, origin: { by: 'user' } })
    }
    const mark = (fact: FactKey, text: string) => {
      if (text !== '') put(fact, text)
      else if (line.peek().facts[fact] !== undefined) write(fact, undefined)
    }
    put('traceHz', found.pointsHz.map((hz) => `${hz}`).join('; '))
    put('traceDb', found.pointsDb.map((db) => `${db}`).join('; '))
    if (spectrum.unit !== undefined) put('traceUnit', choiceOfUnit(spectrum.unit))
    put('traceRowCount', `${spectrum.hz.length}`)
    mark('traceSettledFor', found.settledFor)
    mark('traceHeldFor', found.heldFor)
  } catch (error) {
    if (!mine.signal.aborted) throw error
  } finally {
    if (stopping === mine) {
      stopping = undefined
      under.value = undefined
    }
  }
}

export function forgetSettled(): void {
  stopSettling()
  result.value = undefined
}
