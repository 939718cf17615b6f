import { signal } from '@preact/signals'
import { describe, expect, it } from 'vitest'
import { loopCheck } from '../../src/calc/checks/loop/check.ts'
import { resolve } from '../../src/calc/line/resolver.ts'
import { withFact } from '../../src/calc/line/with-fact.ts'
import type { Fact, FactKey } from '../../src/calc/types.ts'
import { type Desk, scratchDesk } from '../../src/state/desk.ts'
import { readingRow, takeReading } from '../../src/state/measured-reading.ts'
import { newLine } from '../../src/store/line.ts'

const LOSS = { ok: true, hz: Float64Array.of(10e6, 120e6, 300e6), db: Float64Array.of(1, 6, 14) } as const

function deskWith(facts: Readonly<Partial<Record<FactKey, string>>>): Desk {
  const line = signal(newLine('line'))
  const write = (fact: FactKey, next: Fact | undefined) => {
    line.value = withFact(line.value, fact, next) as typeof line.value
  }
  for (const [fact, text] of Object.entries(facts)) write(fact as FactKey, { text, origin: { by: 'user' } })
  return { ...scratchDesk, line, write }
}

describe('a measured loss', () => {
  it('is read at the noise frequency of the line, else where it is largest', () => {
    expect(readingRow(deskWith({ noiseHz: '118 MHz' }), LOSS)).toBe(1)
    expect(readingRow(deskWith({ noiseHz: '1 GHz' }), LOSS)).toBe(2)
    expect(readingRow(deskWith({}), LOSS)).toBe(2)
  })

  it('of 6 dB with 1 nF at 120 MHz stands against 2.29 Ω, by hand', () => {
    const desk = deskWith({ noiseHz: '120 MHz', markedF: '1 nF' })
    takeReading(desk, LOSS, readingRow(desk, LOSS))
    const figures = resolve(desk.line.value).figures(loopCheck)
    if ('ok' in figures) throw new Error(JSON.stringify(figures))
    expect(figures.values['parallelOhm']).toBeCloseTo(Math.sqrt(10 ** 0.6 - 1) / (2 * Math.PI * 120e6 * 1e-9), 6)
  })

  it('brings its frequency where the line has none, and leaves a typed one', () => {
    const empty = deskWith({})
    takeReading(empty, LOSS, 2)
    expect(empty.line.value.facts.noiseHz?.text.replaceAll('\u00A0', ' ')).toBe('300 MHz')
    const typed = deskWith({ noiseHz: '119.9 MHz' })
    takeReading(typed, LOSS, 1)
    expect(typed.line.value.facts.noiseHz?.text).toBe('119.9 MHz')
  })
})
