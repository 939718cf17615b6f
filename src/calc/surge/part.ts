/** The suppressor from what was entered: one part, a stack, two legs' parts in series, or none in the way at all. */
import { FORWARD, SUPPRESSOR_TYPES, type SuppressorType } from '../../reference/suppressors.ts'
import type { SurgeAsked } from './asked.ts'
import type { Suppressor } from './circuit.ts'
import { breakdownOfClass, dynamicOhmOfClass, inSeries } from './suppressor.ts'
import { type Refusing, refuse, type Waiting } from './wanted.ts'

/** A suppressor with its spread; a typed breakdown has none. */
export type FittedPart = {
  readonly type: SuppressorType
  readonly place: 'leg' | 'pair'
  readonly leastV: number
  readonly mostV: number
  readonly fromClass: boolean
  readonly dynamicOhm: number
  readonly ohmFromClass: boolean
  readonly standoffV: number | undefined
  readonly bidirectional: boolean
  readonly capacitanceF: number
  readonly leadH: number
}

export type PartAnswer =
  | { readonly is: 'none' }
  | { readonly is: 'part'; readonly part: FittedPart }
  | Waiting
  | Refusing

/** Smaller than any piece of wire: none at all, so that no rate overflows. */
export const faradsOf = (farads: number | undefined): number => (farads === undefined || farads < 1e-18 ? 0 : farads)
export const henriesOf = (henries: number | undefined): number =>
  henries === undefined || henries < 1e-15 ? 0 : henries

export const isSuppressorType = (text: string): text is SuppressorType => text in SUPPRESSOR_TYPES

/** The part as entered, between its own two ends. */
export function partOf(asked: SurgeAsked): PartAnswer {
  const { standoffV, breakdownV } = asked
  if (standoffV === undefined && breakdownV === undefined) return { is: 'none' }
  if (standoffV !== undefined && breakdownV !== undefined && standoffV > breakdownV)
    return refuse({ code: 'above-breakdown', key: 'standoffV', standoffV, breakdownV })
  const spread = breakdownV === undefined ? breakdownOfClass(standoffV ?? 0) : { leastV: breakdownV, mostV: breakdownV }
  const classOhm =
    asked.ratedPulseW === undefined
      ? undefined
      : dynamicOhmOfClass({ mostBreakdownV: spread.mostV, ratedPulseW: asked.ratedPulseW })
  const dynamicOhm = asked.dynamicOhm ?? classOhm
  if (dynamicOhm === undefined) return { is: 'missing', wanted: [['dynamicOhm', 'ratedPulseW']] }
  return {
    is: 'part',
    part: {
      ...spread,
      type: isSuppressorType(asked.suppressorType) ? asked.suppressorType : 'avalanche',
      place: asked.suppressorPlace === 'pair' ? 'pair' : 'leg',
      fromClass: breakdownV === undefined,
      dynamicOhm,
      ohmFromClass: asked.dynamicOhm === undefined,
      standoffV,
      bidirectional: asked.bidirectional,
      capacitanceF: faradsOf(asked.suppressorF),
      leadH: henriesOf(asked.suppressorLeadH),
    },
  }
}

/**
 * The fields as those of the whole stack: volts, ohms and power of one part times `seriesCount`, capacitance divided by
 * it. What was left empty stays empty. Source: equal parts share the current (derived); preferred over parallel (memory).
 */
export function asOnePart(asked: SurgeAsked): SurgeAsked {
  const { seriesCount, standoffV, breakdownV, dynamicOhm, ratedPulseW, suppressorF } = asked
  if (seriesCount === 1) return asked
  const whole = inSeries(
    {
      breakdownV: breakdownV ?? 0,
      dynamicOhm: dynamicOhm ?? 0,
      ratedPulseW: ratedPulseW ?? 0,
      capacitanceF: suppressorF ?? 0,
    },
    seriesCount,
  )
  return {
    ...asked,
    standoffV: standoffV === undefined ? undefined : standoffV * seriesCount,
    breakdownV: breakdownV === undefined ? undefined : whole.breakdownV,
    dynamicOhm: dynamicOhm === undefined ? undefined : whole.dynamicOhm,
    ratedPulseW: ratedPulseW === undefined ? undefined : whole.ratedPulseW,
    suppressorF: suppressorF === undefined ? undefined : whole.capacitanceF,
  }
}

/**
 * Two parts, each from its leg to chassis, as the surge between the legs meets them: one breaks down while the other
 * conducts forward, or breaks down too where it is bidirectional. Derived.
 */
export function betweenLegs(part: FittedPart): FittedPart {
  const second = part.bidirectional
    ? { leastV: part.leastV, mostV: part.mostV, ohm: part.dynamicOhm }
    : { leastV: FORWARD.dropV, mostV: FORWARD.dropV, ohm: FORWARD.ohm }
  return {
    ...part,
    leastV: part.leastV + second.leastV,
    mostV: part.mostV + second.mostV,
    dynamicOhm: part.dynamicOhm + second.ohm,
    bidirectional: true,
    capacitanceF: part.capacitanceF / 2,
    leadH: 2 * part.leadH,
  }
}

/** The suppressor at the end of its spread that makes most volts, and at the one that makes most current. */
export function variantsOf(part: FittedPart | undefined): readonly (Suppressor | undefined)[] {
  if (!part) return [undefined]
  const { dynamicOhm, bidirectional, capacitanceF, leadH } = part
  const at = (breakdownV: number): Suppressor => ({ breakdownV, dynamicOhm, bidirectional, capacitanceF, leadH })
  return part.leastV === part.mostV ? [at(part.mostV)] : [at(part.mostV), at(part.leastV)]
}
