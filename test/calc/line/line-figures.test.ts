/** All bounds and rungs of a Line as numbers: each bound once, whoever finds it, and no sentence written for it. */
import { expect, test, vi } from 'vitest'
import { loadingCheck } from '../../../src/calc/checks/loading/check.ts'
import { powerCheck } from '../../../src/calc/checks/power/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { lineFigures } from '../../../src/calc/line/line-figures.ts'
import type { Fact, Line } from '../../../src/calc/types.ts'

const typed = (text: string): Fact => ({ text, origin: { by: 'user' } })
const line = (facts: Line['facts']): Line => ({ id: 'l1', name: 'J3-14', gate: 'clear', trials: [], facts })

const NOISE = {
  noiseHz: typed('12M'),
  neededDb: typed('20'),
  noiseSourceOhm: typed('50'),
  noiseLoadOhm: typed('50'),
}

test('a bus: its own ceiling and the two figures of a receiver once, the need of the topologies looked at', () => {
  const bus = line({ lineKind: typed('arinc-429-high'), ...NOISE })
  const { bounds, verdicts } = lineFigures(bus, undefined, [windowCheck, loadingCheck])
  const names = bounds.map(({ id, topology }) => `${id} ${topology}`)
  expect(new Set(names).size).toBe(names.length)
  const ceilings = bounds.filter(({ side }) => side === 'most')
  expect(ceilings.map(({ id, farads, per }) => [id, farads > 0, per])).toEqual([
    ['loading-works', true, 'pair'],
    ['permitted-arinc-429-receiver-differential', true, 'pair'],
    ['permitted-arinc-429-receiver-leg', true, 'leg'],
  ])
  // √(2.0² − 1.5²) µs / (ln 9 · 75 Ω)
  expect(ceilings[0]?.farads).toBeCloseTo(Math.sqrt(2e-6 ** 2 - 1.5e-6 ** 2) / (Math.log(9) * 75), 18)
  const needs = bounds.filter(({ side }) => side === 'least')
  expect(needs.map(({ topology }) => topology)).toContain('C')
  // √(10² − 1)/(2π · 12 MHz · 50 Ω), part by part at its least
  expect(needs[0]?.farads).toBeCloseTo(Math.sqrt(99) / (2 * Math.PI * 12e6 * 50) / (0.8 * 0.85 * 0.88 * 0.975 ** 2), 15)
  expect([...verdicts.keys()]).toEqual(['window', 'loading'])
})

test('a supply: the chassis-current limit by whoever reads it, and the rungs of its ladder', () => {
  const supply = line({
    lineKind: typed('power-115-vac-variable'),
    chassisLimitA: typed('10m'),
    legF: typed('10n'),
    ...NOISE,
  })
  const { bounds, rungs } = lineFigures(supply, undefined, [windowCheck, powerCheck])
  const limits = bounds.filter(({ id }) => id === 'chassis-current')
  expect(limits).toHaveLength(1)
  // the worst of the supply: 118 V at 800 Hz
  expect(limits[0]?.farads).toBeCloseTo(10e-3 / (2 * Math.PI * 800 * 118), 18)
  expect(rungs.some(({ role }) => role === 'working-peak')).toBe(true)
})

test('nothing is put into words, and the same Line is worked out once', () => {
  const figures = vi.spyOn(windowCheck, 'figures')
  const explain = vi.spyOn(windowCheck, 'explain')
  const bus = line({ lineKind: typed('can'), bitRateHz: typed('83.3k'), ...NOISE, noiseHz: typed('31M') })
  lineFigures(bus, undefined, [windowCheck])
  lineFigures(bus, undefined, [windowCheck])
  expect(figures).toHaveBeenCalledTimes(1)
  expect(explain).not.toHaveBeenCalled()
  vi.restoreAllMocks()
})
