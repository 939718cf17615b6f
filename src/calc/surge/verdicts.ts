/** Does the circuit live, does the suppressor live, does the filter capacitor live: each with its reasons. */
import { busSurgesOf } from '../../reference/bus-surges.ts'
import { COLD_SOAK_C } from '../../reference/suppressors.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Finding, Quantity, Verdict } from '../types.ts'
import { worse } from '../verdict.ts'
import { LONG_SURGE_SEC, longPulseW, longSurge } from './bus.ts'
import type { FittedPart } from './setup.ts'
import { breakdownAt } from './suppressor.ts'
import type { Peak } from './trace.ts'
import type { Usage } from './usage.ts'

export type Judgement = { readonly verdict: Verdict; readonly word: string; readonly findings: readonly Finding[] }

const show = (si: number, quantity: Quantity, digits = 3) => formatQuantity(si, quantity, digits)
const V = (si: number) => show(si, 'voltage')

/** Closer to a limit than this share is marginal: the model and the spread are no better. */
const CLOSE = 0.05
/** A rating used beyond this is marginal: repeats and spread are estimates. */
const MOSTLY_USED = 0.8

const WORDS: Readonly<Record<Verdict, string>> = {
  ok: 'holds',
  marginal: 'close',
  fails: 'exceeded',
  unknown: 'not known',
}

const judge = (findings: readonly Finding[]): Judgement => {
  const verdict = findings.reduce<Verdict>((worst, finding) => worse(worst, finding.verdict), 'ok')
  return { verdict, word: WORDS[verdict], findings }
}

/** The load peak against what the circuit withstands; `hotRiseV`: what the breakdown gains at the temperature entered. */
export function circuitJudgement(given: {
  readonly load: Peak
  readonly withstandV: number | undefined
  readonly hotRiseV: number
  readonly heldWords: string
}): Judgement {
  const { load, withstandV, hotRiseV, heldWords } = given
  if (withstandV === undefined)
    return judge([
      {
        verdict: 'unknown',
        sentence: `The load sees ${V(load.value)}. Enter what the circuit withstands to judge it.`,
      },
    ])
  if (load.value > withstandV)
    return judge([
      {
        verdict: 'fails',
        sentence: `The load peaks at ${V(load.value)}, ${V(load.value - withstandV)} above what the circuit withstands${heldWords}.`,
      },
    ])
  if (load.value + hotRiseV > withstandV)
    return judge([
      {
        verdict: 'marginal',
        sentence: `Hot, the breakdown is ${V(hotRiseV)} higher and lifts the load above the ${V(withstandV)} the circuit withstands.`,
      },
    ])
  if (load.value > (1 - CLOSE) * withstandV)
    return judge([
      {
        verdict: 'marginal',
        sentence: `The load peaks at ${V(load.value)}, within 5 % of the ${V(withstandV)} the circuit withstands.`,
      },
    ])
  return judge([
    {
      verdict: 'ok',
      sentence: `The load peaks at ${V(load.value)}, below the ${V(withstandV)} the circuit withstands.`,
    },
  ])
}

/** The highest volts on a filter capacitor against its own withstand. undefined: there is no capacitor. */
export function capacitorJudgement(peak: Peak | undefined, withstandV: number | undefined): Judgement | undefined {
  if (!peak) return undefined
  if (withstandV === undefined)
    return judge([
      {
        verdict: 'unknown',
        sentence: `A filter capacitor sees ${V(peak.value)}. Enter what it withstands; its working voltage is not the measure.`,
      },
    ])
  const verdict: Verdict = peak.value > withstandV ? 'fails' : peak.value > (1 - CLOSE) * withstandV ? 'marginal' : 'ok'
  const relation = verdict === 'fails' ? 'above' : verdict === 'marginal' ? 'within 5 % of' : 'below'
  return judge([
    { verdict, sentence: `A filter capacitor sees ${V(peak.value)}, ${relation} the ${V(withstandV)} it withstands.` },
  ])
}

/** Rating used, and what the bus makes the suppressor do. undefined: no suppressor. */
export function suppressorJudgement(given: {
  readonly part: FittedPart | undefined
  readonly usage: Usage | undefined
  readonly ratedPulseW: number | undefined
  readonly busMaxV: number | undefined
  readonly busSourceOhm: number
  readonly lineKind: string | undefined
}): Judgement | undefined {
  const { part } = given
  if (!part) return undefined
  return judge([ratingFinding(given.usage, given.ratedPulseW), ...busFindings({ ...given, part })])
}

function ratingFinding(usage: Usage | undefined, ratedW: number | undefined): Finding {
  if (!usage || ratedW === undefined)
    return { verdict: 'unknown', sentence: 'Enter the 10/1000 µs pulse power of the suppressor to judge its rating.' }
  if (usage.totalFrac === undefined)
    return { verdict: 'fails', sentence: 'At this temperature the suppressor has no rating left.' }
  const used = show(usage.totalFrac, 'fraction')
  const verdict: Verdict = usage.totalFrac > 1 ? 'fails' : usage.totalFrac > MOSTLY_USED ? 'marginal' : 'ok'
  const peak = `${show(usage.peakW, 'power')} peak`
  const from = `its ${show(ratedW, 'power')}`
  const tail = usage.totalFrac > 3 ? ' Far above the rating the figure only says that it fails.' : ''
  return { verdict, sentence: `The pulse uses ${used} of what ${from} 10/1000 µs rating allows (${peak}).${tail}` }
}

type BusQuestion = {
  readonly lineKind: string | undefined
  readonly part: FittedPart
  readonly busMaxV: number | undefined
  readonly busSourceOhm: number
  readonly ratedPulseW: number | undefined
}

/** A long bus surge through the suppressor is refused with its joules; cold conduction is found. */
function busFindings({ part, busMaxV, busSourceOhm, ratedPulseW, lineKind }: BusQuestion): readonly Finding[] {
  if (busMaxV === undefined) return envelopeFindings(part, lineKind, busSourceOhm)
  const coldV = breakdownAt({ breakdownV: part.leastV, tempC: COLD_SOAK_C })
  const warm = surgeThrough(busMaxV, busSourceOhm, part, part.leastV)
  if (warm)
    return [
      {
        verdict: 'fails',
        sentence: `It conducts through a bus peak of ${V(busMaxV)}: ${warm.words}${couldTake(ratedPulseW)}. Stand the surge off, or put a series limiter ahead.`,
      },
    ]
  const cold = surgeThrough(busMaxV, busSourceOhm, part, coldV)
  if (cold)
    return [
      {
        verdict: 'marginal',
        sentence: `Cold, at ${show(COLD_SOAK_C, 'temperature')}, it breaks down from ${V(coldV)} and conducts at the bus peak of ${V(busMaxV)}: ${cold.words}${couldTake(ratedPulseW)}.`,
      },
    ]
  if (part.standoffV !== undefined && busMaxV > part.standoffV)
    return [
      {
        verdict: 'marginal',
        sentence: `The bus peak of ${V(busMaxV)} is above the stand-off of ${V(part.standoffV)}: leakage, though no breakdown.`,
      },
    ]
  return []
}

/** Bus surges of the supply that would make it conduct, when no line peak was entered. */
function envelopeFindings(part: FittedPart, lineKind: string | undefined, busOhm: number): readonly Finding[] {
  const coldV = breakdownAt({ breakdownV: part.leastV, tempC: COLD_SOAK_C })
  const words = busSurgesOf(lineKind ?? '').flatMap((row) => {
    const through = longSurge({
      busV: row.peakV,
      busOhm,
      breakdownV: coldV,
      dynamicOhm: part.dynamicOhm,
      forSec: row.forSec,
    })
    return through
      ? [`${row.label} (${V(row.peakV)} for ${show(row.forSec, 'time')}, ${show(through.energyJ, 'energy')})`]
      : []
  })
  if (words.length === 0) return []
  return [
    {
      verdict: 'unknown',
      sentence: `Cold, it would conduct through: ${words.join('; ')}. Enter the highest line peak that applies to you.`,
    },
  ]
}

/** What it would carry, in words, or undefined when it stays blocked. */
function surgeThrough(
  busV: number,
  busOhm: number,
  part: FittedPart,
  breakdownV: number,
): { readonly words: string } | undefined {
  const forSec = LONG_SURGE_SEC
  const through = longSurge({ busV, busOhm, breakdownV, dynamicOhm: part.dynamicOhm, forSec })
  if (!through) return undefined
  const { currentA, powerW, energyJ } = through
  return {
    words: `${show(currentA, 'current', 4)}, ${show(powerW, 'power', 4)}, ${show(energyJ, 'energy', 4)} in ${show(forSec, 'time')} through ${show(busOhm, 'resistance')}`,
  }
}

const couldTake = (ratedPulseW: number | undefined): string =>
  ratedPulseW === undefined
    ? ''
    : `; it may carry about ${show(longPulseW({ ratedPulseW, forSec: LONG_SURGE_SEC }), 'power')} for so long`
