/** What a meter reads at the connector of a line, with the power off. */
import { formatQuantity } from '../../../calc/quantity/format.ts'
import type { LineCard, MeterOhms, NotKnown } from '../../../reference/line-cards.ts'
import type { LineKind } from '../../../reference/line-kinds.ts'
import type { BookRow } from '../types.ts'

const show = (si: number): string => formatQuantity(si, 'resistance')

/** Says in so many words that a thing is not known, and how it is found out. */
export const notKnownText = ({ what, measure }: NotKnown): string => `Not known: ${what}. Measure it so: ${measure}.`

function spanText(leastOhm: number | undefined, mostOhm: number | undefined): string {
  if (leastOhm === undefined) return mostOhm === undefined ? '' : `At most ${show(mostOhm)}`
  if (mostOhm === undefined) return `${show(leastOhm)} or more`
  return leastOhm === mostOhm ? show(leastOhm) : `${show(leastOhm)} to ${show(mostOhm)}`
}

/** Ohms of so many ends of a line in parallel, each with the line's own impedance: Z0/n. */
export const endsOhm = (z0Ohm: number, count: 1 | 2): number => z0Ohm / count

function rowOf(label: string, reads: MeterOhms, { z0Ohm, signalOhm }: LineKind): BookRow {
  switch (reads.is) {
    case 'not-known':
      return { label, text: notKnownText(reads) }
    case 'span':
      return { label, text: `${spanText(reads.leastOhm, reads.mostOhm)}, ${reads.at}.`, source: reads.source }
    case 'terminations':
      return z0Ohm === undefined
        ? { label, text: notKnownText(ENDS_UNKNOWN) }
        : { label, text: `${show(endsOhm(z0Ohm, reads.ends))}, ${reads.at}.`, source: reads.source }
    case 'signal-ohm':
      return signalOhm === undefined
        ? { label, text: notKnownText(ENDS_UNKNOWN) }
        : {
            label,
            text: `${spanText(signalOhm.leastOhm ?? signalOhm.ohm, signalOhm.mostOhm ?? signalOhm.ohm)}, ${reads.at}.`,
            source: signalOhm.source,
          }
  }
}

const ENDS_UNKNOWN: NotKnown = {
  is: 'not-known',
  what: 'the ohms of its ends',
  measure: 'on a good aircraft, power off; write them down',
}

/** The box alone, the line with its far ends on, and how it is measured. */
export const ohmRows = (card: LineCard, kind: LineKind): readonly BookRow[] => [
  ...card.box.map((reads) => rowOf('Box alone', reads, kind)),
  ...card.line.map((reads) => rowOf('Line, ends on', reads, kind)),
  { label: 'How to measure', text: card.measure.text, source: card.measure.source },
]
