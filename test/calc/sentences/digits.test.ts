/** Estimates print three digits; only a frequency keeps four. What is a limit says which way it is rounded. */
import { expect, it } from 'vitest'
import { CHECKS } from '../../../src/calc/registry.ts'
import { outputText } from '../../../src/ui/parts/figure.ts'

const figures = CHECKS.flatMap((check) =>
  check.outputs.flatMap((output) => ('quantity' in output ? [{ id: check.id, ...output }] : [])),
)

it('prints no estimate with more than three digits, and no frequency with more than four', () => {
  const long = figures.filter(({ quantity, digits }) => digits > (quantity === 'frequency' ? 4 : 3))
  expect(long.map(({ id, key }) => `${id}.${key}`)).toEqual([])
})

it('rounds a most down and a least up', () => {
  const output = (check: string, key: string) => {
    const found = CHECKS.find(({ id }) => id === check)?.outputs.find((one) => one.key === key)
    if (found === undefined) throw new Error(`no output ${check}.${key}`)
    return found
  }
  const shown = (check: string, key: string, si: number) =>
    outputText({ is: 'si', si }, output(check, key)).replace('\u00a0', ' ')
  expect(shown('loading', 'mostCapacitanceF', 4.8096e-9)).toBe('4.8 nF')
  expect(shown('window', 'mostCapacitanceF', 11.699e-9)).toBe('11.6 nF')
  expect(shown('window', 'leastCapacitanceF', 14.71e-9)).toBe('14.8 nF')
  expect(shown('need', 'neededDb', 36.01)).toBe('36.1 dB')
  expect(shown('surge', 'worstLoadPeakV', 62.71)).toBe('62.8 V')
})
