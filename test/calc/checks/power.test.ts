/** The power check as a screen uses it. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { powerCheck } from '../../../src/calc/checks/power/check.ts'
import { atOnce, evaluateFigures, evaluateNow } from '../../../src/calc/line/evaluate.ts'
import { readFields } from '../../../src/calc/line/fields.ts'
import { inrushPeak } from '../../../src/calc/power/inrush.ts'
import type { Picture } from '../../../src/calc/types.ts'
import { isSafetyId } from '../../../src/reference/safety.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'

const power = (texts: Record<string, string>) => run(powerCheck, texts)
const words = (texts: Record<string, string>) =>
  power(texts)
    .findings.map(({ sentence }) => sentence)
    .join(' ')
const AC = { workingRmsV: '115', supplyHz: '400', capacitanceF: '20n' }
const DC = { workingRmsV: '28', supplyHz: '0', capacitanceF: '10u' }

describe('chassis current', () => {
  it('adds over lines that are no balanced set, and says so', () => {
    const result = power({ ...AC, lineCount: '2' })
    expect(si(result, 'totalCurrentRmsA')).toBeCloseTo(2 * 5.78053e-3, 7)
    expect(si(result, 'residualCurrentRmsA')).toBe(si(result, 'totalCurrentRmsA'))
    expect(words({ ...AC, lineCount: '2' })).toContain('not a balanced three-phase set')
  })

  it('cancels over three phases at the fundamental, and names what a lost phase gives', () => {
    const result = power({ ...AC, lineCount: '3' })
    expect(si(result, 'residualCurrentRmsA')).toBe(0)
    expect(si(result, 'phaseLostCurrentRmsA')).toBeCloseTo(5.78053e-3, 7)
    // 5.78053 mA: what flows is brought up
    expect(words({ ...AC, lineCount: '3' })).toContain('With one phase lost 5.79')
  })

  it('of two sets doubles when a phase is lost', () => {
    expect(si(power({ ...AC, lineCount: '6' }), 'phaseLostCurrentRmsA')).toBeCloseTo(2 * 5.78053e-3, 7)
  })

  it('names the worst of a variable-frequency supply', () => {
    // 2π · 800 · 20 nF · 118 V
    expect(words(AC)).toContain('118 V at 800 Hz: 11.9')
    expect(words({ ...AC, workingRmsV: '118', supplyHz: '800' })).not.toContain('variable-frequency')
  })

  it('is none at DC, where the volts carry no √2', () => {
    const result = power(DC)
    expect(si(result, 'currentRmsA')).toBe(0)
    expect(si(result, 'storedJ')).toBeCloseTo(0.5 * 10e-6 * 28 ** 2, 12)
    expect(result.outputs['reactiveVa']).toBeUndefined()
    expect(result.outputs['phaseLostCurrentRmsA']).toBeUndefined()
  })

  it('refuses half a line', () => {
    expect(issuesOf(powerCheck, { ...AC, lineCount: '2.5' }).join(' ')).toContain('whole number')
  })
})

describe('the charge', () => {
  it('is counted at the crest on AC', () => {
    expect(si(power(AC), 'storedJ')).toBeCloseTo(0.5 * 20e-9 * 2 * 115 ** 2, 12)
  })

  it('bleeds to one percent in 4.605 time constants, and to 34 V', () => {
    const result = power({ ...AC, bleedOhm: '1.3M' })
    expect(si(result, 'bleedSec')).toBeCloseTo(1.3e6 * 20e-9 * Math.log(100), 10)
    expect(si(result, 'bleedTo34Sec')).toBeCloseTo(1.3e6 * 20e-9 * Math.log((Math.SQRT2 * 115) / 34), 10)
  })

  it('is already below 34 V on a 28 V line', () => {
    expect(si(power({ ...DC, bleedOhm: '47k' }), 'bleedTo34Sec')).toBe(0)
  })

  it('stays without a bleed resistor', () => {
    const cell = power(DC).outputs['bleedSec']?.cell
    expect(cell?.is === 'none' && cell.why).toContain('the charge stays')
  })
})

describe('inrush', () => {
  it('needs the wiring', () => {
    const cell = power(DC).outputs['inrushPeakA']?.cell
    expect(cell?.is === 'none' && cell.why).toContain('wiring')
    expect(power({ ...DC, wiringOhm: '0', wiringH: '0' }).outputs['inrushPeakA']?.cell.is).toBe('none')
  })

  it('is V/R without inductance', () => {
    expect(si(power({ ...DC, wiringOhm: '0.7' }), 'inrushPeakA')).toBeCloseTo(40, 9)
    expect(si(power({ ...DC, wiringOhm: '0.7' }), 'inrushPeakV')).toBe(28)
    // each is worked out in its own unit
    const { inrushPeakA, inrushPeakV } = power({ ...DC, wiringOhm: '0.7' }).outputs
    expect(inrushPeakA?.basis.steps.map(({ si, quantity }) => [si, quantity])).toEqual([[40, 'current']])
    expect(inrushPeakV?.basis.steps.map(({ si, quantity }) => [si, quantity])).toEqual([[28, 'voltage']])
  })

  it('is the lossless bound without resistance, at the crest', () => {
    const result = power({ workingRmsV: '115', supplyHz: '400', capacitanceF: '100n', wiringH: '1u' })
    expect(si(result, 'inrushPeakA')).toBeCloseTo(51.4296, 4)
    expect(si(result, 'inrushPeakV')).toBeCloseTo(2 * Math.SQRT2 * 115, 9)
  })

  it('has no step where light damping turns critical and heavy', () => {
    const at = (ohm: number) => inrushPeak({ stepV: 28, farads: 3.3e-6, ohm, henries: 1.9e-6 }).peakA
    const critical = 2 * Math.sqrt(1.9 / 3.3)
    expect(at(critical * (1 - 1e-8)) / at(critical)).toBeCloseTo(1, 6)
    expect(at(critical * (1 + 1e-8)) / at(critical)).toBeCloseTo(1, 6)
  })

  it('throws when nothing bounds it', () => {
    expect(() => inrushPeak({ stepV: 28, farads: 1e-6, ohm: 0, henries: 0 })).toThrow(RangeError)
  })
})

describe('wiring that was not entered', () => {
  it('is no plain yes where its inductance could ring the capacitor over its withstand test', () => {
    // 2·√2·115 V = 325.3 V over 2.8 · 115 V = 322 V
    const open = { ...AC, capacitanceF: '17n', chassisLimitA: '5m' }
    expect(power(open).verdict).toBe('unknown')
    expect(power(open).headline).toContain('needs the wiring inductance')
    expect(power({ ...open, wiringH: '1u' }).verdict).toBe('fails')
    expect(power({ ...open, wiringH: '0' }).verdict).toBe('ok')
    // 0.5 Ω and 10 µH: ζ = 0.25·√(17 nF/10 µH) = 0.0103, 162.6 V · (1 + e^(−0.0324)) = 320.1 V
    expect(power({ ...open, wiringOhm: '0.5', wiringH: '10u' }).verdict).toBe('ok')
  })

  it('counts the air as well, and says nothing where twice the crest harms nothing', () => {
    const bus = { supplyHz: '0', capacitanceF: '30n', navyRule: 'true', loadW: '400' }
    // 2 · 270 V = 540 V, under the 675 V of the test and over the 327 V of air; resistance alone says nothing of the inductance
    expect(power({ ...bus, workingRmsV: '270' }).verdict).toBe('unknown')
    expect(power({ ...bus, workingRmsV: '270', wiringOhm: '0.5' }).verdict).toBe('unknown')
    expect(power({ ...bus, workingRmsV: '270', wiringH: '1u' }).verdict).toBe('marginal')
    // 30 nF through 100 Ω and 10 µH: ζ = 50·√(30 nF/10 µH) = 2.74, nothing rings
    expect(power({ ...bus, workingRmsV: '270', wiringOhm: '100' }).verdict).toBe('ok')
    // 2 · 28 V = 56 V under 70 V
    expect(power({ ...bus, workingRmsV: '28' }).verdict).toBe('ok')
  })
})

describe('the ladder', () => {
  const ladderOf = (pictures: readonly Picture[]) => pictures.find((picture) => picture.is === 'ladder')

  it('names an inrush peak above the withstand test', () => {
    // Lossless on AC: 2·√2·V = 2.83·V against 2.8·V.
    const ladder = ladderOf(power({ ...AC, wiringH: '1u' }).pictures)
    expect(ladder?.rungs.find(({ id }) => id === 'power-inrush')?.exceeds).toBe('power-capacitor-withstand')
    expect(ladder?.faults).toHaveLength(1)
  })

  it('out of order is a failure at the head, in words and in figures', () => {
    const texts = { ...AC, wiringH: '1u', navyRule: 'true' }
    const result = power(texts)
    expect(result.verdict).toBe('fails')
    expect(result.headline).toContain('is above the 322')
    const figures = atOnce(evaluateFigures(powerCheck, readFields(powerCheck, texts)))
    expect('verdict' in figures && figures.verdict).toBe('fails')
    expect('rungs' in figures && figures.rungs.map(({ id }) => id)).toContain('power-inrush')
  })

  it('is in order on DC, where 2·V stays under 2.5·V', () => {
    const ladder = ladderOf(power({ ...DC, wiringH: '1u' }).pictures)
    expect(ladder?.rungs.map(({ id }) => id)).toEqual([
      'power-working-peak',
      'power-inrush',
      'power-capacitor-withstand',
    ])
    expect(ladder?.faults).toEqual([])
  })
})

describe('a capacitor from line to line', () => {
  it('counts between line and return once, between phases √3 times the volts, and never into the chassis', () => {
    const one = power({ ...AC, crossF: '100n' })
    expect(si(one, 'crossCurrentRmsA')).toBeCloseTo(2 * Math.PI * 400 * 100e-9 * 115, 9)
    expect(si(one, 'currentRmsA')).toBe(si(power(AC), 'currentRmsA'))
    expect(si(one, 'crossWithstandV')).toBeCloseTo(2.8 * 115, 9)
    const three = power({ ...AC, crossF: '100n', lineCount: '3' })
    expect(si(three, 'crossCurrentRmsA')).toBeCloseTo(2 * Math.PI * 400 * 100e-9 * 115 * Math.sqrt(3), 9)
    // ½ · 100 nF · (√2 · √3 · 115 V)²
    expect(si(three, 'crossStoredJ')).toBeCloseTo(0.5 * 100e-9 * 6 * 115 ** 2, 12)
  })

  it('is held against thin air by its own volts, √3 times those to chassis between phases', () => {
    const limit = { ...AC, chassisLimitA: '10m', wiringOhm: '0.5', wiringH: '10u', lineCount: '3' }
    expect(power(limit).verdict).toBe('ok')
    // lightly damped: 281.7 V · (1 + e^(−π·ζ/√(1 − ζ²))), ζ = 0.25·√(100 nF/10 µH) = 0.025: 542 V, over the 327 V of air
    const struck = power({ ...limit, crossF: '100n' })
    expect(struck.verdict).toBe('marginal')
    const plain = struck.headline.replaceAll(/[\u00A0\u202F]/g, ' ')
    expect(plain).toContain('An inrush peak of 543 V from line to line is above the 327 V')
    // √2·√3·122 V = 298.8 V, within a tenth of 327 V
    expect(power({ ...limit, workingRmsV: '122', crossF: '100n' }).headline).toContain('A working peak of 299')
  })

  it('is no plain yes where the number of lines that decides its volts was left open', () => {
    // as above: 281.7 V · (1 + e^(−0.0786)) = 542 V between two of three phases, over the 327 V of air
    const open = { ...AC, chassisLimitA: '10m', wiringOhm: '0.5', wiringH: '10u', crossF: '100n' }
    const unsaid = power(open)
    expect(unsaid.verdict).toBe('unknown')
    expect(unsaid.headline).toContain('needs the number of lines')
    expect(power({ ...open, lineCount: '1' }).verdict).toBe('ok')
    // without it, on direct current, and at volts that no phase brings near, nothing turns on the count
    expect(power({ ...open, crossF: '' }).verdict).toBe('ok')
    expect(power({ ...open, workingRmsV: '26' }).verdict).toBe('ok')
    const bus = {
      workingRmsV: '120',
      supplyHz: '0',
      capacitanceF: '20n',
      wiringOhm: '0.5',
      wiringH: '10u',
      crossF: '1n',
    }
    expect(power({ ...bus, navyRule: 'true', loadW: '400' }).verdict).toBe('ok')
  })

  it('stands √3 times the volts to chassis between two phases of three as well', () => {
    const two = power({ ...AC, crossF: '100n', lineCount: '2' })
    expect(si(two, 'crossWithstandV')).toBeCloseTo(2.8 * 115 * Math.sqrt(3), 9)
    expect(si(power({ ...DC, crossF: '1u', lineCount: '2' }), 'crossWithstandV')).toBeCloseTo(2.5 * 28, 9)
  })

  it('says what it draws and how long it holds, beside the figures of one to chassis', () => {
    const told = words({ ...DC, workingRmsV: '270', crossF: '100u', wiringOhm: '1', bleedOhm: '1M' })
    const plain = told.replaceAll(/[\u00A0\u202F]/g, ' ')
    // 270 V / 1 Ω, and 1 MΩ · 100 µF · ln(270/34) = 207.2 s
    expect(plain).toContain('draws 270 A at switch-on')
    expect(plain).toContain('takes 208 s to bring it to 34 V')
    expect(words({ ...DC, crossF: '100u' })).toContain('its charge stays')
  })

  it('leaves the rules for line to ground to the others', () => {
    expect(power({ ...AC, wiringH: '0', crossF: '1u', lineCount: '1', navyRule: 'true' }).verdict).toBe('ok')
    expect(words({ ...AC, crossF: '1u' })).toContain('does nothing for common mode')
    expect(power(AC).outputs['crossCurrentRmsA']).toBeUndefined()
  })
})

describe('a limit on the chassis current', () => {
  // I / (2π·f·V): 5 mA / (2π · 400 Hz · 115 V) = 17.3 nF
  // without inductance in the wiring nothing rings
  const limited = { ...AC, chassisLimitA: '5m', wiringH: '0' }

  it('bounds the capacitance of each line on AC', () => {
    const result = power({ ...limited, capacitanceF: '17n' })
    expect(result.verdict).toBe('ok')
    expect(result.bounds[0]?.markedF).toBeCloseTo(5e-3 / (2 * Math.PI * 400 * 115), 15)
    expect(power({ ...limited, capacitanceF: '18n' }).verdict).toBe('fails')
  })

  it('bounds nothing at DC, where none flows', () => {
    expect(power({ ...DC, chassisLimitA: '5m' }).bounds).toEqual([])
    expect(power({ ...DC, chassisLimitA: '5m' }).verdict).toBe('unknown')
  })
})

describe('thin air', () => {
  it('230 V rms lies on the Paschen minimum', () => {
    expect(words({ ...AC, workingRmsV: '230' })).toContain('close to the 327')
  })

  it('270 V DC lies below it, its withstand test does not', () => {
    const said = words({ workingRmsV: '270', supplyHz: '0', capacitanceF: '100n' })
    expect(said).not.toContain('working peak')
    expect(said).toContain('withstand test of 675')
  })

  it('28 V is out of its reach', () => {
    expect(words(DC)).not.toContain('327')
    expect(power(DC).cautions).not.toContain('low-pressure')
  })
})

describe('a voltage that kills', () => {
  it('is one from 60 V of direct current and from 30 V rms of alternating current', () => {
    const isLethal = (workingRmsV: string, supplyHz: string) =>
      power({ ...AC, workingRmsV, supplyHz }).cautions.includes('lethal-voltage')
    expect([isLethal('36', '400'), isLethal('30', '60'), isLethal('60', '0')]).toEqual([true, true, true])
    expect([isLethal('26', '400'), isLethal('36', '0')]).toEqual([false, false])
  })
})

describe('the Navy rule', () => {
  it('bounds nothing unless it is chosen, and without any limit the answer is not known', () => {
    expect(power(AC).verdict).toBe('unknown')
    expect(words(AC)).toContain('No limit for the capacitance was given')
    expect(power(AC).bounds).toEqual([])
  })

  it('allows 20 nF at 400 Hz and not more', () => {
    expect(power({ ...AC, wiringH: '0', navyRule: 'true' }).verdict).toBe('ok')
    const over = power({ ...AC, capacitanceF: '22n', navyRule: 'true' })
    expect(over.verdict).toBe('fails')
    expect(over.bounds[0]?.markedF).toBe(20e-9)
    expect(over.bounds[0]?.why).toContain('Navy only')
  })

  it('asks for the load on DC', () => {
    const result = power({ ...DC, navyRule: 'true' })
    expect(result.verdict).toBe('unknown')
    expect(words({ ...DC, navyRule: 'true' })).toContain('Enter the connected load')
  })

  it('is a ceiling of 30 nF below half a kilowatt', () => {
    const small = { workingRmsV: '28', supplyHz: '0', navyRule: 'true', loadW: '70' }
    expect(power({ ...small, capacitanceF: '29n' }).verdict).toBe('ok')
    expect(power({ ...small, capacitanceF: '31n' }).verdict).toBe('fails')
  })

  it('says that no printed figure fits another frequency', () => {
    expect(words({ ...AC, supplyHz: '120', navyRule: 'true' })).toContain('none is for 120')
  })
})

describe('any finite input', () => {
  const number = (min: number, max: number) => fc.option(fc.double({ min, max, noNaN: true }), { nil: undefined })

  it('gives no NaN and no infinity (seed 40028)', () => {
    fc.assert(
      fc.property(
        fc.record({
          workingRmsV: number(0.001, 1e5),
          supplyHz: number(0, 1e6),
          capacitanceF: number(0, 1),
          lineCount: fc.option(fc.integer({ min: 1, max: 1000 }), { nil: undefined }),
          wiringOhm: number(0, 1e6),
          wiringH: number(0, 10),
          bleedOhm: number(1, 1e12),
          loadW: number(0, 1e7),
          navyRule: fc.boolean(),
        }),
        (given) => {
          const texts = Object.fromEntries(Object.entries(given).map(([k, v]) => [k, v === undefined ? '' : `${v}`]))
          const result = evaluateNow(powerCheck, readFields(powerCheck, texts))
          if (!result.ok) throw new Error(JSON.stringify(result.issues))
          for (const [key, { cell }] of Object.entries(result.outputs))
            if (cell.is === 'si') expect(Number.isFinite(cell.si), `${key} = ${cell.si}`).toBe(true)
          for (const rung of result.rungs) expect(Number.isFinite(rung.maxV), rung.id).toBe(true)
          for (const id of result.cautions) expect(isSafetyId(id), id).toBe(true)
        },
      ),
      { seed: 40028, numRuns: 400 },
    )
  })
})

it('an inrush that thin air may not stand is told by its peak', () => {
  // a ring of 10 µH, 0.1 Ω and 100 nF on 250 V DC: ζ = R/2·√(C/L) = 0.005, V·(1 + exp(−πζ/√(1 − ζ²))) = 496.1 V
  const ring = {
    workingRmsV: '250',
    supplyHz: '0',
    capacitanceF: '0.1u',
    ratedV: '2k',
    wiringH: '10u',
    wiringOhm: '0.1',
  }
  const { headline } = run(powerCheck, { ...ring, loadW: '10k', navyRule: 'true', bleedOhm: '100k' })
  expect(headline.replaceAll('\u00a0', ' ')).toBe(
    '100 nF: with care. An inrush peak of 497 V is above the 327 V at which thin air can break down.',
  )
})
