/** The answer of the pair check in one sentence. */
import { notKnown, type Said } from '../../explain/sentence.ts'
import type { ChokedPair, WorstConversion } from '../../network/choked-pair.ts'
import { ratioDb } from '../../pair.ts'
import { formatEstimate, formatExact } from '../../quantity/format.ts'
import { hasDeadLeg, isOneWire, type PairFigures } from './figures.ts'
import { type PairGiven, pairInputs } from './inputs.ts'

/** What is converted at most is brought up: nothing may be above what is printed. */
const atMost = (ratio: number): string => formatEstimate(ratioDb(ratio), 'decibel', 'least')

export function pairSaid(
  given: PairGiven,
  { hardest: at, verdict }: PairFigures,
  circuit: ChokedPair,
  worst: WorstConversion,
): Said {
  if (isOneWire(given))
    return notKnown(
      pairInputs,
      'chokeWires',
      'every wire of the circuit through the choke. Around one wire it is an inductor.',
    )
  if (worst.ratio === 0)
    return {
      headline:
        'Equal legs turn nothing into signal: with care. Real parts are never equal: enter both ends of their tolerance.',
    }
  const number = numberWords(at, worst)
  if (verdict !== 'marginal') return { headline: `${number}.`, answers: 'number' }
  const why = hasDeadLeg(circuit)
    ? 'One leg has no capacitor: worse than none on both'
    : `The choke rings with the capacitors near ${formatEstimate(worst.hz ?? 0, 'frequency')}: more signal than there is common mode`
  return { headline: `${number}: with care. ${why}.` }
}

function numberWords(at: PairFigures['hardest'], { ratio, hz }: WorstConversion): string {
  const where = hz === undefined ? ', rising with frequency' : ` near ${formatEstimate(hz, 'frequency')}`
  const most = `at most ${atMost(ratio)}${where}`
  if (at === undefined || at.ratio === 0) return `Common mode becomes signal, ${most}`
  return `${atMost(at.ratio)} of the common mode becomes signal at ${formatExact(at.hz, 'frequency')}; ${most}`
}
