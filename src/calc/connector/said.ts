/** What a contact's window says in the schedule, one sentence each. */
import { liftClause, liftOf } from '../checks/window/gain.ts'
import { isHeldReason } from '../checks/window/held.ts'
import { windowInputs } from '../checks/window/inputs.ts'
import { windowSaid } from '../checks/window/sentence.ts'
import { HELD_WORDS } from '../explain/held-words.ts'
import { listed } from '../explain/sentence.ts'
import { asAssumed } from '../line/evaluate.ts'
import { howOf, nameOf } from '../line/missing.ts'
import { hasCapacitor, TOPOLOGY_LABEL } from '../network/circuit.ts'
import { formatEstimate, formatExact } from '../quantity/format.ts'
import type { Verdict } from '../types.ts'
import { capital, VERDICT_WORDS } from '../verdict.ts'
import type { OpenAnswer } from './contact-line.ts'
import type { ContactPart } from './contact-row.ts'

export type ContactSaid = { readonly headline: string; readonly needs?: string; readonly how?: string }

/** The sentence of a window; where a yes would rest on what was assumed, the fact to find out. */
export function saidOf({ row, setup, given, restsOn = [] }: OpenAnswer): ContactSaid {
  const said = windowSaid({ given, row, setup, verdict: row.verdict, openers: [], lift: liftOfYes({ row, setup }) })
  if (restsOn.length === 0)
    return {
      headline: said.headline,
      ...(said.needs === undefined ? {} : { needs: said.needs.key, how: said.needs.sentence }),
    }
  const inputs = windowInputs.filter(({ key }) => restsOn.includes(key))
  const [first] = inputs
  return {
    headline: `Not known: needs ${listed(inputs.map(nameOf))}. ${asAssumed(said, row.verdict)}`,
    ...(first === undefined ? {} : { needs: first.key, how: howOf(first) }),
  }
}

/** A part as it is written on a label: "Pi with 4.7 nF and 1 µH". */
export function partWords({ topology, valueF, inductanceH }: ContactPart): string {
  const sizes = [
    ...(valueF === undefined ? [] : [formatExact(valueF, 'capacitance')]),
    ...(inductanceH === undefined ? [] : [formatExact(inductanceH, 'inductance')]),
  ]
  return topology === 'C' ? listed(sizes) : `${TOPOLOGY_LABEL[topology]} with ${listed(sizes)}`
}

/** The user's own part with the limits it was judged by. */
export function chosenWords(part: ContactPart, verdict: Verdict, shown: OpenAnswer): string {
  const { least, upper } = shown.row
  if (!hasCapacitor(part.topology)) return `${partWords(part)}, your choice: ${VERDICT_WORDS[verdict]}.`
  const from =
    least !== undefined && Number.isFinite(least.markedF) && least.markedF > 0
      ? [`the noise needs ${formatEstimate(least.markedF, 'capacitance', 'least')}`]
      : []
  const to = upper === undefined ? [] : [`at most ${formatEstimate(upper.markedF, 'capacitance', 'most')}`]
  const limits = [...from, ...to].join(', ')
  return `${partWords(part)}, your choice: ${VERDICT_WORDS[verdict]}.${limits === '' ? '' : ` ${capital(limits)}.`}${besideWords(shown)}`
}

/**
 * Behind the sentence of a part that meets its need by the resonance with its lead and bond alone, or without a proof, or
 * lifts the noise elsewhere.
 */
export const besideWords = ({ row, setup }: OpenAnswer): string => {
  const reason = row.reasons.find(isHeldReason)
  const lift = liftOfYes({ row, setup })
  const words = [...(reason ? [HELD_WORDS[reason]] : []), ...(lift ? [liftClause(lift)] : [])]
  return words.map((one) => (one === undefined ? '' : ` ${capital(one)}.`)).join('')
}

/** What is not known has no part yet that could lift anything. */
const liftOfYes = ({ row, setup }: Pick<OpenAnswer, 'row' | 'setup'>) =>
  row.verdict === 'unknown' ? undefined : liftOf(row, setup)
