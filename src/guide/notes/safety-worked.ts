/** Worked examples of the notes on safety and rules. */
import { type NavyLimit, navyLimit, SMALL_LOAD_W } from '../../calc/power/navy-rule.ts'
import {
  acrossLinesV,
  BLED_SHARE,
  bleedSec,
  crestV,
  lineCurrentRmsA,
  PASCHEN_MINIMUM_V,
  storedJ,
} from '../../calc/power/supply.ts'
import { AC_BUS, ALTITUDE_PRESSURES, HIGH_MAINS, PASCHEN_MINIMUM } from '../../reference/field-figures.ts'
import { factOf } from '../figures.ts'
import { amperes, farads, hertz, joules, metres, ohms, percent, seconds, volts, watts, withUnit } from '../print.ts'

const SUPPLIES = ['power-115-vac-400', 'power-270-vdc'] as const
/** Where their volts are from. */
export const supplySources = () => SUPPLIES.map((kindId) => factOf(kindId, 'supply').source)

const nominalV = (kindId: string): number => factOf(kindId, 'supply').nominalRmsV

export const mainsV = (): string => volts(nominalV('power-115-vac-400'))
export const highBusV = (): string => volts(nominalV('power-270-vdc'))

/** Usual volts of an insulation test. */
export const INSULATION_V = 500

/** Alternating high-pot on one capacitor. */
export function highPotExample(): string {
  const test = { farads: 100e-9, workingRmsV: 1000, supplyHz: 60 }
  return `AC high-pot drives real current: ${farads(test.farads)} at ${volts(test.workingRmsV)} ${hertz(test.supplyHz)} draws ${amperes(lineCurrentRmsA(test), 2)}.`
}

/** Energy of one capacitor, and of all pins of a connector. */
export function storedExample(): string {
  const [one, pin, pins] = [1e-6, 100e-9, 37]
  const ofOne = storedJ({ farads: one, crestV: INSULATION_V })
  const ofAll = pins * storedJ({ farads: pin, crestV: INSULATION_V })
  return `Stored energy is ½·C·V²: ${farads(one)} at ${volts(INSULATION_V)} is ${joules(ofOne)}, ${pins} pins of ${farads(pin)} at ${volts(INSULATION_V)} together ${joules(ofAll, 2)}.`
}

/** How long a resistor takes. */
export function bleedExample(): string {
  const bleed = { farads: 1e-6, ohm: 1e6, fromV: INSULATION_V, toV: BLED_SHARE * INSULATION_V }
  return `${farads(bleed.farads)} through ${ohms(bleed.ohm)} takes ${seconds(bleedSec(bleed), 2)} to fall to ${percent(BLED_SHARE)}.`
}

/** Crests of the usual supplies beside the least breakdown of air. */
export function peaksExample(): string {
  const phase = nominalV('power-115-vac-400')
  const supplyHz = AC_BUS.hz
  const across = Number(acrossLinesV({ workingRmsV: phase, lineCount: 3, supplyHz }).toPrecision(2))
  const crest = (workingRmsV: number) => crestV({ workingRmsV, supplyHz })
  const place = (volt: number) =>
    Math.abs(volt / PASCHEN_MINIMUM_V - 1) < 0.02 ? 'on it' : volt < PASCHEN_MINIMUM_V ? 'below it' : 'above it'
  const wide = HIGH_MAINS.volts
  return `${volts(phase)} rms is ${volts(crest(phase))} peak and ${volts(across)} line to line ${volts(crest(across))} peak: ${place(crest(across))}. ${volts(wide)} rms is ${volts(crest(wide))} peak: ${place(crest(wide))}. ${highBusV()} DC is ${place(nominalV('power-270-vdc'))}, its transients are not.`
}

/** Thousands apart, as heights are written. */
const grouped = (count: number): string => String(count).replace(/\B(?=(?:\d{3})+$)/gu, '\u00a0')

/** Two digits, from a hundred micrometres on three. */
const microns = (metre: number): string => metres(metre, metre < 100e-6 ? 2 : 3)

/** The gap that breaks down first, at sea level and at the pressures of the altitude test. */
export function gapRows(): readonly (readonly string[])[] {
  const { seaLevelTorr, rows } = ALTITUDE_PRESSURES
  const gap = (torr: number) => microns(PASCHEN_MINIMUM.torrMetres / torr)
  return [
    [withUnit(seaLevelTorr, 'torr'), 'sea level', gap(seaLevelTorr)],
    ...rows.map(({ torr, feet }) => [withUnit(torr, 'torr'), withUnit(grouped(feet), 'ft'), gap(torr)]),
  ]
}

const limitOf = (limit: NavyLimit): string => (limit.limitF === undefined ? '' : farads(limit.limitF))

/** The rule in its own figures. */
export function navyFigures(): string {
  const byFrequency = [60, AC_BUS.hz].map(
    (hz) => `${limitOf(navyLimit({ supplyHz: hz }))} ${hz === 60 ? 'a line ' : ''}at ${hertz(hz)}`,
  )
  const kilowatt = navyLimit({ supplyHz: 0, loadW: 1000 })
  const small = navyLimit({ supplyHz: 0, loadW: SMALL_LOAD_W / 2 })
  return `AC: ${byFrequency.join(', ')}. DC user equipment in submarines and aircraft: ${limitOf(kilowatt)} for each kilowatt of load, and ${limitOf(small)} below ${watts(SMALL_LOAD_W)}. Both are ceilings.`
}
