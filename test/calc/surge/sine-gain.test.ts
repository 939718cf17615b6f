/** The steady sine through a filter against dividers of complex impedances, worked out here. */
import { expect, it } from 'vitest'
import { sineGain } from '../../../src/calc/surge/ac.ts'
import { NO_FILTER, type SurgeCircuit } from '../../../src/calc/surge/circuit.ts'
import { type Complex, parallel, series } from '../../support/complex.ts'

const BARE: SurgeCircuit = {
  source: { form: 'voltage', peak: 300, ohm: 5 },
  lineOhm: 1,
  lineH: 0,
  filter: NO_FILTER,
  placement: 'connector',
  loadOhm: 50,
  loadF: 0,
}
const size = ({ re, im }: Complex): number => Math.hypot(re, im)

it('divides between source with line and load where nothing else is there', () => {
  expect(sineGain(BARE, 1e3, false)).toBeCloseTo(50 / 56, 9)
})

it.each([1e3, 100e3, 159e3, 1e6])('is that of coil and capacitor before the load at %d Hz', (hz) => {
  const w = 2 * Math.PI * hz
  const filter = { ...NO_FILTER, topology: 'LC' as const, inductanceH: 10e-6, capacitanceF: 100e-9, dcrOhm: 0.1 }
  const end = parallel({ re: 50, im: 0 }, { re: 0, im: -1 / (w * 100e-9) })
  const behind = series({ re: 0.1, im: w * 10e-6 }, end)
  const whole = series({ re: 6, im: 0 }, behind)
  // the load, or the connector where that is higher
  const highest = Math.max(size(end), size(behind)) / size(whole)
  expect(sineGain({ ...BARE, filter }, hz, false)).toBeCloseTo(highest, 9)
})
