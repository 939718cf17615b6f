/** The two legs of a pair beside each other: where one has another part, or none, common mode turns into signal. */
import { CAPACITOR_COUNT } from '../network/circuit.ts'
import { worstConversionRatio } from '../pair.ts'
import { capital, VERDICT_WORDS, worse } from '../verdict.ts'
import type { Asked, ContactRow } from './contact-row.ts'
import type { DecidedContact } from './decided.ts'
import type { ConnectorFinding } from './finding.ts'
import { decibels, exact, show } from './whole/said.ts'

export type Pair = { readonly a: DecidedContact; readonly b: DecidedContact }

/** The two contacts of every Line that has two. */
export function pairsOf(decided: readonly DecidedContact[]): readonly Pair[] {
  const byLine = new Map<string, DecidedContact[]>()
  for (const one of decided)
    if (one.line !== undefined && one.leg !== undefined)
      byLine.set(one.line.id, [...(byLine.get(one.line.id) ?? []), one])
  return [...byLine.values()].flatMap((legs) => {
    const [a, b] = [legs.find(({ leg }) => leg === 'a'), legs.find(({ leg }) => leg === 'b')]
    return a && b ? [{ a, b }] : []
  })
}

export type JudgedFinding = ConnectorFinding & Required<Pick<ConnectorFinding, 'verdict'>>

/** Undefined where both legs have the same, or none. `isRequired`: a limit is set on what may turn into signal. */
export function unlikeLegs({ a, b }: Pair, isRequired: boolean): JudgedFinding | undefined {
  const given = { id: `balance-${a.id}-${b.id}`, contacts: [a.id, b.id] }
  if (a.part === undefined && b.part === undefined) return undefined
  if (a.part === undefined || b.part === undefined) {
    const [bare, fitted] = a.part === undefined ? [a, b] : [b, a]
    return {
      ...given,
      verdict: isRequired ? 'fails' : 'marginal',
      sentence: `Contact ${fitted.id} has a part and its other leg ${bare.id} has none: all that it takes from one leg becomes signal. Give both the same.`,
    }
  }
  if (a.part.topology === b.part.topology && isAlike(a.part, b.part)) return undefined
  return {
    ...given,
    verdict: isRequired ? 'unknown' : 'marginal',
    sentence: `The legs ${a.id} and ${b.id} have unlike parts (${partWords(a)} and ${partWords(b)}): ${unlikeWords(a, b)}. Give both the same.`,
  }
}

/** The rows with every pair of unlike legs named on both of them, and neither a plain yes. */
export function withUnlikeLegs(asked: readonly Asked[]): readonly Asked[] {
  const found = new Map<string, JudgedFinding>()
  const pairs = pairsOf(asked.map(({ row }) => row.decided))
  for (const pair of pairs) {
    const finding = unlikeLegs(pair, isRequiredOf(asked, pair))
    for (const id of finding?.contacts ?? []) found.set(id, finding as JudgedFinding)
  }
  const paired = new Set(pairs.flatMap(({ a, b }) => [a.id, b.id]))
  return asked.map((one) => {
    const finding = found.get(one.row.contact.id)
    if (finding !== undefined) return { ...one, row: named(one.row, finding, unlikeLead(one.row, finding)) }
    return isPart(one) && !paired.has(one.row.contact.id) ? { ...one, row: withoutOther(one.row) } : one
  })
}

/** A part on one leg of a pair: of a kind of line that is one, or a contact that is named a leg. */
const isPart = ({ row, open, judged }: Asked): boolean =>
  row.decided.part !== undefined && (row.contact.leg !== undefined || (judged ?? open)?.setup.kind?.isPair === true)

/** What its other leg carries is not known: a part on one leg alone turns all it takes into signal. */
function withoutOther(row: ContactRow): ContactRow {
  const { id } = row.contact
  const finding: JudgedFinding = {
    id: `balance-${id}`,
    verdict: 'unknown',
    sentence: `Contact ${id} has a part on one leg of a pair, and no contact is named as its other leg: give that one the same line and the other leg, and the same part.`,
    contacts: [id],
  }
  return named(row, finding, 'needs the contact of its other leg.')
}

const isRequiredOf = (asked: readonly Asked[], { a, b }: Pair): boolean =>
  asked.some(
    ({ row, open, judged }) =>
      (row.contact.id === a.id || row.contact.id === b.id) && (judged ?? open)?.setup.mostConversionDb !== undefined,
  )

/** The sentence leads where it changes the answer: a yes to the value by itself must not stand in front of it. */
function named(row: ContactRow, finding: JudgedFinding, lead: string): ContactRow {
  const verdict = worse(row.verdict ?? finding.verdict, finding.verdict)
  const isWorse = verdict !== row.verdict
  return {
    ...row,
    verdict,
    findings: [...row.findings, finding],
    ...(isWorse
      ? {
          headline: `${capital(VERDICT_WORDS[verdict])}: ${lead} By itself: ${row.headline}`,
        }
      : {}),
  }
}

const unlikeLead = ({ contact }: ContactRow, { contacts }: JudgedFinding): string =>
  `its other leg, contact ${contacts.find((id) => id !== contact.id)}, does not have the same.`

type Part = NonNullable<DecidedContact['part']>
const isAlike = (a: Part, b: Part): boolean =>
  Math.abs(a.capacitanceF - b.capacitanceF) <= 1e-9 * a.capacitanceF &&
  Math.abs((a.inductanceH ?? 0) - (b.inductanceH ?? 0)) <= 1e-9 * (a.inductanceH ?? 0)

const partWords = ({ part }: DecidedContact): string =>
  part === undefined
    ? 'none'
    : CAPACITOR_COUNT[part.topology] === 0
      ? part.topology
      : `${part.topology} ${exact(part.capacitanceF, 'capacitance')}`

function unlikeWords({ part: a }: DecidedContact, { part: b }: DecidedContact): string {
  const farads = (part: Part | undefined) =>
    part === undefined ? 0 : CAPACITOR_COUNT[part.topology] * part.capacitanceF
  const ratio = worstConversionRatio({ legF: farads(a), leg2F: farads(b) })
  return ratio > 0
    ? `up to ${show(decibels(ratio), 'decibel', 'least')} of the common mode turns into signal even without tolerance`
    : 'what differs between them turns common mode into signal'
}
