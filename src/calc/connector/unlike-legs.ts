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
  for (const pair of pairsOf(asked.map(({ row }) => row.decided))) {
    const finding = unlikeLegs(pair, isRequiredOf(asked, pair))
    for (const id of finding?.contacts ?? []) found.set(id, finding as JudgedFinding)
  }
  return asked.map((one) => {
    const finding = found.get(one.row.contact.id)
    return finding === undefined ? one : { ...one, row: named(one.row, finding) }
  })
}

const isRequiredOf = (asked: readonly Asked[], { a, b }: Pair): boolean =>
  asked.some(
    ({ row, open, judged }) =>
      (row.contact.id === a.id || row.contact.id === b.id) && (judged ?? open)?.setup.mostConversionDb !== undefined,
  )

/** The sentence leads where it changes the answer: a yes to the value by itself must not stand in front of it. */
function named(row: ContactRow, finding: JudgedFinding): ContactRow {
  const verdict = worse(row.verdict ?? finding.verdict, finding.verdict)
  const isWorse = verdict !== row.verdict
  const [other] = finding.contacts.filter((id) => id !== row.contact.id)
  return {
    ...row,
    verdict,
    findings: [...row.findings, finding],
    ...(isWorse
      ? {
          headline: `${capital(VERDICT_WORDS[verdict])}: its other leg, contact ${other}, does not have the same. By itself: ${row.headline}`,
        }
      : {}),
  }
}

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
