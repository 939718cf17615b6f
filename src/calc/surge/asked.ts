/** What a surge is asked about, as plain values in SI units and °C; undefined = not known. */
import type { Spread } from '../bounds/worst-case.ts'
import type { PulseAsked } from './pulse.ts'

export type SurgeAsked = PulseAsked & {
  readonly polarity: string
  readonly surgeMode: string
  readonly standoffV: number | undefined
  readonly breakdownV: number | undefined
  readonly ratedPulseW: number | undefined
  readonly dynamicOhm: number | undefined
  readonly suppressorType: string
  readonly suppressorPlace: string
  readonly holdingA: number | undefined
  readonly bidirectional: boolean
  readonly seriesCount: number
  readonly suppressorF: number | undefined
  readonly suppressorLeadH: number
  readonly ambientC: number
  readonly derateZeroC: number
  readonly topology: string
  readonly placement: string
  readonly capacitanceF: number | undefined
  readonly capacitance2F: number | undefined
  readonly inductanceH: number | undefined
  readonly inductance2H: number | undefined
  readonly dcrOhm: number
  readonly loadOhm: number
  readonly loadF: number | undefined
  readonly lineOhm: number | undefined
  readonly lineH: number | undefined
  readonly withstandV: number | undefined
  readonly pairWithstandV: number | undefined
  readonly insulationWithstandV: number | undefined
  readonly capacitorWithstandV: number | undefined
  readonly busMaxV: number | undefined
  readonly busMinV: number | undefined
  readonly busSourceOhm: number
  readonly lineKind: string | undefined
  readonly supplyCategory: string | undefined
  readonly existingF: number | undefined
  readonly bitRateHz: number | undefined
  readonly driverEdgeSec: number | undefined
  readonly signalOhm: number | undefined
  readonly ownCeilingF: number | undefined
  readonly usefulHz: number | undefined
  readonly ownLossDb: number | undefined
  readonly ownPhaseDeg: number | undefined
  readonly toleranceFrac: Spread['tolerance']
  readonly temperatureFrac: number
  readonly biasFrac: number
  readonly ageingDecades: number
  readonly ageingFracPerDecade: number
}

/** Spread of the filter's capacitors. */
export const spreadOf = (asked: SurgeAsked): Spread => ({
  tolerance: asked.toleranceFrac,
  temperatureFrac: asked.temperatureFrac,
  biasFrac: asked.biasFrac,
  ageingDecades: asked.ageingDecades,
  ageingFracPerDecade: asked.ageingFracPerDecade,
})
