import { describe, expect, it, vi } from 'vitest'
import { wordlessWindow } from '../../../src/calc/checks/window/wordless.ts'
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

  it('stands wherever the line goes below chassis: one that conducts one way does not', () => {
    const below = rowOf({ breakdownV: '100', busMaxV: '80', busMinV: '-5' })
    expect(below?.verdict).toBe('fails')
    expect(below?.headline.replaceAll('\u00A0', ' ')).toMatch(
      /^No: the line goes to −5 V by itself: a unidirectional part conducts forward there/,
    )
    expect(rowOf({ breakdownV: '100', busMaxV: '80', busMinV: '-5', suppressorBidirectional: 'true' })?.verdict).toBe(
      'ok',
    )
    // and both ways it breaks down below −33.3 V, 30.74 V cold
    expect(rowOf({ breakdownV: '33.3', busMaxV: '20', busMinV: '-40', suppressorBidirectional: 'true' })?.verdict).toBe(
      'fails',
    )
  })

  it('counts every part of a stack', () => {
    expect(rowOf({ breakdownV: '33.3', busMaxV: '80', suppressorSeriesCount: '3' })?.verdict).toBe('ok')
  })

  it('leaves no yes where a text about it cannot be read, or what its supply is built to is not known', () => {
    const unread = rowOf({ breakdownV: 'big', busMaxV: '80' })
    expect(unread?.verdict).toBe('unknown')
    expect(unread?.headline).toMatch(/^Not known: /)
    // 45 V at 25 °C stands 32.2 V, and not the 80 V a supply may surge to
    const open = rowOf({ lineKind: 'power-28-vdc', breakdownV: '45', maxBuildableF: '1u', chassisLimitA: '1' })
    expect(open?.findings.find(({ id }) => id === 'suppressor-1')?.verdict).toBe('unknown')
    expect(open?.verdict).not.toBe('ok')
  })

  it('behind steering diodes meets either sign of its lines as one', () => {
    const line = lineOf('relay', { ...DISCRETE, breakdownV: '100', busMaxV: '80', busMinV: '-5' })
    const shared = connectorOf([contactOf('1', line.id)], { suppressors: [{ id: 'g', contacts: ['1', '2'] }] })
    expect(finished(scheduleOf(shared, [line])).rows[0]?.verdict).toBe('ok')
  })

  it('is looked at without a second window of its line', () => {
    const asked = vi.spyOn(wordlessWindow, 'figures')
    // a bond of its own and no other test's need: neither is remembered from before
    for (const breakdownV of ['', '100']) {
      const line = lineOf('relay', { ...DISCRETE, neededDb: '20.125', bondOhm: '3m', breakdownV, busMaxV: '80' })
      finished(scheduleOf(connectorOf([contactOf('1', line.id)]), [line]))
    }
    expect(asked).toHaveBeenCalledTimes(1)
    asked.mockRestore()
  })
})
