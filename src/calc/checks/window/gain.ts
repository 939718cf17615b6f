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

/**
 * With nothing more on the line, the part as marked and the coil at its least; then each part at either end of its tolerance
 * on its own. The worst of all sources is named.
 */
export function gainFinding(
  row: WindowRow,
  { around, inductanceH, elements, spread }: WindowSetup,
): readonly Finding[] {
  const { topology, proposal, need } = row
  // a bead is known at the frequencies of its needs alone
  if (around === undefined || elements.bead !== undefined || row.verdict === 'fails') return []
  const markedF = proposal?.valueF ?? 0
  if (hasCapacitor(topology) && markedF === 0 && need.is !== 'choke-alone') return []
  const place: Surroundings = { ...around, topology }
  const circuit = circuitOf(place, equalParts(place, markedF, inductanceH.least))
  const all = place.sources.map((source): Ends => ({ source, load: place.load }))
  const marked = worstGainOver(circuit, all, TOLD_FROM_DB)
  const worst = cornersOf(circuit, spread, elements, place.choke).reduce(
    (before, corner) => worstGainOver(corner, all, before?.gainDb ?? TOLD_FROM_DB, CORNER_POINTS_PER_DECADE) ?? before,
    marked,
  )
  if (worst === undefined) return []
  const most = formatEstimate(worst.gainDb, 'decibel', 'least')
  const asMarked = marked && formatEstimate(marked.gainDb, 'decibel', 'least')
  const how =
    asMarked === undefined
      ? `by up to ${most}, with parts at an end of their tolerance`
      : asMarked === most
        ? `by ${most}`
        : `by ${asMarked}, up to ${most} with parts at an end of their tolerance`
  return [
    {
      verdict: 'marginal',
      sentence: `Near ${formatQuantity((marked ?? worst).atHz, 'frequency', 3)} it resonates between these ends and lifts the noise ${how}: nothing may be there that matters, or damp it.`,
    },
  ]
}
