import { describe, expect, it } from 'vitest'
import { scheduleOf } from '../../../src/calc/connector/schedule.ts'
import type { FactKey } from '../../../src/calc/types.ts'
import { connectorOf, contactOf, DISCRETE, finished, lineOf } from './some-connector.ts'

/** A discrete with a window that is open, and what is entered of its suppressor and of its own peak. */
function rowOf(texts: Partial<Record<FactKey, string>>) {
  const line = lineOf('relay', { ...DISCRETE, ...texts })
  const [row] = finished(scheduleOf(connectorOf([contactOf('1', line.id)]), [line])).rows
  return row
}

describe('a suppressor that was entered for a line', () => {
  // 33.3 V at 25 °C is 33.3·(1 + 9.6e-4·(−55 − 25)) = 30.74 V at −55 °C, by hand
  it('takes the yes from its contact where the line itself makes it conduct, and says at how many volts', () => {
    const row = rowOf({ breakdownV: '33.3', busMaxV: '80' })
    expect(rowOf({})?.verdict).toBe('ok')
    expect(row?.verdict).toBe('fails')
    expect(row?.headline.replaceAll('\u00A0', ' ')).toMatch(
      /^No: its suppressor breaks down at 30\.7 V cold, and the line reaches 80 V by itself\./,
    )
    expect(row?.findings.map(({ id }) => id)).toContain('suppressor-1')
  })

  it('leaves it where it stands above everything the line does', () => {
    const row = rowOf({ breakdownV: '100', busMaxV: '80' })
    expect(row?.verdict).toBe('ok')
    expect(row?.findings.map(({ id }) => id)).not.toContain('suppressor-1')
  })

  it('is judged by the least of its class where only a stand-off was entered', () => {
    expect(rowOf({ standoffV: '33', busMaxV: '80' })?.verdict).toBe('fails')
  })
})
