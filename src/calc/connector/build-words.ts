/** The value column in words: what to ask the maker for, and what each choice buys. */
import { CLASS_1_TIMES } from '../../reference/dielectric-size.ts'
import { listed } from '../explain/sentence.ts'
import { PASCHEN_MINIMUM_V } from '../power/supply.ts'
import { formatEstimate, formatExact, formatQuantity } from '../quantity/format.ts'
import type { Build, DielectricChoice } from './build.ts'
import { classAdvised } from './build.ts'

const volts = (si: number): string => formatExact(si, 'voltage')
const ratio = (si: number): string => formatQuantity(si, 'number', 2)

/** "E6 value, 100 V class, class 2 (class 1 would do in 20 to 130 times the volume)." */
export function buildWords(build: Build): string {
  return [seriesWords(build), classWords(build), dielectricWords(build)].join('; ')
}

const seriesWords = ({ series }: Build): string =>
  series === 'none' ? 'no value of E6 or E12: made to order' : `${series} value`

function classWords({ steadyV, passingV, ratedV }: Build): string {
  if (steadyV === undefined || passingV === undefined)
    return 'voltage class open: the volts of this kind of line are not known'
  if (ratedV === undefined) return `above every usual class: ${volts(passingV)} peak`
  const peak = passingV > steadyV ? `${volts(steadyV)} steady, ${volts(passingV)} passing` : `${volts(steadyV)} peak`
  return `${volts(ratedV)} class (${peak})`
}

/** Without what stands in brackets behind it. */
const shortName = (name: string): string => name.replace(/ \(.*$/u, '')

function dielectricWords(build: Build): string {
  const advised = classAdvised(build)
  const class1 = build.dielectrics.find(({ isClass1 }) => isClass1)
  const size = `${ratio(CLASS_1_TIMES.least)} to ${ratio(CLASS_1_TIMES.most)} times the volume`
  if (advised === 'neither') return 'no dielectric of the table holds this value'
  if (advised === 'class 1') return `class 1: class 2 does not hold it with room (class 1 takes ${size})`
  const held = build.dielectrics.filter((one) => !one.isClass1 && one.holds).map(({ name }) => shortName(name))
  return `class 2 holds it (${listed(held)})${class1?.holds ? `; class 1 would too, in ${size}` : ''}`
}

/** One dielectric: "X7R (class 2): 9.1 nF to 280 nF". */
export function choiceWords({ name, leastF, mostF, widthRatio, holds }: DielectricChoice): string {
  const least = leastF > 0 ? `${formatEstimate(leastF, 'capacitance', 'least')} or more` : 'any'
  if (widthRatio < 1) return `${name}: shut`
  const span =
    leastF > 0 && Number.isFinite(mostF)
      ? `${formatEstimate(leastF, 'capacitance', 'least')} to ${formatEstimate(mostF, 'capacitance', 'most')}`
      : Number.isFinite(mostF)
        ? `up to ${formatEstimate(mostF, 'capacitance', 'most')}`
        : least
  return `${name}: ${span}${holds ? '' : ', not this value'}`
}

/** "±10 % makes the window 1.4 times as wide, ±5 % 1.6 times." */
export function toleranceWords({ tolerances }: Build): string {
  const better = tolerances.filter(({ timesWider }) => timesWider > 1.005)
  if (better.length === 0) return 'A tighter tolerance buys nothing here.'
  const said = better.map(
    ({ toleranceFrac, timesWider }) => `±${formatExact(toleranceFrac, 'fraction')} ${ratio(timesWider)} times`,
  )
  return `Tolerance: the window gets wider with ${listed(said)}.`
}

/** Thin air, where it matters; undefined elsewhere. */
export function thinAirWords({ thinAir, passingV, testV, zone }: Build): string | undefined {
  if (thinAir === undefined) return undefined
  const where = zone === undefined ? 'If its zone is not pressurised' : 'Unpressurised'
  const minimum = volts(PASCHEN_MINIMUM_V)
  return thinAir === 'line'
    ? `${where}: ${volts(passingV ?? 0)} is close to the ${minimum} at which thin air breaks down: solid filling and more spacing.`
    : `${where}: the test at ${formatEstimate(testV ?? 0, 'voltage')} is above the ${minimum} at which thin air breaks down: test it filled, or not at low pressure.`
}
