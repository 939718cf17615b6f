/**
 * Figures printed in the notes against calc and against tables worked outside: whoever changes a formula finds the note
 * that would be wrong. Tables of topologies and of the bond floor: ngspice and hand, to 0.1 dB.
 */
import { expect, test } from 'vitest'
import { clampFallDb, pairFromSumAndParallel } from '../../src/calc/network/clamp.ts'
import { rectifierHz } from '../../src/calc/tone/explanations.ts'
import { FIELD_NOTES } from '../../src/guide/notes.ts'

const note = (id: string) => {
  const found = FIELD_NOTES.find((each) => each.id === id)
  if (found === undefined) throw new RangeError(id)
  return found
}
const plain = (text: string): string => text.replace(/\u00a0|\u202f/g, ' ')
const textOf = (id: string): string => plain(note(id).paragraphs.join(' '))
const rowsOf = (id: string) => note(id).table?.rows.map((row) => row.map(plain))
const inDb = (ratio: number): number => 20 * Math.log10(ratio)

test('the table of topologies is the one worked outside', () => {
  expect(rowsOf('which-way-round')).toEqual([
    ['1 Ω / 10 Ω', '1.2', '15.3', '31.0', '16.6', '32.4', '46.7'],
    ['5 Ω / 1 kΩ', '10.3', '0.0', '31.7', '10.3', '41.8', '31.7'],
    ['1 kΩ / 5 Ω', '10.3', '0.0', '10.3', '31.7', '41.8', '31.7'],
    ['1 kΩ / 1 kΩ', '49.9', '0.0', '50.0', '50.0', '81.4', '50.0'],
    ['50 Ω / 50 Ω', '23.9', '1.4', '27.9', '27.9', '55.4', '31.9'],
  ])
})

test('the floor of a bond is the one worked outside', () => {
  expect(rowsOf('lead-and-bond')).toEqual([
    ['0 nH', '80.0', '80.0', '80.0'],
    ['1 nH', '71.4', '52.0', '32.0'],
    ['5 nH', '58.0', '38.0', '18.1'],
    ['20 nH, an inch of wire', '46.0', '26.0', '7.0'],
  ])
})

test('the fall under a clamp and the conversion of unequal legs are those worked by hand', () => {
  expect(rowsOf('clamp-ferrites')).toEqual([
    ['25 Ω', '14.0 dB'],
    ['50 Ω', '9.5 dB'],
    ['150 Ω', '4.4 dB'],
    ['300 Ω', '2.5 dB'],
  ])
  expect(rowsOf('pair-balance')).toEqual([
    ['+100/−0 %', '−9.5 dB'],
    ['±20 %', '−14.0 dB'],
    ['±10 %', '−20.0 dB'],
    ['±5 %', '−26.0 dB'],
    ['±1 %', '−40.0 dB'],
  ])
})

const two = 2 * Math.PI

test.each([
  ['current-probe', '4.7 Ω at 150 kHz', (two * 150e3 * 5e-6).toFixed(1), '4.7'],
  ['source-impedance', 'up to 34 dB', inDb(50).toFixed(0), '34'],
  ['alternator-frequencies', '600 Hz', String((12 * 6000) / 120), '600'],
  ['alternator-frequencies', '3.6 kHz', String(rectifierHz(600, 6) / 1e3), '3.6'],
  ['alternator-frequencies', '7.2 kHz', String(rectifierHz(400, 18) / 1e3), '7.2'],
  ['clamp-ferrites', '9.5 dB in 50 Ω', clampFallDb({ clampOhm: 100, loopOhm: 50 }).toFixed(1), '9.5'],
  ['bond-four-wire', '50 nH of strap is 3 Ω at 10 MHz', (two * 10e6 * 50e-9).toFixed(0), '3'],
  ['shield-ends', '31 Ω at 100 MHz', (two * 100e6 * 50e-9).toFixed(0), '31'],
  ['hf-on-the-airframe', '2.8 dB at 3 MHz', inDb(Math.hypot(1, two * 3e6 * 1e-9 * 50)).toFixed(1), '2.8'],
  ['which-way-round', '46 dB more', inDb(1000 / 5).toFixed(0), '46'],
  ['insulation-tests', '38 mA', (two * 60 * 100e-9 * 1000 * 1e3).toFixed(0), '38'],
  ['insulation-tests', '0.125 J', (0.5 * 1e-6 * 500 ** 2).toFixed(3), '0.125'],
  ['insulation-tests', '0.46 J', (37 * 0.5 * 100e-9 * 500 ** 2).toFixed(2), '0.46'],
  ['insulation-tests', '4.6 s', (Math.log(100) * 1).toFixed(1), '4.6'],
  ['paschen', '163 V peak', (115 * Math.SQRT2).toFixed(0), '163'],
  ['paschen', '325 V peak', (230 * Math.SQRT2).toFixed(0), '325'],
  ['worst-case-capacitor', '0.57', (0.8 * 0.75 * 0.975 ** 2).toFixed(2), '0.57'],
  ['worst-case-capacitor', '4.9 dB', (-inDb(0.8 * 0.75 * 0.975 ** 2)).toFixed(1), '4.9'],
])('%s says %s', (id, words, worked, figure) => {
  expect(worked).toBe(figure)
  expect(textOf(id)).toContain(words)
})

test('sum and parallel of 200 and 37.5 Ω are 150 and 50 Ω, as the note says', () => {
  expect(textOf('source-impedance')).toContain('200 and 37.5 Ω give 150 and 50 Ω')
  const ends = pairFromSumAndParallel({ sumOhm: 200, parallelOhm: 37.5 })
  expect([...Object.values(ends ?? {})].map(Number).sort((a, b) => a - b)).toEqual([50, 150])
})
