/**
 * What can be built of a decided capacitor: its series, the voltage class its line asks for, what each dielectric would
 * leave of its window, and what a tighter tolerance buys. Windows under another spread are those of its own window by the
 * shares of the mark: least · k_low/k_low', most · k_high/k_high'. Source: derived; tables with their standing.
 */
import { DIELECTRICS, type Dielectric } from '../../reference/constructions.ts'
import { lostToBias, RATED_V } from '../../reference/dielectric-bias.ts'
import type { Citation } from '../../reference/line-kinds/types.ts'
import { lineKindById } from '../../reference/line-kinds.ts'
import { E6, E12 } from '../../reference/preferred-values.ts'
import { NARROW_RATIO } from '../bounds/intersect.ts'
import { leastShare, mostShare, type Spread } from '../bounds/worst-case.ts'
import type { Express } from '../line/fields.ts'
import { hasCapacitor } from '../network/circuit.ts'
import { PASCHEN_MINIMUM_V, withstandV } from '../power/supply.ts'
import type { OpenAnswer } from './contact-line.ts'
import type { DecidedContact } from './decided.ts'
import type { Contact } from './types.ts'
import { peaksOf, type Zone, zoneOf } from './whole/ratings.ts'

export type Series = 'E6' | 'E12' | 'none'

/** One dielectric for this contact: the window it would leave, as marked. */
export type DielectricChoice = {
  readonly id: string
  readonly name: string
  readonly isClass1: boolean
  readonly leastF: number
  readonly mostF: number
  /** most over least; below 1 = shut */
  readonly widthRatio: number
  /** the decided value lies inside */
  readonly holds: boolean
  readonly sources: readonly Citation[]
}

/** What a tolerance does to the width of the window, against the one it was worked out with. */
export type ToleranceChoice = {
  readonly toleranceFrac: number
  readonly widthRatio: number
  readonly timesWider: number
}

export type Build = {
  readonly series: Series
  /** highest steady and passing volts of the line, peak; undefined where the kind says none */
  readonly steadyV?: number
  readonly passingV?: number
  /** smallest usual class above them; undefined where none is, or the volts are not known */
  readonly ratedV?: number
  readonly testV?: number
  readonly zone?: Zone
  /** the line, or the test of its class, reaches what air breaks down at where the zone is thin or not known */
  readonly thinAir?: 'line' | 'test'
  readonly dielectrics: readonly DielectricChoice[]
  readonly tolerances: readonly ToleranceChoice[]
}

const TOLERANCES: readonly number[] = [0.2, 0.1, 0.05]
/** From here on a peak is close to the least at which air breaks down. */
const NEAR_PASCHEN = 0.9

export function buildOf(
  contact: Contact,
  decided: DecidedContact,
  open: OpenAnswer,
  express?: Express,
): Build | undefined {
  const { part } = decided
  if (part === undefined || !hasCapacitor(part.topology)) return undefined
  const { row, setup } = open
  const volts = voltsOf(decided, express)
  const zone = zoneOf(contact.texts.zone)
  const ends = { leastF: row.least?.markedF ?? 0, mostF: row.upper?.markedF ?? Number.POSITIVE_INFINITY }
  const voltageFrac = volts?.ratedV === undefined ? 1 : Math.min(1, volts.steadyV / volts.ratedV)
  const thinAir = thinAirOf(volts, zone)
  return {
    series: seriesOf(part.capacitanceF),
    ...volts,
    ...(zone === undefined ? {} : { zone }),
    ...(thinAir === undefined ? {} : { thinAir }),
    dielectrics: DIELECTRICS.map((one) =>
      dielectricChoice(one, { ends, spread: setup.spread, voltageFrac, valueF: part.capacitanceF }),
    ),
    tolerances: TOLERANCES.map((toleranceFrac) => toleranceChoice(toleranceFrac, ends, setup.spread)),
  }
}

/** The series that has this value. */
export function seriesOf(valueF: number): Series {
  const mantissa = Number((valueF / 10 ** Math.floor(Math.log10(valueF) + 1e-9)).toPrecision(6))
  return E6.includes(mantissa) ? 'E6' : E12.includes(mantissa) ? 'E12' : 'none'
}

type Volts = { readonly steadyV: number; readonly passingV: number; readonly ratedV?: number; readonly testV?: number }

function voltsOf(decided: DecidedContact, express: Express | undefined): Volts | undefined {
  const [peak] = peaksOf([decided], express)
  if (peak === undefined) return undefined
  const { steadyV, transientV: passingV } = peak
  const ratedV = RATED_V.find((volts) => volts >= passingV)
  const supply = lineKindById(decided.kind ?? '')?.supply
  // an AC part is tested at 2.8 times its rms rating, a DC part at 2.5 times its rating
  const testV =
    ratedV === undefined
      ? undefined
      : Math.max(
          withstandV({ workingRmsV: ratedV, supplyHz: 0 }),
          supply === undefined ? 0 : withstandV({ workingRmsV: supply.worstRmsV, supplyHz: supply.worstHz }),
        )
  return { steadyV, passingV, ...(ratedV === undefined ? {} : { ratedV }), ...(testV === undefined ? {} : { testV }) }
}

function thinAirOf(volts: Volts | undefined, zone: Zone | undefined): Build['thinAir'] {
  if (volts === undefined || zone === 'pressurised') return undefined
  if (volts.passingV >= NEAR_PASCHEN * PASCHEN_MINIMUM_V) return 'line'
  return (volts.testV ?? 0) >= PASCHEN_MINIMUM_V ? 'test' : undefined
}

type Ends = { readonly leastF: number; readonly mostF: number }

/** The same window under another spread. */
function endsUnder({ leastF, mostF }: Ends, from: Spread, to: Spread): Ends {
  return {
    leastF: leastF * (leastShare(from) / leastShare(to)),
    mostF: mostF * (mostShare(from) / mostShare(to)),
  }
}

function dielectricChoice(
  dielectric: Dielectric,
  q: { readonly ends: Ends; readonly spread: Spread; readonly voltageFrac: number; readonly valueF: number },
): DielectricChoice {
  const { leastF, mostF } = endsUnder(q.ends, q.spread, {
    ...q.spread,
    temperatureFrac: dielectric.temperatureFrac,
    ageingFracPerDecade: dielectric.ageingFracPerDecade,
    biasFrac: lostToBias(dielectric, 'filter-part', q.voltageFrac),
  })
  return {
    id: dielectric.id,
    name: dielectric.name,
    isClass1: dielectric.id === 'c0g',
    leastF,
    mostF,
    widthRatio: leastF > 0 ? mostF / leastF : Number.POSITIVE_INFINITY,
    holds: q.valueF >= leastF * (1 - 1e-9) && q.valueF <= mostF * (1 + 1e-9),
    sources: dielectric.sources,
  }
}

function toleranceChoice(toleranceFrac: number, ends: Ends, spread: Spread): ToleranceChoice {
  const { leastF, mostF } = endsUnder(ends, spread, {
    ...spread,
    tolerance: { lowFrac: toleranceFrac, highFrac: toleranceFrac },
  })
  const isHalf = !(ends.leastF > 0) || !Number.isFinite(ends.mostF)
  return {
    toleranceFrac,
    widthRatio: leastF > 0 ? mostF / leastF : Number.POSITIVE_INFINITY,
    timesWider: isHalf
      ? spreadOver(spread) / spreadOver({ ...spread, tolerance: { lowFrac: toleranceFrac, highFrac: toleranceFrac } })
      : mostF / leastF / (ends.mostF / ends.leastF),
  }
}

/** Most over least that one mark can be. */
const spreadOver = (spread: Spread): number => mostShare(spread) / leastShare(spread)

/** The dielectric to ask for: class 1 where it holds and class 2 does not, or leaves no comfortable window. */
export function classAdvised({ dielectrics }: Build): 'class 1' | 'class 2' | 'neither' {
  const comfortable = dielectrics.some((one) => !one.isClass1 && one.holds && one.widthRatio >= NARROW_RATIO)
  if (comfortable) return 'class 2'
  if (dielectrics.some((one) => one.isClass1 && one.holds)) return 'class 1'
  return dielectrics.some(({ holds }) => holds) ? 'class 2' : 'neither'
}
