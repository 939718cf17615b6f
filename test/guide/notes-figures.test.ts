/**
 * Figures printed in the notes against calc and against tables worked outside: whoever changes a formula finds the note
 * that would be wrong. Tables of topologies and of the bond floor: ngspice and hand, to 0.1 dB.
 */
import { expect, test } from 'vitest'
import { clampFallDb, pairFromSumAndParallel } from '../../src/calc/network/clamp.ts'
import { parseQuantity } from '../../src/calc/quantity/parse.ts'
import { rectifierHz } from '../../src/calc/tone/explanations.ts'
import { WAYS_TO_WRITE } from '../../src/guide/notes/parts-worked.ts'
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
    ['no inductance', '80.0', '80.0', '80.0'],
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

/** A resistance beside a reactance: real and imaginary part of R·jX/(R + jX). */
function parallel(ohm: number, x: number): readonly [number, number] {
  const square = ohm * ohm + x * x
  return [(ohm * x * x) / square, (ohm * ohm * x) / square]
}

/**
 * Highest gain of 1 µH and 10 nF between 5 Ω and 1 kΩ: the loss against the bare line is
 * |1 + Rs/Rl + jωL/Rl + jωC·Rs − ω²LC| / (1 + Rs/Rl), searched in steps of a thousandth.
 */
function peakOfLcDb(): number {
  const [rs, rl, l, c] = [5, 1000, 1e-6, 10e-9]
  let least = Number.POSITIVE_INFINITY
  for (let hz = 1e6; hz < 2e6; hz *= 1.001) {
    const w = two * hz
    least = Math.min(least, Math.hypot(1 + rs / rl - w * w * l * c, (w * l) / rl + w * c * rs) / (1 + rs / rl))
  }
  return -inDb(least)
}

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
  ['current-probe', 'by 14.6 dB', inDb(25 / Math.hypot(...parallel(25, two * 150e3 * 5e-6))).toFixed(1), '14.6'],
  ['alternator-frequencies', '660 µF', ((Math.sqrt(99) / (two * 2400)) * 1e6).toPrecision(2), '6.6e+2'],
  ['alternator-frequencies', '330 µF', ((Math.sqrt(99) / (two * 4800)) * 1e6).toPrecision(2), '3.3e+2'],
  ['which-way-round', 'above 160 MHz', (1000 / (two * 1e-6) / 1e6).toPrecision(2), '1.6e+2'],
  ['which-way-round', '31.7 − 10.3 = 21 dB', (31.7 - 10.3).toFixed(0), '21'],
  ['which-way-round', 'louder by 6.2 dB', peakOfLcDb().toFixed(1), '6.2'],
  ['bench-figure', 'does 12 dB', inDb(Math.hypot(1, (10 / 11 / 25) * Math.sqrt(9999))).toFixed(0), '12'],
  ['vhf-and-gnss', 'The 13th harmonic of 121.15', (1575.42 / 121.2).toFixed(0), '13'],
  ['vhf-and-gnss', 'the 12th of 131.3 MHz', (1575.42 / 131.3).toFixed(0), '12'],
  ['paschen', '283 V peak', (200 * Math.SQRT2).toFixed(0), '283'],
  ['cabin-devices', '217 Hz', (26 / 0.12).toFixed(0), '217'],
  ['which-way-round', '46 dB more', inDb(1000 / 5).toFixed(0), '46'],
  ['insulation-tests', '38 mA', (two * 60 * 100e-9 * 1000 * 1e3).toFixed(0), '38'],
  ['insulation-tests', '125 mJ', (0.5 * 1e-6 * 500 ** 2 * 1e3).toFixed(0), '125'],
  ['insulation-tests', '460 mJ', (37 * 0.5 * 100e-9 * 500 ** 2).toPrecision(2), '0.46'],
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

test('the gaps of the Paschen minimum are those of 0.567 torr·cm, and the ohms of a bus those of its ends', () => {
  expect(rowsOf('paschen')).toEqual([
    ['760 torr', 'sea level', '7.5 µm'],
    ['226 torr', '30 000 ft', '25 µm'],
    ['87 torr', '50 000 ft', '65 µm'],
    ['33 torr', '70 000 ft', '172 µm'],
  ])
  expect(rowsOf('bus-first-aid')).toEqual([
    ['CAN, RS-485', '60 Ω: two of 120 Ω'],
    ['RS-422', '100 Ω: one only, at the far receiver'],
    ['MIL-STD-1553', 'half its impedance, on the bus, not on a coupled stub'],
    ['ARINC 429', 'no terminator: 12 kΩ and more for each receiver'],
  ])
})

test('the ceilings of the Navy rule stand as the clause prints them', () => {
  expect(textOf('navy-rule')).toContain(
    'AC: 100 nF a line at 60 Hz, 20 nF at 400 Hz. DC user equipment in submarines and aircraft: 75 nF for each kilowatt of load, and 30 nF below 500 W.',
  )
})

test('figures that are compared stand in one unit, and no figure is parted from its unit at the end of a line', () => {
  expect(textOf('vhf-and-gnss')).toContain(
    'sits at 1575.42 MHz. The 13th harmonic of 121.15 to 121.25 MHz and the 12th of 131.3 MHz',
  )
  expect(textOf('l-band')).toContain('between 960 and 1215 MHz')
  for (const cell of note('paschen').table?.rows.flat() ?? []) expect(cell).not.toMatch(/\d (?:torr|ft)/u)
  expect(note('alternator-frequencies').paragraphs.join(' ')).not.toMatch(/\d rpm/u)
})

test('the codes of the note on codes are read as it says', () => {
  expect(textOf('codes')).toContain(
    'So 4n7 is 4.7 nF and 1k5 is 1.5 kΩ. R47 is 0.47 of an ohm, 470 mΩ, and 2µ2 is 2.2 µF.',
  )
  expect(textOf('codes')).toContain('So 103 is 10 nF, and 104 is 100 nF.')
  for (const written of WAYS_TO_WRITE)
    expect(parseQuantity(written, 'capacitance'), written).toEqual({ is: 'value', si: 4.7e-9 })
})
