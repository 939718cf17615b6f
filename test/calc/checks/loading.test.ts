/** The loading check as a screen uses it: texts in, figures, verdict and reasons out. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { loadingCheck } from '../../../src/calc/checks/loading/check.ts'
import { evaluateNow } from '../../../src/calc/line/evaluate.ts'
import { readFields } from '../../../src/calc/line/fields.ts'
import { loadingCeiling } from '../../../src/calc/loading/ceiling.ts'
import { LINE_KINDS, lineKindById } from '../../../src/reference/line-kinds.ts'
import { isSafetyId } from '../../../src/reference/safety.ts'
import { run, si } from '../../support/run-check.ts'

const load = (texts: Record<string, string>) => run(loadingCheck, texts)
const words = (texts: Record<string, string>) =>
  load(texts)
    .findings.map(({ sentence }) => sentence)
    .join(' ')
const works = (id: string): number => {
  const kind = lineKindById(id)
  const farads = kind && loadingCeiling({ kind }).works.farads
  if (farads === undefined) throw new Error(`${id} has no ceiling`)
  return farads
}

/** Typed: left empty, an ok would have to hold beside what is usual on such a line as well. */
const NOTHING_ELSE = { suppressorF: '0', existingF: '0' }

describe('a pair', () => {
  it('sees half of each leg, all of a line-to-line capacitor, and what is already there', () => {
    const result = load({
      lineKind: 'arinc-429-high',
      capacitanceF: '1.3n',
      suppressorF: '220p',
      crossF: '330p',
      existingF: '170p',
    })
    expect(si(result, 'differentialF')).toBeCloseTo(330e-12 + (1.3e-9 + 220e-12) / 2 + 170e-12, 16)
  })

  it('leaves each leg twice of what the wires may still get, less the suppressor', () => {
    const result = load({ lineKind: 'mil-std-1553-stub', suppressorF: '21p', crossF: '13p', existingF: '37p' })
    expect(si(result, 'mostCapacitanceF')).toBeCloseTo(2 * (works('mil-std-1553-stub') - 13e-12 - 37e-12) - 21e-12, 18)
  })

  it('is matched-leg business, a single line is not', () => {
    expect(load({ lineKind: 'can', bitRateHz: '500k' }).cautions).toContain('matched-legs')
    expect(load({ lineKind: 'rs-232', bitRateHz: '19.2k' }).cautions).not.toContain('matched-legs')
  })
})

describe('a single line', () => {
  it('has no differential capacitance, and counts all of it', () => {
    const result = load({ lineKind: 'microphone', capacitanceF: '4.7n', suppressorF: '330p', existingF: '1.1n' })
    expect(result.outputs['differentialF']).toBeUndefined()
    expect(si(result, 'mostCapacitanceF')).toBeCloseTo(works('microphone') - 330e-12 - 1.1e-9, 15)
  })

  it('says that a line-to-line capacitor was not counted', () => {
    expect(load({ lineKind: 'audio', capacitanceF: '470p', crossF: '100p' }).verdict).toBe('unknown')
    expect(words({ lineKind: 'audio', capacitanceF: '470p', crossF: '100p' })).toContain('was not counted')
  })
})

describe('ARINC 429', () => {
  it('counts the edge from the nominal driver and says that the slowest legal one leaves no room', () => {
    const texts = { lineKind: 'arinc-429-high', capacitanceF: '9.4n' }
    expect(si(load(texts), 'edgeSec')).toBeCloseTo(Math.hypot(1.5e-6, Math.log(9) * 75 * 4.7e-9), 15)
    expect(words(texts)).toContain('leaves no room')
  })

  it('takes a stated driver edge instead', () => {
    const texts = { lineKind: 'arinc-429-high', capacitanceF: '9.4n', driverEdgeSec: '1.7u' }
    expect(si(load(texts), 'edgeSec')).toBeCloseTo(Math.hypot(1.7e-6, Math.log(9) * 75 * 4.7e-9), 15)
    expect(words(texts)).not.toContain('leaves no room')
  })

  it('has no room left with the slowest legal driver', () => {
    const result = load({ lineKind: 'arinc-429-low', capacitanceF: '1n', driverEdgeSec: '15u' })
    expect(result.verdict).toBe('fails')
    expect(si(result, 'mostCapacitanceF')).toBe(0)
  })

  it('is marginal above the 50 pF of a receiver, and names the document', () => {
    const result = load({ lineKind: 'arinc-429-high', capacitanceF: '470p' })
    expect(result.verdict).toBe('marginal')
    expect(words({ lineKind: 'arinc-429-high', capacitanceF: '470p' })).toContain('ARINC 429 receiver')
    expect(load({ lineKind: 'arinc-429-high', capacitanceF: '47p', ...NOTHING_ELSE }).verdict).toBe('ok')
  })
})

describe('an output without meaning for the kind is absent', () => {
  for (const id of [
    'arinc-429-high',
    'mil-std-1553-stub',
    'can',
    'ethernet-100base-tx',
    'ethernet-1000base-t',
    'rs-232',
  ]) {
    it(`${id} has no eye`, () => {
      const result = load({ lineKind: id, capacitanceF: '10p', bitRateHz: '250k' })
      expect(result.outputs['eyeFrac']).toBeUndefined()
      expect(result.outputs['jitterFrac']).toBeUndefined()
    })
  }

  it('only kinds with a mask have a return loss', () => {
    expect(load({ lineKind: 'rs-422', capacitanceF: '33p', bitRateHz: '9M' }).outputs['returnLossDb']).toBeUndefined()
    expect(si(load({ lineKind: 'ethernet-10base-t', capacitanceF: '33p' }), 'returnLossDb')).toBeGreaterThan(15)
  })

  it('analog lines have no edge', () => {
    expect(load({ lineKind: 'thermocouple', capacitanceF: '33n' }).outputs['edgeSec']).toBeUndefined()
  })
})

describe('what is not known', () => {
  it('a missing bit rate is asked for', () => {
    const result = load({ lineKind: 'rs-485', capacitanceF: '47p' })
    expect(result.verdict).toBe('unknown')
    expect(result.headline).toContain('Not known: needs the bit rate')
    expect(result.outputs['mostCapacitanceF']?.cell.is).toBe('none')
  })

  it('the pull-up of I²C is asked for', () => {
    expect(load({ lineKind: 'i2c-fast', capacitanceF: '47p' }).headline).toContain('pull-up')
    expect(si(load({ lineKind: 'i2c-fast', signalOhm: '2k2' }), 'mostCapacitanceF')).toBeCloseTo(161e-12, 12)
  })

  it('a power line has no ceiling until a rule book is chosen', () => {
    const result = load({ lineKind: 'power-28-vdc', capacitanceF: '10n' })
    expect(result.verdict).toBe('unknown')
    expect(result.bounds).toEqual([])
  })

  it('without a capacitance only the ceiling is given', () => {
    const result = load({ lineKind: 'microphone' })
    expect(result.headline).toMatch(/^Up to 18\.5.nF\.$/u)
    expect(result.answers).toBe('number')
    expect(Object.keys(result.outputs)).toEqual(['mostCapacitanceF'])
  })
})

describe('what opens it', () => {
  it('is the rate at which this capacitance would work', () => {
    const texts = { lineKind: 'rs-485', capacitanceF: '1n', bitRateHz: '10M', ...NOTHING_ELSE }
    // 0.3/(ln 9 · 60 Ω · 0.5 nF) = 4.55 Mb/s
    expect(words(texts)).toMatch(/At 4\.55.Mbit\/s or slower/u)
    expect(load({ ...texts, bitRateHz: '4.55M' }).verdict).toBe('ok')
    expect(load({ ...texts, bitRateHz: '4.6M' }).verdict).toBe('fails')
  })

  it('is not a rate where the kind has only one', () => {
    expect(words({ lineKind: 'usb-high-speed', capacitanceF: '47p' })).not.toContain('or slower')
  })
})

describe('RS-232', () => {
  it('is permitted 2500 pF in all, and works to more at a slow rate', () => {
    const slow = { lineKind: 'rs-232', bitRateHz: '9600' }
    expect(load({ ...slow, capacitanceF: '1n', existingF: '1.4n' }).verdict).toBe('ok')
    const over = load({ ...slow, capacitanceF: '1.2n', existingF: '1.4n' })
    expect(over.verdict).toBe('marginal')
    expect(over.headline).toMatch(/with care\. 1\.1 times the 1\.1.nF left of the 2\.5.nF RS-232 allows in all/u)
  })

  it('crosses its band within 4 % of a bit, never within more than 1 ms', () => {
    expect(si(load({ lineKind: 'rs-232', bitRateHz: '20k' }), 'mostCapacitanceF')).toBeCloseTo((10e-3 * 2e-6) / 6, 15)
    expect(si(load({ lineKind: 'rs-232', bitRateHz: '10' }), 'mostCapacitanceF')).toBeCloseTo((10e-3 * 1e-3) / 6, 12)
  })

  it('below 333 pF leaves the slew to the driver', () => {
    expect(words({ lineKind: 'rs-232', bitRateHz: '20k', capacitanceF: '310p' })).toContain('30 V/µs')
    expect(words({ lineKind: 'rs-232', bitRateHz: '20k', capacitanceF: '350p' })).not.toContain('30 V/µs')
  })
})

describe('an inductor on a signal line', () => {
  it('that rings is reported and never ok', () => {
    const texts = { lineKind: 'arinc-429-high', capacitanceF: '47p', inductanceH: '100u' }
    expect(load(texts).verdict).toBe('marginal')
    expect(words(texts)).toContain('rings')
    expect(si(load(texts), 'damping')).toBeLessThan(0.7)
  })

  it('well damped on a matched line passes, and the one-pole eye is not claimed', () => {
    const result = load({ lineKind: 'rs-422', bitRateHz: '1M', capacitanceF: '220p', inductanceH: '1u' })
    expect(result.verdict).toBe('ok')
    expect(result.outputs['eyeFrac']?.cell.is).toBe('none')
  })

  it('on a line whose resistance is not known leaves the verdict open', () => {
    expect(load({ lineKind: 'mil-std-1553-stub', capacitanceF: '10p', inductanceH: '10u' }).verdict).toBe('unknown')
  })

  it('can break a return-loss mask that the capacitance alone meets', () => {
    const texts = { lineKind: 'ethernet-100base-tx', capacitanceF: '2p' }
    expect(load(texts).verdict).toBe('ok')
    expect(load({ ...texts, inductanceH: '220n' }).verdict).toBe('fails')
  })
})

describe('lines nobody fits a trial part in', () => {
  for (const { id, name, barredWhy } of LINE_KINDS.filter(({ family }) => family === 'barred')) {
    it(`${id} gives the reason and no figure`, () => {
      const result = load({ lineKind: id, capacitanceF: '100p' })
      expect(result.verdict).toBe('fails')
      expect(result.headline).toBe(`${name}: no. ${barredWhy}`)
      expect(result.bounds).toEqual([])
      expect(result.cautions).toContain('no-trial')
    })
  }
})

describe('every kind with a ceiling', () => {
  for (const kind of LINE_KINDS) {
    const rate = kind.bitRateHz === undefined ? 3.7e5 : kind.bitRateHz
    const ohm = kind.signalOhm === undefined ? 1300 : undefined
    const most = loadingCeiling({ kind, bitRateHz: rate, signalOhm: ohm }).works.farads
    if (most === undefined) continue
    it(`${kind.id} works at its most and fails 2 % above it`, () => {
      const texts = { lineKind: kind.id, bitRateHz: `${rate}`, ...(ohm === undefined ? {} : { signalOhm: `${ohm}` }) }
      const legF = si(load(texts), 'mostCapacitanceF') ?? Number.NaN
      expect(load({ ...texts, capacitanceF: `${legF}` }).verdict).not.toBe('fails')
      expect(load({ ...texts, capacitanceF: `${1.02 * legF}` }).verdict).toBe('fails')
    })
  }
})

describe('any finite input', () => {
  const farads = fc.double({ min: 0, max: 1, noNaN: true })
  const some = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined })

  it('gives no NaN and no infinity (seed 20270)', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...LINE_KINDS.map(({ id }) => id)),
        farads,
        some(farads),
        some(fc.double({ min: 0, max: 100, noNaN: true })),
        some(fc.double({ min: 1, max: 1e11, noNaN: true })),
        some(fc.double({ min: 1e-3, max: 1e9, noNaN: true })),
        (lineKind, capacitanceF, crossF, inductanceH, bitRateHz, signalOhm) => {
          const given = { lineKind, capacitanceF, crossF, inductanceH, bitRateHz, signalOhm }
          const texts = Object.fromEntries(Object.entries(given).map(([k, v]) => [k, v === undefined ? '' : `${v}`]))
          const result = evaluateNow(loadingCheck, readFields(loadingCheck, texts))
          if (!result.ok) throw new Error(JSON.stringify(result.issues))
          for (const [key, { cell, basis }] of Object.entries(result.outputs)) {
            if (cell.is === 'si') expect(Number.isFinite(cell.si), `${key} = ${cell.si}`).toBe(true)
            for (const { si: step } of basis.steps) expect(Number.isFinite(step), `${key} step ${step}`).toBe(true)
          }
          for (const { id, markedF } of result.bounds) expect(Number.isFinite(markedF), id).toBe(true)
          for (const id of result.cautions) expect(isSafetyId(id), id).toBe(true)
        },
      ),
      { seed: 20270, numRuns: 400 },
    )
  })
})

it('draws as far as the signal stands', () => {
  const bus = run(loadingCheck, { lineKind: 'arinc-429-high' })
  const strip = bus.pictures.find((picture) => picture.is === 'strip')
  expect(strip?.is === 'strip' ? strip.rows[0] : undefined).toMatchObject({
    state: 'half',
    mostF: si(bus, 'mostCapacitanceF'),
    note: 'what the signal stands',
  })
})

it('a sharp resonance between what is on the line and the filter is heard of at every value, not by the grid it falls on', () => {
  const can = { lineKind: 'can', bitRateHz: '125000', topology: 'LC', suppressorF: '0', existingF: '2n' }
  for (const pF of [44, 45, 46, 47, 48, 49]) {
    const result = run(loadingCheck, { ...can, capacitanceF: `${pF}p`, inductanceH: '330n', toleranceFrac: '20 %' })
    expect(result.verdict, String(pF)).toBe('marginal')
    // 2 nF before the coil against half of the least capacitor behind it, between the wires: C0/C1
    const mostDb = 20 * Math.log10(2e-9 / ((0.8 * pF * 1e-12) / 2))
    const said = Number(/lifts the signal by ([\d.]+)/.exec(result.headline)?.[1])
    expect(said, String(pF)).toBeGreaterThan(mostDb - 0.2)
    expect(said, String(pF)).toBeLessThan(mostDb + 0.2)
  }
})

it('a line-to-line capacitor loads the signal at the largest its tolerance lets it be', () => {
  const line = { lineKind: 'rs-422', bitRateHz: '1M', existingF: '0', suppressorF: '0', capacitanceF: '10p' }
  const at = (texts: Record<string, string>) => run(loadingCheck, { ...line, ...texts }).verdict
  // 2.5 nF · 1.2 = 3 nF is what 3 nF as marked is
  expect(at({ crossF: '2.5n' })).toBe('ok')
  expect(at({ crossF: '2.5n', toleranceFrac: '20 %' })).toBe('fails')
  expect(at({ crossF: '3n' })).toBe('fails')
})
