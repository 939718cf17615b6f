/** Several equal suppressors: in series as one, in parallel as a warning with numbers. */
import { MOST_BREAKDOWN_RATIO } from '../../reference/suppressors.ts'
import type { SurgeGiven } from '../checks/surge/inputs.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Finding } from '../types.ts'
import type { FittedPart } from './setup.ts'
import { inParallelA, inSeries } from './suppressor.ts'

/**
 * The fields as those of the whole stack: volts, ohms and power of one part times `seriesCount`, capacitance divided by
 * it. What was left empty stays empty. Source: equal parts share the current (derived); preferred over parallel (memory).
 */
export function asOnePart(given: SurgeGiven): SurgeGiven {
  const { seriesCount = 1, standoffV, breakdownV, dynamicOhm, ratedPulseW, suppressorF } = given
  if (seriesCount === 1) return given
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
    ...given,
    standoffV: standoffV === undefined ? undefined : standoffV * seriesCount,
    breakdownV: breakdownV === undefined ? undefined : whole.breakdownV,
    dynamicOhm: dynamicOhm === undefined ? undefined : whole.dynamicOhm,
    ratedPulseW: ratedPulseW === undefined ? undefined : whole.ratedPulseW,
    suppressorF: suppressorF === undefined ? undefined : whole.capacitanceF,
  }
}

/** What the stack amounts to, and how two parts in parallel would share the current that one cannot carry. */
export function stackFindings(q: {
  readonly seriesCount: number
  readonly part: FittedPart | undefined
  readonly peakA: number
  readonly isOverloaded: boolean
}): readonly Finding[] {
  const { seriesCount, part, peakA, isOverloaded } = q
  if (!part) return []
  const found: Finding[] = []
  if (seriesCount > 1)
    found.push({
      verdict: 'ok',
      sentence: `${seriesCount} equal parts in series: together ${volts(part.mostV)} breakdown and ${formatQuantity(part.dynamicOhm, 'resistance')}; each takes an equal share of the power.`,
    })
  if (isOverloaded) {
    const least = part.fromClass ? part.leastV : part.mostV / MOST_BREAKDOWN_RATIO.value
    const [first, second] = inParallelA({
      totalA: peakA,
      breakdownV: [least, part.mostV],
      dynamicOhm: part.dynamicOhm,
    }).map(amps)
    found.push({
      verdict: 'ok',
      sentence: `Two such parts in parallel would not halve it: over the spread of their breakdown they share ${amps(peakA)} as ${first} and ${second}. Parts in series, or one larger part, share surely.`,
    })
  }
  return found
}

const volts = (si: number) => formatQuantity(si, 'voltage')
const amps = (si: number) => formatQuantity(si, 'current')
