/** Tones of machines and rectifiers, by the formulas and figures of the trade. */
import { describe, expect, test } from 'vitest'
import { toneCheck } from '../../../src/calc/checks/tone/check.ts'
import {
  electricalHz,
  explanationsOf,
  type Known,
  rectifierHz,
  sparksPerSec,
} from '../../../src/calc/tone/explanations.ts'
import { run, si } from '../../support/run-check.ts'

const NOTHING: Omit<Known, 'toneHz'> = {
  offFrac: 0.02,
  rpm: undefined,
  polePairs: undefined,
  driveRatio: undefined,
  pulses: undefined,
  busHz: [400],
  cylinders: undefined,
  bars: undefined,
}
const first = (known: Partial<Known> & { toneHz: number }) => explanationsOf({ ...NOTHING, ...known })[0]
const ids = (known: Partial<Known> & { toneHz: number }) => explanationsOf({ ...NOTHING, ...known }).map(({ id }) => id)
const plain = (text: string): string => text.replaceAll('\u00a0', ' ')

describe('figures of the trade', () => {
  test.each([
    [4, 80],
    [6, 120],
  ])('%i cylinders at 2400 rpm spark %i times a second', (cylinders, sparks) => {
    expect(sparksPerSec(2400, cylinders)).toBe(sparks)
    expect(first({ toneHz: sparks, rpm: 2400, cylinders })?.id).toBe('ignition')
  })

  test.each([
    [6, 2400],
    [12, 4800],
    [18, 7200],
  ])('a %i-pulse rectifier on 400 Hz whistles at %i Hz', (pulses, hz) => {
    expect(rectifierHz(400, pulses)).toBe(hz)
    expect(first({ toneHz: hz, pulses })).toMatchObject({ id: 'rectifier', order: pulses })
    expect(first({ toneHz: hz })).toMatchObject({ id: 'rectifier', order: pulses })
  })

  test('twelve pulses on a bus of 360 to 800 Hz: 4.32 to 9.6 kHz, and not beside', () => {
    for (const hz of [4320, 7000, 9600])
      expect(first({ toneHz: hz, pulses: 12, busHz: [360, 800] })?.id).toBe('rectifier')
    for (const hz of [4200, 9900]) expect(ids({ toneHz: hz, pulses: 12, busHz: [360, 800] })).not.toContain('rectifier')
  })

  test('f = P·N/120, and ripple is the 36th order of six pole pairs, the 72nd with six phases', () => {
    expect(electricalHz({ rpm: 3000, driveRatio: 1, polePairs: 6 })).toBe((12 * 3000) / 120)
    const machine = { rpm: 3000, driveRatio: 1, polePairs: 6 }
    expect(first({ toneHz: 50 * 36, ...machine })).toMatchObject({ id: 'alternator-ripple', order: 36 })
    expect(first({ toneHz: 50 * 72, ...machine })).toMatchObject({ id: 'alternator-six-phase', order: 72 })
  })

  test('a rectifier that falls to 400 or 800 Hz has an open diode, or it is the bus itself', () => {
    for (const hz of [400, 800])
      expect(ids({ toneHz: hz, pulses: 12 })).toEqual(expect.arrayContaining(['bus-hum', 'rectifier-open-diode']))
    expect(first({ toneHz: 400 })?.id).toBe('bus-hum')
  })

  test('a phone of that sort buzzes at 217 Hz', () => {
    expect(ids({ toneHz: 217 })).toContain('phone')
  })
})

describe('what is not known is taken only where it comes out whole, and ranks below what is', () => {
  test('pole pairs', () => {
    const found = first({ toneHz: 2520, rpm: 2400, driveRatio: 1.75, offFrac: 0.005 })
    // 40 · 1.75 · 6 = 420 Hz for one pole pair: six of them
    expect(found).toMatchObject({ id: 'alternator-ripple', missing: { what: 'polePairs', value: 6 } })
  })

  test('nothing is made up from rpm without a drive ratio', () => {
    expect(ids({ toneHz: 2520, rpm: 2400 })).not.toContain('alternator-ripple')
  })
})

describe('the answer', () => {
  test('ranks, names the test between the first two, and claims nothing is proven', () => {
    const result = run(toneCheck, { toneHz: '2400', rpm: '2400', driveRatio: '1.6667', polePairs: '6', pulses: '6' })
    expect(result.verdict).toBe('unknown')
    expect(plain(result.headline)).toBe(
      'Not known until it is tested: 2.4 kHz is best explained by ripple of a rectifier on the AC bus, 2.4 kHz; next ripple of the alternator.',
    )
    expect(plain(result.findings[0]?.sentence ?? '')).toBe(
      'Change the engine speed by a tenth: ripple of the alternator moves by a tenth with it, ripple of a rectifier on the AC bus stays.',
    )
    expect(si(result, 'toneOrder')).toBe(60)
  })

  test('asks for the tone, and for the engine speed where nothing is known of the engine', () => {
    expect(run(toneCheck, {}).headline).toBe('Not known: needs the tone.')
    expect(run(toneCheck, { toneHz: '1234' }).needs?.key).toBe('rpm')
  })

  test('a range without a formula never comes before a formula that holds', () => {
    for (const [hz, rpm] of [
      [2400, '2400'],
      [1200, '2400'],
      [7200, '1800'],
    ] as const) {
      const result = run(toneCheck, { toneHz: String(hz), rpm })
      const best = result.outputs['best']?.cell
      expect(best?.is === 'word' ? best.word : '').not.toMatch(/strobe|dimmer/u)
    }
  })
})

test('the table names each explanation with its formula and its frequency', () => {
  const table = run(toneCheck, { toneHz: '2400', busHz: '400' }).pictures.find((one) => one.is === 'table')
  if (table?.is !== 'table') throw new Error('no table')
  const cells = table.rows.map((row) => row.cells)
  // a rectifier of six pulses on 400 Hz: 6 × 400 Hz
  const [name, formula, hz] = cells.find(([first]) => first?.is === 'word' && /rectif/iu.test(first.word)) ?? []
  expect(hz).toMatchObject({ is: 'si', si: 2400 })
  for (const cell of [name, formula]) expect(cell?.is === 'word' ? cell.word : '').toMatch(/\w{2}/u)
})

test.each([
  ['mains-50', 50],
  ['mains-60', 60],
])('%s hums at its first three orders', (id, hz) => {
  for (const order of [1, 2, 3])
    expect(explanationsOf({ ...NOTHING, offFrac: 1e-4, toneHz: hz * order })).toContainEqual(
      expect.objectContaining({ id, order, hz: hz * order }),
    )
})
