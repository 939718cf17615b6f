/** The suppressor against its own line, in words. */
import { COLD_SOAK_C } from '../../../../reference/suppressors.ts'
import type { SuppressorReason } from '../../../surge/judge.ts'
import type { LineReason } from '../../../surge/line.ts'
import { A, show, V } from './show.ts'

const OTHERS: readonly SuppressorReason['is'][] = [
  'rating-missing',
  'no-rating-left',
  'rating-too-long',
  'rating',
  'not-in-the-way',
  'collapse-unknown',
]
export const isLineReason = (reason: SuppressorReason): reason is LineReason => !OTHERS.includes(reason.is)

const COLD = `Cold, at ${show(COLD_SOAK_C, 'temperature')},`

/** One reason, with its numbers. */
export function lineSentence(reason: LineReason): string {
  switch (reason.is) {
    case 'line-unknown':
      return 'Name the line, or enter its highest peak: what it does by itself must not make the suppressor conduct.'
    case 'low-unknown':
      return 'A unidirectional part conducts below chassis: name the line, or enter its lowest peak (0 if it never goes there).'
    case 'conducts-steady':
      return steadySentence(reason)
    case 'conducts-bus':
      return busSentence(reason)
    case 'category-missing':
      return `Cold, it would conduct through: ${reason.surges
        .map(
          ({ row, energyJ }) =>
            `${row.label} (${V(row.peakV)} for ${show(row.forSec, 'time')}, ${show(energyJ, 'energy')})`,
        )
        .join('; ')}. Choose what the supply is built to, or enter the highest line peak that applies to you.`
    case 'category-empty':
      return 'No long surge of that category is known here for this supply: enter the highest line peak from its standard.'
    case 'below-own':
      return belowOwnSentence(reason)
    case 'below-kind':
      return `${V(reason.typedV)} is entered as the peak of the line, and lines of this kind may go to ${V(reason.kindV)}, where the part would conduct: it stands only while every box on the line stays within what was entered.`
    case 'leaks':
      return `The line peak of ${V(reason.peakV)} is above the stand-off of ${V(reason.standoffV)}: leakage, though no breakdown.`
    case 'stands':
      return standsSentence(reason)
    case 'holding-missing':
      return 'Enter the holding current of the crowbar: above it the line itself keeps it on.'
    case 'crowbar-held':
      return reason.powered
        ? `Once fired it stays on: the line feeds it ${A(reason.amps)}, above its holding current of ${A(reason.holdingA)}. Never on a supply that can hold it.`
        : `Once fired the driver can hold it: ${A(reason.amps)} against a holding current of ${A(reason.holdingA)}; it lets go only when the signal goes back through zero.`
    case 'wears':
      return `A varistor wears with each pulse and at last fails short${reason.powered ? ': a breaker or fuse ahead of it must clear that' : ''}. Count its pulses and change it.`
  }
}

function belowOwnSentence({ typedV, ownV, verdict }: Extract<LineReason, { is: 'below-own' }>): string {
  const said = `${V(typedV)} is entered as the highest line peak, and this supply reaches ${V(ownV)} by itself`
  const meant = 'An instantaneous peak is meant, with every surge, not volts rms'
  return verdict === 'ok'
    ? `${said}: that counts. ${meant}.`
    : `${said}, where the part would conduct, or in its long surges. ${meant}; a supply of fewer volts is another kind of line.`
}

function steadySentence({ peakV, blocking, forward, verdict }: Extract<LineReason, { is: 'conducts-steady' }>): string {
  if (forward)
    return `The line goes to ${V(peakV)} by itself: a unidirectional part conducts forward there, all the time. Use a bidirectional one.`
  if (verdict === 'marginal')
    return `${COLD} it breaks down from ${V(blocking.highV)} and conducts at the line’s own ${V(peakV)}.`
  return `The line goes to ${V(peakV)} by itself, and the part breaks down from ${V(blocking.highV)}: it would conduct all the time.`
}

function busSentence(reason: Extract<LineReason, { is: 'conducts-bus' }>): string {
  const { through, forSec, mayW, peakV, coldV, surge, cold } = reason
  const name = surge ? `${surge.label}, ${V(peakV)}` : `a bus peak of ${V(peakV)}`
  const takes = `${show(through.currentA, 'current', 4)}, ${show(through.powerW, 'power', 4)}, ${show(through.energyJ, 'energy', 4)} in ${show(forSec, 'time')} through ${show(reason.busOhm, 'resistance')}`
  const may = mayW === undefined ? '' : `; it may carry about ${show(mayW, 'power')} for so long`
  if (cold)
    return `${COLD} it breaks down from ${V(coldV)} and conducts at ${surge ? name : `the bus peak of ${V(peakV)}`}: ${takes}${may}.`
  return `It conducts through ${name}: ${takes}${may}. Stand the surge off, or put a series limiter ahead.`
}

function standsSentence({ peaks, blocking }: Extract<LineReason, { is: 'stands' }>): string {
  const { highV = 0, lowV = 0 } = peaks
  const line = lowV < 0 ? `between ${V(lowV)} and ${V(highV)}` : `up to ${V(highV)}`
  const part = `between ${V(blocking.lowV)} and ${V(blocking.highV)}`
  return `The line stays ${line}; at any temperature the part blocks ${part}.`
}
