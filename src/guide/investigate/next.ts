/** What to ask or test next: what it decides for what it costs. */
import type { Evidence, SymptomId, When } from '../investigation.ts'
import type { Answers } from '../types.ts'
import { type Cause, causesOf } from './causes.ts'
import { type Standing, standings, symptomOf } from './standing.ts'
import { expected, type Index, indexOf, SET_ASIDE, type Table, UNKNOWN } from './table.ts'

/** Asked before anything is weighed, in this order. */
export const FIRST: readonly string[] = ['gate-danger', 'gate-lines', 'wrong', 'volume', 'squelch']

const WEIGHT = { often: 3, sometimes: 2, rarely: 1 } as const
const KIND = { ask: 0, look: 1, test: 2 } as const

function suits(symptoms: When['symptoms'], symptom: SymptomId | undefined): boolean {
  return symptoms === undefined || symptom === undefined || symptoms.includes(symptom)
}

/** Whether an item may be met with these answers: the symptom fits, and one of the answers it builds on was given. */
export function applies(evidence: Evidence, answers: Answers): boolean {
  const { symptoms, answered } = evidence.when ?? {}
  if (!suits(symptoms, symptomOf(answers))) return false
  return answered === undefined || answered.some(({ evidence: id, options }) => options.includes(answers[id] ?? ''))
}

/** The causes left, with which of them are cured alike and how much each pair counts: the rarer of the two. */
type Pairs = {
  readonly members: readonly (readonly string[])[]
  readonly left: ReadonlySet<string>
  /** weight of the pair i, j at i·n + j; 0 where the same repair serves both */
  readonly weights: Uint8Array
}

function pairsOf(causes: readonly Cause[]): Pairs {
  const cures = causes.map(({ cheapest }) => new Set(cheapest.map(({ suspect }) => suspect.id)))
  const weight = causes.map(({ members }) => Math.min(...members.map(({ suspect }) => WEIGHT[suspect.usual])))
  const count = causes.length
  const weights = new Uint8Array(count * count)
  for (const [i, one] of cures.entries())
    for (const [j, other] of cures.entries())
      if (i < j && ![...one].some((id) => other.has(id)))
        weights[i * count + j] = Math.min(weight[i] ?? 0, weight[j] ?? 0)
  const members = causes.map((cause) => cause.members.map(({ suspect }) => suspect.id))
  return { members, left: new Set(members.flat()), weights }
}

/** Pairs of causes still in, of different cure, that the item separates, each weighted by the rarer of the two. */
function worthIn(index: Index, evidence: Evidence, { members, left, weights }: Pairs): number {
  const to = new Set(expected(index, evidence, left))
  const live = evidence.options.reduce((bits, option, bit) => (to.has(option) ? bits | (1 << bit) : bits), 0)
  const marks = index.marks.get(evidence.id)
  const seen = members.map((ids) => {
    let [against, proves] = [0, 0]
    for (const id of ids) {
      against |= marks?.get(id)?.against ?? 0
      proves |= marks?.get(id)?.proves ?? 0
    }
    return `${against & live} ${proves & live}`
  })
  if (new Set(seen).size < 2) return 0
  let worth = 0
  for (let i = 0; i < seen.length; i++)
    for (let j = i + 1; j < seen.length; j++) if (seen[i] !== seen[j]) worth += weights[i * seen.length + j] ?? 0
  return worth
}

const leftOf = (causes: readonly Cause[]): ReadonlySet<string> =>
  new Set(causes.flatMap(({ members }) => members.map(({ suspect }) => suspect.id)))

/** What the answers decide so far; two equal texts are the same decision. */
export function decisionOf(causes: readonly Cause[]): string {
  const names = causes.map(({ members }) => members.map(({ suspect, is }) => `${suspect.id} ${is}`).join('+'))
  return names.sort().join('|')
}

function changesDecision(
  table: Table,
  evidence: Evidence,
  answers: Answers,
  left: ReadonlySet<string>,
  now: string,
): boolean {
  return expected(indexOf(table), evidence, left).some(
    (option) =>
      Object.keys(option.says).length > 0 &&
      decisionOf(causesOf(standings(table, { ...answers, [evidence.id]: option.id }))) !== now,
  )
}

/** What may be asked: of the part of a cause, applicable, not answered, and not opening a circuit before the gate is clear. */
export function askable(table: Table, answers: Answers, isGateClear: boolean): readonly Evidence[] {
  return table.evidence.filter(
    (each) =>
      each.about !== 'safety' &&
      each.about !== 'line' &&
      answers[each.id] === undefined &&
      (isGateClear || each.opens !== true) &&
      applies(each, answers),
  )
}

/** The fixed first items that are still open, in order. */
function firstOpen(table: Table, answers: Answers): Evidence | undefined {
  const { evidenceById } = indexOf(table)
  return FIRST.flatMap((id) => evidenceById.get(id) ?? []).find(
    (each) => answers[each.id] === undefined && applies(each, answers),
  )
}

/** A proof that would turn the one repair left into a proven one, when nothing has spoken for it yet. */
function proofOf(table: Table, causes: readonly Cause[], open: readonly Evidence[]): Evidence | undefined {
  const proofs = new Set(causes.flatMap(({ members }) => members.map(({ suspect }) => suspect.proof)))
  return table.evidence.find((each) => proofs.has(each.id) && open.includes(each))
}

/** Minutes added to the cost of every item for each "don't know": where what is cheap is not known, its price tells less. */
const MINUTES_FOR_UNKNOWN = 1

const unknownIn = (answers: Answers): number => Object.values(answers).filter((option) => option === UNKNOWN).length

/**
 * Open items, the best first: most value for its cost, then kind, then list order. `addedMinutes` count on top of those of
 * each item.
 */
export function ranked(
  table: Table,
  causes: readonly Cause[],
  open: readonly Evidence[],
  addedMinutes = 0,
): readonly Evidence[] {
  const index = indexOf(table)
  const pairs = pairsOf(causes)
  return open
    .map((evidence) => ({ evidence, worth: worthIn(index, evidence, pairs) / (evidence.minutes + addedMinutes) }))
    .filter(({ worth }) => worth > 0)
    .sort((a, b) => b.worth - a.worth || KIND[a.evidence.kind] - KIND[b.evidence.kind])
    .map(({ evidence }) => evidence)
}

/** After so many answers without a cause it is time to measure: the open tests are listed, the best first. */
export const MOST_ANSWERS = 16

const countOf = ({ evidence }: Table, answers: Answers): number =>
  evidence.filter(({ id, about }) => about !== 'line' && answers[id] !== undefined && answers[id] !== SET_ASIDE).length

/**
 * The next item, or undefined when nothing decides any more. The first questions are fixed; then the item with the most
 * value for its cost whose answers change the decision; then the proof of the repair left. `most`: answers after which it is
 * time to measure.
 */
export function nextEvidence(
  table: Table,
  answers: Answers,
  all: readonly Standing[],
  isGateClear: boolean,
  most = MOST_ANSWERS,
): Evidence | undefined {
  const first = firstOpen(table, answers)
  if (first !== undefined) return first
  if (countOf(table, answers) >= most) return undefined
  const causes = causesOf(all)
  const open = askable(table, answers, isGateClear)
  const now = decisionOf(causes)
  const left = leftOf(causes)
  return (
    ranked(table, causes, open, MINUTES_FOR_UNKNOWN * unknownIn(answers)).find((each) =>
      changesDecision(table, each, answers, left, now),
    ) ?? proofOf(table, causes, open)
  )
}

/**
 * Questions, looks and tests that may still decide, the best first: not yet done, not known, or set aside. Those that open a
 * circuit are listed too; their card says what they wait for.
 */
export function openTestsOf(table: Table, answers: Answers, all: readonly Standing[]): readonly Evidence[] {
  const open = table.evidence.filter(
    (each) =>
      each.about !== 'line' &&
      each.about !== 'safety' &&
      each.id !== 'wrong' &&
      applies(each, answers) &&
      [undefined, SET_ASIDE, UNKNOWN].includes(answers[each.id]),
  )
  return ranked(table, causesOf(all), open)
}
