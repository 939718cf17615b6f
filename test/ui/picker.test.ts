/** What people type to find their line: the kind they mean stands first, or among the first. */
import { describe, expect, it } from 'vitest'
import { lineKindOptions } from '../../src/calc/checks/kind-options.ts'
import { TRADE_WORDS } from '../../src/reference/line-kinds/trade-words.ts'
import { LINE_KINDS } from '../../src/reference/line-kinds.ts'
import { matching } from '../../src/ui/parts/option-match.ts'

const found = (search: string) => matching(lineKindOptions, search).map(({ value }) => value)

/** How many of the list a user sees without scrolling. */
const IN_SIGHT = 5

const WANTED: readonly (readonly [search: string, kind: string])[] = [
  ['RJ45', 'ethernet-100base-tx'],
  ['rj 45', 'ethernet-1000base-t'],
  ['RJ45', 'ethernet-10base-t'],
  ['ARINC 664', 'ethernet-100base-tx'],
  ['664', 'ethernet-100base-tx'],
  ['PTT', 'push-to-talk'],
  ['push to talk', 'push-to-talk'],
  ['push-to-talk', 'push-to-talk'],
  ['landing gear', 'discrete-ground'],
  ['landing gear', 'discrete-28v'],
  ['gear lamp', 'discrete-28v'],
  ['squat switch', 'discrete-ground'],
  ['weight on wheels', 'discrete-ground'],
  ['wow', 'discrete-ground'],
  ['led', 'panel-lighting'],
  ['LED', 'discrete-28v'],
  ['429', 'arinc-429-high'],
  ['arinc429', 'arinc-429-high'],
  ['ARINC-429 low', 'arinc-429-low'],
  ['a429', 'arinc-429-low'],
  ['vor', 'arinc-429-low'],
  ['air data', 'arinc-429-high'],
  ['1553', 'mil-std-1553-stub'],
  ['milstd1553', 'mil-std-1553-direct'],
  ['twinax', 'mil-std-1553-stub'],
  ['weather radar', 'arinc-708'],
  ['flight recorder', 'arinc-717'],
  ['black box', 'arinc-717'],
  ['serial', 'rs-232'],
  ['rs232', 'rs-232'],
  ['DB9', 'rs-232'],
  ['nmea', 'rs-422'],
  ['rs 422', 'rs-422'],
  ['dmx', 'rs-485'],
  ['can', 'can'],
  ['canbus', 'can'],
  ['ARINC 825', 'can'],
  ['iso 11898', 'can'],
  ['i2c', 'i2c-standard'],
  ['I²C fast', 'i2c-fast'],
  ['lvds', 'lvds'],
  ['camera', 'composite-video'],
  ['usb', 'usb-high-speed'],
  ['tablet', 'usb-high-speed'],
  ['gigabit', 'ethernet-1000base-t'],
  ['100baseTX', 'ethernet-100base-tx'],
  ['base', 'ethernet-10base-t'],
  ['firewire', 'ieee-1394'],
  ['28v', 'power-28-vdc'],
  ['28 volt', 'power-28-vdc'],
  ['battery bus', 'power-28-vdc'],
  ['400 Hz', 'power-115-vac-400'],
  ['ground power', 'power-115-vac-400'],
  ['frequency wild', 'power-115-vac-variable'],
  ['270', 'power-270-vdc'],
  ['540 volt', 'power-hvdc'],
  ['EGT', 'thermocouple'],
  ['exhaust gas temperature', 'thermocouple'],
  ['pt100', 'rtd'],
  ['oat', 'rtd'],
  ['nose wheel steering', 'lvdt'],
  ['compass', 'synchro'],
  ['HSI', 'synchro'],
  ['tach', 'speed-pickup'],
  ['headset', 'audio'],
  ['intercom', 'audio'],
  ['mic', 'microphone'],
  ['solenoid', 'pwm-drive'],
  ['dimmer', 'panel-lighting'],
  ['alternator', 'generator-control'],
  ['flap position', 'potentiometer'],
  ['mode c', 'altitude-encoder'],
  ['TCAS', 'l-band-suppression'],
  ['gps time', 'one-pps'],
  ['fuel flow', 'fuel-flow'],
  ['fuel probe', 'fuel-quantity'],
  ['fadec', 'engine-control'],
  ['autopilot servo', 'flight-control'],
  ['squib', 'pyrotechnic'],
  ['magneto', 'magneto-lead'],
  ['strobe', 'strobe-high-voltage'],
  ['coax', 'antenna-coax'],
  ['bonding strap', 'chassis-return'],
  ['cat5 cable', 'ethernet-1000base-t'],
]

describe('the picker of lines', () => {
  it.each(WANTED)('finds by "%s" the kind %s, in sight', (search, kind) => {
    expect(found(search).slice(0, IN_SIGHT)).toContain(kind)
  })

  it('is asked with sixty queries and more', () => {
    expect(new Set(WANTED.map(([search]) => search)).size).toBeGreaterThanOrEqual(60)
  })

  it('finds no fragment inside a word: led is no part of coupled', () => {
    expect(found('led')).not.toContain('mil-std-1553-stub')
    expect(found('led')).not.toContain('mil-std-1553-direct')
    expect(found('can')[0]).toBe('can')
    expect(found('can')).not.toContain('l-band-suppression')
    expect(found('act')).not.toContain('discrete-ground')
  })

  it('gives whole words before the start of one', () => {
    const all = found('mic')
    expect(all.indexOf('microphone')).toBe(0)
    const stick = found('stick')
    expect(stick.slice(0, 2).sort()).toEqual(['stall-warning', 'usb-full-speed'])
  })

  it('takes what holds most of the words where none holds all, and nothing for words of no trade', () => {
    expect(found('landing gear thing')).toContain('discrete-ground')
    expect(found('zebra crossing')).toEqual([])
  })

  it('has words of the trade for every kind, none twice in one', () => {
    expect(Object.keys(TRADE_WORDS).sort()).toEqual(LINE_KINDS.map(({ id }) => id).sort())
    for (const kind of LINE_KINDS) {
      const before = new Set([kind.name, ...kind.aliases].map((word) => word.toLowerCase()))
      const own = (TRADE_WORDS[kind.id] ?? []).map((word) => word.toLowerCase())
      expect(
        own.filter((word, at) => before.has(word) || own.indexOf(word) !== at),
        kind.id,
      ).toEqual([])
    }
  })
})
