/** The other tables: sources, cautions, limit lines, bands, signatures, constructions, preferred values. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { CONSTRUCTIONS, DIELECTRICS, ESR_RANGES } from '../../src/reference/constructions.ts'
import { CE102_RELAXATION, LIMIT_LINES, limitDbAt } from '../../src/reference/limit-lines.ts'
import { NOISE_SIGNATURES } from '../../src/reference/noise-signatures.ts'
import { E6, E12, TOLERANCE_LETTERS } from '../../src/reference/preferred-values.ts'
import { bandsAt, RADIO_BANDS } from '../../src/reference/radio-bands.ts'
import { isSafetyId, NO_TRIAL_LIST, SAFETY_TEXTS } from '../../src/reference/safety.ts'
import { SOURCES } from '../../src/reference/sources.ts'

const lineOf = (id: string) => {
  const line = LIMIT_LINES.find((l) => l.id === id)
  if (line === undefined) throw new Error(`no limit line ${id}`)
  return line
}

describe('the sources', () => {
  it('list every reference of both tables', () => {
    for (let i = 1; i <= 48; i++) expect(Object.keys(SOURCES)).toContain(`S${i}`)
    for (let i = 1; i <= 46; i++) expect(Object.keys(SOURCES)).toContain(`R${i}`)
  })

  it('say what was seen of each', () => {
    for (const [id, { title, seen }] of Object.entries(SOURCES)) {
      expect(title.length, id).toBeGreaterThan(5)
      expect(seen.length, id).toBeGreaterThan(3)
    }
  })
})

describe('the reference folder', () => {
  const folder = join(import.meta.dirname, '../../src/reference')
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'))

  it('holds no address of a page and no mark of a trade name', () => {
    expect(files.length).toBeGreaterThan(10)
    for (const name of files) {
      const text = readFileSync(join(folder, name), 'utf8')
      expect(text, name).not.toMatch(/https?:|www\.|\.(?:com|net|org)\b|[®™©]|\b(?:Inc|Ltd|GmbH|Corp)\b/)
      // Letters, then at least three digits and a letter: how part numbers look. Standards and the masks' names are not.
      const partLike = text.match(/\b(?:SN|MAX|TCAN|LTC|ADM|DEI|HI-|BD)\d{3,}\w*/g)
      expect(partLike, name).toBeNull()
    }
  })
})

describe('the cautions', () => {
  it('name every circuit that never gets a trial part', () => {
    for (const word of [
      ...['pyrotechnic', 'fire-bottle', 'ejection', 'fuel', 'engine control', 'governor', 'flight control'],
      ...['stall', 'shaker', 'magneto', 'exciter', 'strobe', 'antenna coax', '115 V AC', '270 V DC'],
      ...['fire detection', 'intrinsically safe'],
    ])
      expect(NO_TRIAL_LIST.join('; '), word).toContain(word)
    expect(SAFETY_TEXTS['no-trial'].text).toContain(NO_TRIAL_LIST.join('; '))
  })

  const contents: readonly (readonly [keyof typeof SAFETY_TEXTS, readonly string[]])[] = [
    ['power-off', ['power off', 'tagged', 'resistor', 'measured dead', 'Never mate']],
    ['breakers', ['ground', 'manual', 'collar', 'Never pull one in flight', 'not closed again']],
    ['trial-not-for-flight', ['test tool', 'comes off', 'recorded']],
    ['permanent-approved', ['design change', 'approved data', 'no box is opened']],
    ['lightning-hirf-fuel', ['lightning', 'HIRF', 'fuel']],
    ['hipot', ['Isolate', 'high-pot', 'unless the procedure says otherwise']],
    ['after-strike', ['every suppressor', 'short', 'open']],
    ['chassis-capacitance', ['isolated return', 'ground-fault']],
    ['ok-bounds', ['inside the bounds', 'not entered']],
    ['screening', ['not approved data', 'maintenance manual', 'local codes', 'certifying staff']],
    ['stored-charge', ['charge', 'resistor']],
    ['trial-authority', ['certifying staff', 'comes off again']],
  ]
  for (const [id, words] of contents) {
    it(`“${SAFETY_TEXTS[id].title}” says all it must`, () => {
      for (const word of words) expect(SAFETY_TEXTS[id].text).toContain(word)
    })
  }

  it('know their own ids', () => {
    expect(isSafetyId('hipot')).toBe(true)
    expect(isSafetyId('no-such-caution')).toBe(false)
  })
})

describe('the limit lines', () => {
  it('give the base-curve samples of CE102', () => {
    const samples: readonly (readonly [number, number])[] = [
      [10e3, 94],
      [20e3, 87.9758],
      [50e3, 80.0121],
      [100e3, 73.9879],
      [150e3, 70.4639],
      [200e3, 67.9636],
      [400e3, 61.9394],
      [500e3, 60],
      [10e6, 60],
    ]
    for (const [hz, db] of samples) expect(limitDbAt(lineOf('ce102-base'), hz)).toBeCloseTo(db, 4)
  })

  it('give 76.4639 dBµV for a 115 V lead at 150 kHz', () => {
    const relaxed = CE102_RELAXATION.find(({ nominalV }) => nominalV === 115)
    expect((limitDbAt(lineOf('ce102-base'), 150e3) ?? 0) + (relaxed?.db ?? 0)).toBeCloseTo(76.4639, 4)
  })

  it('relax by 10·log10 of the voltage ratio, rounded', () => {
    for (const { nominalV, db } of CE102_RELAXATION) expect(Math.round(10 * Math.log10(nominalV / 28))).toBe(db)
  })

  it('take the lower limit where a step meets, and nothing outside the span', () => {
    expect(limitDbAt(lineOf('en55022-b-quasi-peak'), 5e6)).toBe(56)
    expect(limitDbAt(lineOf('en55022-a-quasi-peak'), 500e3)).toBe(73)
    expect(limitDbAt(lineOf('en55022-b-average'), 12e6)).toBe(50)
    expect(limitDbAt(lineOf('ce102-base'), 9.9e3)).toBeUndefined()
  })
})

describe('the bands and signatures', () => {
  it('have unique ids, rising edges and cited sources', () => {
    expect(new Set(RADIO_BANDS.map(({ id }) => id)).size).toBe(RADIO_BANDS.length)
    for (const { id, fromHz, toHz, source } of RADIO_BANDS) {
      expect(toHz, id).toBeGreaterThan(fromHz)
      expect(Object.keys(SOURCES), id).toContain(source.id)
    }
    expect(new Set(NOISE_SIGNATURES.map(({ id }) => id)).size).toBe(NOISE_SIGNATURES.length)
  })

  it('find what listens at 121.5 MHz', () => {
    expect(bandsAt(121.5e6).map(({ id }) => id)).toEqual(['vhf-com', 'elt-121'])
    expect(bandsAt(60e6)).toEqual([])
  })
})

describe('the parts', () => {
  it('have a wire inductance that follows its formula', () => {
    const wire = CONSTRUCTIONS.find(({ id }) => id === 'wire-inch')
    const lengthM = 0.0254
    const diameterM = 0.000644
    const formulaH = 0.2e-6 * lengthM * (Math.log((4 * lengthM) / diameterM) - 0.75)
    expect(Math.abs((wire?.mostEslH ?? 0) / formulaH - 1)).toBeLessThan(0.001)
  })

  it('have ranges that run upward and shares below one', () => {
    for (const { id, leastEslH, mostEslH } of CONSTRUCTIONS) expect(mostEslH, id).toBeGreaterThanOrEqual(leastEslH)
    for (const { id, leastOhm, mostOhm } of ESR_RANGES) expect(mostOhm, id).toBeGreaterThan(leastOhm)
    for (const { id, temperatureFrac, ageingFracPerDecade } of DIELECTRICS) {
      expect(temperatureFrac, id).toBeLessThan(1)
      expect(ageingFracPerDecade, id).toBeLessThan(0.1)
    }
  })

  it('have preferred values within 5 % of even steps, E6 inside E12', () => {
    for (const [series, steps] of [
      [E6, 6],
      [E12, 12],
    ] as const) {
      expect(series.length).toBe(steps)
      series.forEach((value, i) => {
        expect(Math.abs(value / 10 ** (i / steps) - 1)).toBeLessThan(0.05)
      })
    }
    for (const value of E6) expect(E12).toContain(value)
  })

  it('read the letter P as plus a hundred, minus nothing', () => {
    expect(TOLERANCE_LETTERS.find(({ letter }) => letter === 'P')?.text).toBe('+100/-0 %')
  })
})
