/** Where the part that is shown resonates with what stands around it and lifts the noise: told, since the needs lie elsewhere. */
import { circuitOf, equalParts, type Surroundings } from '../../bounds/surroundings.ts'
import { hasCapacitor } from '../../network/circuit.ts'
import { type Ends, worstGainOver } from '../../network/shape.ts'
import { formatEstimate, formatQuantity } from '../../quantity/format.ts'
import type { Finding } from '../../types.ts'
import { cornersOf } from '../corners.ts'
import type { WindowRow } from './row.ts'
import type { WindowSetup } from './setup.ts'

/** Less than this is lost among what the noise ends are known to. Practice. */
const TOLD_FROM_DB = 3
/** Many corners are looked at for one answer: what is told of them is a resonance that is felt over some per cent at least. */
const CORNER_POINTS_PER_DECADE = 40

/** A gain, and where it lies. */
type Gain = { readonly gainDb: number; readonly atHz: number }

export type Lift = {
  /** of the part as marked; undefined where it is not worth telling */
  readonly marked: Gain | undefined
  /** the most of it, with each part at either end of its tolerance on its own */
  readonly worst: Gain
}

/**
 * What the part that is shown lifts the noise by, its damping counted, with nothing more on the line, the coil at its least
 * where it is as marked, and from the worst of all sources. Undefined where that is nothing worth telling, or no part holds.
 */
export function liftOf(row: WindowRow, { around, inductanceH, elements, spread }: WindowSetup): Lift | undefined {
  const { topology, proposal, need } = row
  // a bead is known at the frequencies of its needs alone
  if (around === undefined || elements.bead !== undefined || row.verdict === 'fails') return undefined
  const markedF = proposal?.valueF ?? 0
  if (hasCapacitor(topology) && markedF === 0 && need.is !== 'choke-alone') return undefined
  const place: Surroundings = { ...around, topology }
  const plain = equalParts(place, markedF, inductanceH.least)
  const isDamped = elements.damper !== undefined && markedF > 0
  const circuit = circuitOf(place, isDamped ? { ...plain, damper: elements.damper.marked } : plain)
  const all = place.sources.map((source): Ends => ({ source, load: place.load }))
  const marked = worstGainOver(circuit, all, TOLD_FROM_DB)
  const worst = cornersOf(circuit, spread, elements, place.choke).reduce<Gain | undefined>(
    (before, corner) => worstGainOver(corner, all, before?.gainDb ?? TOLD_FROM_DB, CORNER_POINTS_PER_DECADE) ?? before,
    marked,
  )
  return worst && { marked, worst }
}

const lifted = ({ gainDb }: Gain): string => formatEstimate(gainDb, 'decibel', 'least')
const near = ({ atHz }: Gain): string => formatQuantity(atHz, 'frequency', 3)

/** The part as marked, where an end of its tolerance does no more that could be read. */
const alike = ({ marked, worst }: Lift): Gain | undefined =>
  marked !== undefined && lifted(marked) === lifted(worst) ? marked : undefined

/** As the answer names it beside the part. */
export function liftClause(lift: Lift): string {
  const same = alike(lift)
  return `it lifts the noise by ${same ? '' : 'up to '}${lifted(lift.worst)} near ${near(same ?? lift.worst)}`
}

export function liftFinding(lift: Lift | undefined): readonly Finding[] {
  if (lift === undefined) return []
  const { marked, worst } = lift
  const how =
    marked === undefined
      ? `by up to ${lifted(worst)}, with parts at an end of their tolerance`
      : alike(lift)
        ? `by ${lifted(marked)}`
        : `by ${lifted(marked)}, up to ${lifted(worst)} near ${near(worst)} with parts at an end of their tolerance`
  return [
    {
      verdict: 'marginal',
      sentence: `Near ${near(marked ?? worst)} it resonates between these ends and lifts the noise ${how}: nothing may be there that matters, or damp it.`,
    },
  ]
}
