/** The resonance check in numbers. */
import {
  CABLE_ENDS,
  type CableEnds,
  cableHz,
  cableLengthM,
  cableOrders,
  partnerOf,
  resonantHz,
} from '../../resonance/resonances.ts'
import type { Figures } from '../../types.ts'
import type { ResonanceGiven } from './inputs.ts'

export type Resonating = {
  readonly id: 'cable' | 'stretch' | 'part' | 'box'
  readonly hz: number
  readonly order: number
}

export type ResonanceFigures = Figures & {
  readonly ends: CableEnds
  readonly found: readonly Resonating[]
}

const MOST_ORDERS = 5
const TOP_HZ = 2e9

export function resonanceFigures(given: ResonanceGiven): ResonanceFigures {
  const { seenHz, cableM, velocityFrac, spacingM, capacitanceF, inductanceH, strapH, chassisF } = given
  const ends = CABLE_ENDS.find((one) => one === given.ends) ?? 'both-grounded'
  const lowest = cableM === undefined ? undefined : cableHz(cableM, ends, velocityFrac)
  // between two grounds on its way a stretch is grounded at both ends
  const stretch = spacingM === undefined ? undefined : cableHz(spacingM, 'both-grounded', velocityFrac)
  const part =
    capacitanceF === undefined || inductanceH === undefined ? undefined : resonantHz(capacitanceF, inductanceH)
  const box = strapH === undefined || chassisF === undefined ? undefined : resonantHz(chassisF, strapH)
  const orders = (id: 'cable' | 'stretch', hz: number | undefined, of: CableEnds): readonly Resonating[] =>
    hz === undefined
      ? []
      : cableOrders(hz, of, Math.max(TOP_HZ, hz), MOST_ORDERS).map((at) => ({ id, hz: at, order: Math.round(at / hz) }))
  const found = [
    ...orders('cable', lowest, ends),
    ...orders('stretch', stretch, 'both-grounded'),
    ...(part === undefined ? [] : [{ id: 'part', hz: part, order: 1 } as const]),
    ...(box === undefined ? [] : [{ id: 'box', hz: box, order: 1 } as const]),
  ]
  const isSeen = seenHz !== undefined
  const values: Readonly<Record<string, number | undefined>> = {
    cableHz: lowest,
    stretchHz: stretch,
    partHz: part,
    boxHz: box,
    seenCableM: isSeen ? cableLengthM(seenHz, ends, velocityFrac) : undefined,
    seenInductanceH: isSeen && capacitanceF !== undefined ? partnerOf(seenHz, capacitanceF) : undefined,
    seenCapacitanceF: isSeen && inductanceH !== undefined ? partnerOf(seenHz, inductanceH) : undefined,
    seenStrapH: isSeen && chassisF !== undefined ? partnerOf(seenHz, chassisF) : undefined,
  }
  return {
    verdict: found.length > 0 || isSeen ? 'ok' : 'unknown',
    ends,
    found,
    values: Object.fromEntries(
      Object.entries(values).filter(
        (entry): entry is [string, number] => entry[1] !== undefined && Number.isFinite(entry[1]),
      ),
    ),
    bounds: [],
    rungs: [],
  }
}
