/** What may make a tone: each explanation with its formula and the frequency it gives from what is known. Hertz. */

import { PHONE_BURSTS } from '../../reference/field-figures.ts'

/** What moves a tone: the engine, the AC bus, the electrical load, its own device, or nothing. */
export type Follows = 'rpm' | 'bus' | 'load' | 'device' | 'fixed'

export const EXPLANATION_IDS = [
  'alternator-ripple',
  'alternator-open-diode',
  'alternator-six-phase',
  'ignition',
  'engine-turns',
  'commutator',
  'bus-hum',
  'rectifier',
  'rectifier-open-diode',
  'mains-50',
  'mains-60',
  'phone',
  'strobe-charger',
  'dimmer',
] as const
export type ExplanationId = (typeof EXPLANATION_IDS)[number]

export type Known = {
  readonly toneHz: number
  readonly offFrac: number
  readonly rpm: number | undefined
  readonly polePairs: number | undefined
  readonly driveRatio: number | undefined
  readonly pulses: number | undefined
  readonly busHz: readonly number[]
  readonly cylinders: number | undefined
  readonly bars: number | undefined
}

/** `missing`: the whole number it would take where one is not known, and whether it comes out whole. */
export type Explanation = {
  readonly id: ExplanationId
  readonly follows: Follows
  readonly hz: number
  /** what the frequency is a multiple of */
  readonly order: number
  readonly offFrac: number
  readonly missing?: { readonly what: 'polePairs' | 'cylinders' | 'bars'; readonly value: number }
  readonly rank: number
}

/** Turns a second of the engine. */
export const turnsPerSec = (rpm: number): number => rpm / 60

/** Electrical frequency of a machine: rpm/60 · drive ratio · pole pairs (P·N/120 with P poles). */
export const electricalHz = (q: {
  readonly rpm: number
  readonly driveRatio: number
  readonly polePairs: number
}): number => turnsPerSec(q.rpm) * q.driveRatio * q.polePairs

/** Sparks a second of a four-stroke engine: rpm/60 · cylinders/2. */
export const sparksPerSec = (rpm: number, cylinders: number): number => (turnsPerSec(rpm) * cylinders) / 2

/** A rectifier makes its pulse number of humps in each period of the bus. */
export const rectifierHz = (busHz: number, pulses: number): number => busHz * pulses

/** How likely before anything is compared: usual sources first, ranges that take anything last. Practice. */
const USUAL: Readonly<Record<ExplanationId, number>> = {
  'alternator-ripple': 0,
  'alternator-open-diode': 0.4,
  'alternator-six-phase': 0.5,
  ignition: 0.2,
  'engine-turns': 0.6,
  commutator: 0.5,
  'bus-hum': 0,
  rectifier: 0,
  'rectifier-open-diode': 0.4,
  'mains-50': 0.3,
  'mains-60': 0.3,
  phone: 0.5,
  'strobe-charger': 3,
  dimmer: 3.2,
}

const MISSING_COSTS = 1
const MOST_PULSES = [6, 12, 18] as const

/**
 * Every explanation that lies within the error of the tone, best first: how far off it is in that error, plus how usual it
 * is, plus what would have to be taken for it.
 */
export function explanationsOf(known: Known): readonly Explanation[] {
  return [...engine(known), ...bus(known), ...fixed(known), ...ranges(known)].sort((a, b) => a.rank - b.rank)
}

type Candidate = Omit<Explanation, 'rank' | 'offFrac'>

function judged({ toneHz, offFrac }: Known, candidates: readonly Candidate[]): readonly Explanation[] {
  return candidates.flatMap((one) => {
    const off = one.hz / toneHz - 1
    if (Math.abs(off) > offFrac) return []
    const cost = one.missing === undefined ? 0 : MISSING_COSTS
    return [{ ...one, offFrac: off, rank: Math.abs(off) / offFrac + USUAL[one.id] + cost }]
  })
}

function engine(known: Known): readonly Explanation[] {
  const { rpm, driveRatio, polePairs, cylinders, bars, toneHz } = known
  if (rpm === undefined) return []
  const turns = turnsPerSec(rpm)
  const found: Candidate[] = []
  const machine = (id: ExplanationId, humps: number) => {
    if (driveRatio === undefined) return
    const one = turns * driveRatio * humps
    if (polePairs !== undefined) found.push({ id, follows: 'rpm', hz: one * polePairs, order: humps * polePairs })
    else {
      const needed = Math.round(toneHz / one)
      if (needed >= 2 && needed <= 12)
        found.push({
          id,
          follows: 'rpm',
          hz: one * needed,
          order: humps * needed,
          missing: { what: 'polePairs', value: needed },
        })
    }
  }
  machine('alternator-ripple', ALTERNATOR_PULSES)
  machine('alternator-open-diode', 1)
  machine('alternator-open-diode', 2)
  machine('alternator-six-phase', 12)
  const whole = (
    id: ExplanationId,
    each: number,
    value: number | undefined,
    what: 'cylinders' | 'bars',
    span: readonly [number, number],
  ) => {
    if (value !== undefined) found.push({ id, follows: 'rpm', hz: each * value, order: value })
    else {
      const needed = Math.round(toneHz / each)
      if (needed >= span[0] && needed <= span[1] && (what === 'bars' || needed % 2 === 0))
        found.push({ id, follows: 'rpm', hz: each * needed, order: needed, missing: { what, value: needed } })
    }
  }
  whole('ignition', turns / 2, cylinders, 'cylinders', [2, 12])
  if (driveRatio !== undefined) whole('commutator', turns * driveRatio, bars, 'bars', [12, 80])
  for (const order of [1, 2]) found.push({ id: 'engine-turns', follows: 'rpm', hz: turns * order, order })
  return judged(known, found)
}

function bus(known: Known): readonly Explanation[] {
  const { busHz, pulses, toneHz, offFrac } = known
  // a bus that varies: anywhere between its least and its most
  const [least, most] = [Math.min(...busHz), Math.max(...busHz)]
  if (busHz.length === 0) return []
  const at = (id: ExplanationId, order: number): readonly Candidate[] => {
    if (toneHz * (1 + offFrac) < least * order || toneHz * (1 - offFrac) > most * order) return []
    const hz = Math.min(Math.max(toneHz, least * order), most * order)
    return [{ id, follows: 'bus', hz, order }]
  }
  const numbers = pulses === undefined ? MOST_PULSES : [pulses]
  return judged(known, [
    ...[1, 2, 3].flatMap((order) => at('bus-hum', order)),
    ...numbers.flatMap((order) => at('rectifier', order)),
    // one hump missing leaves the bus and its double; the octave above the bus is the hum itself
    ...(pulses === undefined ? [] : [1, 2].flatMap((order) => at('rectifier-open-diode', order))),
  ])
}

/** Bursts a second of one sort of mobile phone. */
export const PHONE_HZ = PHONE_BURSTS.hz
/** Hum of ground power and hangars, least to most. */
export const MAINS_HZ = { low: 50, high: 60 } as const
/** Pitch of the charger of a strobe between two flashes: from, to. */
export const STROBE_CHARGER_HZ = [1e3, 20e3] as const
/** Where dimmers, heaters and regulators switch: from, to. */
export const DIMMER_HZ = [100, 20e3] as const
/** Humps of a three-phase rectifier in each period. */
export const ALTERNATOR_PULSES = 6

function fixed(known: Known): readonly Explanation[] {
  const mains = (
    [
      ['mains-50', MAINS_HZ.low],
      ['mains-60', MAINS_HZ.high],
    ] as const
  ).flatMap(([id, hz]) => [1, 2, 3].map((order): Candidate => ({ id, follows: 'fixed', hz: hz * order, order })))
  const phone = [1, 2, 3].map((order): Candidate => ({ id: 'phone', follows: 'device', hz: PHONE_HZ * order, order }))
  return judged(known, [...mains, ...phone])
}

/** What takes any pitch of a range: never first where something has a formula. */
function ranges(known: Known): readonly Explanation[] {
  const { toneHz } = known
  const inside = (id: ExplanationId, follows: Follows, from: number, to: number): readonly Candidate[] =>
    toneHz >= from && toneHz <= to ? [{ id, follows, hz: toneHz, order: 1 }] : []
  return judged(known, [
    ...inside('strobe-charger', 'device', ...STROBE_CHARGER_HZ),
    ...inside('dimmer', 'load', ...DIMMER_HZ),
  ])
}
