/** Worked examples of the notes on parts. */

import { shuntNeedF } from '../../calc/network/trial-region.ts'
import { formatQuantity } from '../../calc/quantity/format.ts'
import { parseQuantity } from '../../calc/quantity/parse.ts'
import type { Quantity } from '../../calc/quantity/quantity.ts'
import { dielectricById } from '../../reference/dielectric-bias.ts'
import { BENCH_ENDS } from '../../reference/field-figures.ts'
import { capacitorLossDb } from '../figures.ts'
import { decibels, ohms, percent } from '../print.ts'

/** The same capacitance as it is marked, spoken and typed. */
export const WAYS_TO_WRITE = ['4n7', '4.7n', '4,7 nF', '0.0047uF'] as const

/** What a code on a part means, as the fields of the app read it. */
export function coded(code: string, quantity: Quantity): string {
  const reading = parseQuantity(code, quantity)
  if (reading.is !== 'value') throw new RangeError(`"${code}" is no code`)
  return formatQuantity(reading.si, quantity)
}

/** The same with a point where the letter stands: R47 is 0.47. */
export const pointed = (code: string): string => code.replace(/^R/u, '0.')

/** Two figures and a number of zeros, in picofarads. */
export const threeDigits = (code: string): number => Number(code.slice(0, 2)) * 10 ** Number(code.slice(2)) * 1e-12

const TOLERANCE = 0.2
const DECADES = 2

/** What the worst corner of a class 2 part leaves of its marked value. */
export function worstCaseExample(): string {
  const part = dielectricById('bx')
  if (part === undefined) throw new RangeError('no such dielectric')
  const factors = [1 - TOLERANCE, 1 - part.temperatureFrac, (1 - part.ageingFracPerDecade) ** DECADES]
  const left = factors.reduce((product, factor) => product * factor, 1)
  const lostDb = -20 * Math.log10(left)
  return `Example: −${percent(TOLERANCE)} tolerance, −${percent(part.temperatureFrac)} for temperature and bias of a BX part, two decades of ageing at ${percent(part.ageingFracPerDecade)}. What is left is ${factors.map(short).join(' × ')} = ${left.toFixed(2)} of the marked value. That is ${decibels(lostDb, 2)} less for one capacitor, ${decibels(2 * lostDb, 2)} for a Pi on its slope.`
}

const short = (share: number): string => String(Number(share.toFixed(3)))

/** A capacitor that is much on the bench and little from a low impedance. */
export function benchExample(): string {
  const [bench, hz, low, load] = [40, 10e6, 1, 10]
  const { fixtureOhm } = BENCH_ENDS
  const capacitanceF = shuntNeedF([{ ohm: fixtureOhm / 2, reactanceOhm: 0 }], bench, hz)
  const left = capacitorLossDb({ sourceOhm: low, loadOhm: load, capacitanceF, hz })
  return `A capacitor of ${decibels(bench)} on the bench does ${decibels(left, 2)} between ${ohms(low)} and ${ohms(load)}. Your ends are not ${ohms(fixtureOhm)}, or your bond is not a test fixture.`
}
