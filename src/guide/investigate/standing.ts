/** Where each suspect stands, and because of which answers. No weights: more for than against, then how usual it is. */
import type { EvidenceId, Say, Suspect, SymptomId } from '../investigation.ts'
import type { Answers } from '../types.ts'
import { type Index, indexOf, readingOf, type Table } from './table.ts'

/** An answer that says something of a suspect. */
export type Because = { readonly evidence: EvidenceId; readonly option: string; readonly say: Say }

/**
 * `out`: an answer rules it out. `proven`: an answer proves it. `in`: neither, or answers that contradict each other.
 * `fits`: not out, not more against it than for it, and not two answers behind another of its part.
 * `balance`: answers for it minus answers against it.
 * `tried`: what its repair did, when it was done.
 */
export type Standing = {
  readonly suspect: Suspect
  readonly is: 'out' | 'proven' | 'in'
  readonly fits: boolean
  readonly balance: number
  readonly because: readonly Because[]
  /** it can be at fault by itself here, without a source */
  readonly isAlone: boolean
  readonly tried?: 'gone' | 'less' | 'same' | 'same-measured' | 'worse'
}

/** Id of the item that records what the repair or trial of a suspect did. */
export const afterRepair = (suspect: string): EvidenceId => `after-${suspect}`

/** The symptom as answered, undefined when not known. */
export const symptomOf = (answers: Answers): SymptomId | undefined => {
  const wrong = answers['wrong']
  return wrong === undefined || wrong === 'dont-know' || wrong === 'set-aside' ? undefined : (wrong as SymptomId)
}

function saidOf(index: Index, answers: Answers): ReadonlyMap<string, readonly Because[]> {
  const said = new Map<string, Because[]>()
  for (const [evidence, option] of Object.entries(answers)) {
    const item = index.evidenceById.get(evidence)
    const reading = item === undefined ? undefined : readingOf(item, option)
    for (const [suspect, say] of Object.entries(reading?.says ?? {})) {
      const list = said.get(suspect) ?? []
      list.push({ evidence, option, say })
      said.set(suspect, list)
    }
  }
  return said
}

const TRIED = new Set(['gone', 'less', 'same', 'same-measured', 'worse'])

function standingOf(suspect: Suspect, said: readonly Because[], answers: Answers): Standing {
  const symptom = symptomOf(answers)
  const tried = answers[afterRepair(suspect.id)]
  const byDefinition: readonly Because[] =
    symptom !== undefined && symptom !== 'plan' && !suspect.shows.includes(symptom)
      ? [{ evidence: 'wrong', option: symptom, say: 'rules-out' }]
      : []
  const byRepair: readonly Because[] =
    tried === 'same-measured' ? [{ evidence: afterRepair(suspect.id), option: tried, say: 'rules-out' }] : []
  const because = [...byDefinition, ...said, ...byRepair]
  const isOut = because.some(({ say }) => say === 'rules-out')
  const isProven = because.some(({ say }) => say === 'proves')
  const count = (say: Say) => because.filter((each) => each.say === say).length
  const balance = count('for') - count('against')
  const is = isOut && isProven ? 'in' : isOut ? 'out' : isProven ? 'proven' : 'in'
  return {
    suspect,
    is,
    fits: is === 'proven' || (is === 'in' && balance >= 0),
    balance,
    because,
    isAlone: suspect.alone?.some((one) => symptom === undefined || one === symptom) === true,
    ...(tried !== undefined && TRIED.has(tried) ? { tried: tried as NonNullable<Standing['tried']> } : {}),
  }
}

const USUAL = { often: 0, sometimes: 1, rarely: 2 } as const
const IS = { proven: 0, in: 1, out: 2 } as const

/** Answers by which another of its part must lead before a suspect no longer fits. */
const FAR_BEHIND = 2

/** A trial that only helped shows that something else is left: it speaks for its suspect and leaves no other behind. */
const HELPED = 'less'
const leadOf = ({ balance, because }: Standing): number =>
  balance - because.filter(({ option, say }) => option === HELPED && say === 'for').length

function withoutBehind(all: readonly Standing[]): readonly Standing[] {
  const lead = new Map<string, number>()
  for (const each of all)
    if (each.fits) lead.set(each.suspect.part, Math.max(leadOf(each), lead.get(each.suspect.part) ?? 0))
  return all.map((each) =>
    each.fits && each.is !== 'proven' && each.balance <= (lead.get(each.suspect.part) ?? 0) - FAR_BEHIND
      ? { ...each, fits: false }
      : each,
  )
}

/** Every suspect, the likeliest first: proven, then by balance, then how usual, then list order; those out last. */
export function standings(table: Table, answers: Answers): readonly Standing[] {
  const index = indexOf(table)
  const said = saidOf(index, answers)
  const all = table.suspects.map((suspect) => standingOf(suspect, said.get(suspect.id) ?? [], answers))
  return [...withoutBehind(all)].sort(
    (a, b) =>
      IS[a.is] - IS[b.is] ||
      b.balance - a.balance ||
      USUAL[a.suspect.usual] - USUAL[b.suspect.usual] ||
      (index.rank.get(a.suspect.id) ?? 0) - (index.rank.get(b.suspect.id) ?? 0),
  )
}
