/** The table of line kinds is complete, cited, free of names, and can be searched. */
import { describe, expect, it } from 'vitest'
import { LINE_KINDS, lineKindById, lineKindWords } from '../../src/reference/line-kinds.ts'
import { SOURCES } from '../../src/reference/sources.ts'

const found = (text: string) =>
  LINE_KINDS.filter((kind) => lineKindWords(kind).includes(text.toLowerCase())).map((k) => k.id)

describe('the line kinds', () => {
  it('have unique, readable ids', () => {
    const ids = LINE_KINDS.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    for (const id of ids) expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/)
  })

  it('cover every line of the table: 42 rows, some with several rates', () => {
    for (const id of [
      ...['power-28-vdc', 'power-270-vdc', 'power-115-vac-400', 'power-115-vac-variable', 'chassis-return'],
      ...['discrete-ground', 'discrete-28v', 'sensor-low-level', 'thermocouple', 'rtd', 'lvdt', 'synchro'],
      ...['audio', 'microphone', 'push-to-talk', 'pwm-drive', 'arinc-429-low', 'arinc-429-high'],
      ...['mil-std-1553-stub', 'mil-std-1553-direct', 'rs-232', 'rs-422', 'rs-485', 'can', 'lin'],
      ...['i2c-standard', 'i2c-fast', 'i2c-fast-plus', 'lvds', 'spacewire'],
      ...['usb-low-speed', 'usb-full-speed', 'usb-high-speed'],
      ...['ethernet-10base-t', 'ethernet-100base-tx', 'ethernet-1000base-t', 'ieee-1394'],
      ...['arinc-708', 'arinc-717', 'csdb', 'composite-video', 'antenna-coax', 'pyrotechnic', 'fuel-quantity'],
      ...['magneto-lead', 'speed-pickup', 'fire-detection', 'stall-warning', 'strobe-high-voltage'],
      ...['engine-control', 'flight-control', 'intrinsically-safe', 'not-listed'],
    ])
      expect(lineKindById(id)?.id, id).toBe(id)
  })

  it('cite only sources that are listed', () => {
    for (const kind of LINE_KINDS) {
      const cited = [
        ...kind.sources,
        kind.loadingSource,
        ...kind.permitted.map(({ source }) => source),
        ...(kind.signalOhm ? [kind.signalOhm.source] : []),
        ...(kind.usefulHz ? [kind.usefulHz.source] : []),
        ...(kind.supply ? [kind.supply.source] : []),
      ]
      for (const { id } of cited) expect(Object.keys(SOURCES), `${kind.id} cites ${id}`).toContain(id)
    }
  })

  it('have permitted figures with ids of their own', () => {
    const ids = LINE_KINDS.flatMap(({ permitted }) => permitted.map(({ id }) => id))
    const shared = ids.filter((id, i) => ids.indexOf(id) !== i)
    // Both speeds of ARINC 429 have the same receiver.
    expect([...new Set(shared)]).toEqual(['arinc-429-receiver-differential', 'arinc-429-receiver-leg'])
  })

  it('take the top of a known range of resistance', () => {
    for (const { id, signalOhm } of LINE_KINDS) {
      if (signalOhm?.mostOhm === undefined || id.startsWith('arinc-429')) continue
      expect(signalOhm.ohm, id).toBe(signalOhm.mostOhm)
    }
  })

  it('have rising trial values', () => {
    for (const { id, trial } of LINE_KINDS) {
      if (trial === undefined) continue
      expect(trial.lowF, id).toBeLessThan(trial.mediumF)
      expect(trial.mediumF, id).toBeLessThan(trial.highF)
    }
  })

  it('have no trial values and a reason where they are barred', () => {
    const barred = LINE_KINDS.filter(({ family }) => family === 'barred')
    expect(barred.length).toBe(10)
    for (const { id, barredWhy, trial, loading } of barred) {
      expect(barredWhy, id).toMatch(/\w{3}.*\.$/)
      expect(trial, id).toBeUndefined()
      expect(loading.rule, id).toBe('none')
    }
  })

  it('have masks whose segments join', () => {
    for (const { id, loading } of LINE_KINDS) {
      if (loading.rule !== 'return-loss') continue
      loading.mask.forEach((segment, i) => {
        expect(segment.toHz, id).toBeGreaterThan(segment.fromHz)
        const next = loading.mask[i + 1]
        if (next) expect(next.fromHz, id).toBe(segment.toHz)
      })
    }
  })

  it('keep live high-voltage lines from a trial without barring their figures', () => {
    for (const id of ['power-270-vdc', 'power-115-vac-400', 'power-115-vac-variable']) {
      expect(lineKindById(id)?.noTrialWhy, id).toMatch(/\w{3}.*\.$/)
      expect(lineKindById(id)?.barredWhy, id).toBeUndefined()
    }
  })
})

describe('a search', () => {
  const cases: readonly (readonly [string, string])[] = [
    ['429', 'arinc-429-high'],
    ['CAN bus', 'can'],
    ['28V', 'power-28-vdc'],
    ['headset', 'audio'],
    ['headset', 'microphone'],
    ['squib', 'pyrotechnic'],
    ['1553', 'mil-std-1553-stub'],
    ['PTT', 'push-to-talk'],
    ['FADEC', 'engine-control'],
    ['Ethernet', 'ethernet-100base-tx'],
    ['P-lead', 'magneto-lead'],
    ['Pt100', 'rtd'],
    ['SDA', 'i2c-fast'],
    ['FQIS', 'fuel-quantity'],
  ]
  for (const [text, id] of cases) {
    it(`for “${text}” finds ${id}`, () => {
      expect(found(text)).toContain(id)
    })
  }
})
