/** The table of suspects and evidence, indexed once: who is touched by which reading. */
import type { Evidence, EvidenceId, Reading, Suspect, SuspectId } from '../investigation.ts'

/** What the engine works on. */
export type Table = { readonly suspects: readonly Suspect[]; readonly evidence: readonly Evidence[] }

/** Option that sets a test aside: it cannot be done now and stays in the list of open tests. */
export const SET_ASIDE = 'set-aside'
/** Option every item has. */
export const UNKNOWN = 'dont-know'

/** Bit sets over the options of one item: which speak against a suspect (or rule it out), which prove it. */
type Marks = { readonly against: number; readonly proves: number }

export type Index = {
  readonly evidenceById: ReadonlyMap<EvidenceId, Evidence>
  readonly suspectById: ReadonlyMap<SuspectId, Suspect>
  readonly rank: ReadonlyMap<SuspectId, number>
  readonly marks: ReadonlyMap<EvidenceId, ReadonlyMap<SuspectId, Marks>>
  /** for each item and option, the suspects one of whom must be left for it to be seen */
  readonly named: ReadonlyMap<EvidenceId, readonly (readonly SuspectId[])[]>
}

const known = new WeakMap<Table, Index>()

function marksOf({ options }: Evidence): ReadonlyMap<SuspectId, Marks> {
  const marks = new Map<SuspectId, { against: number; proves: number }>()
  options.forEach((option, bit) => {
    if (option.retired) return
    for (const [id, say] of Object.entries(option.says)) {
      const mark = marks.get(id) ?? { against: 0, proves: 0 }
      if (say === 'against' || say === 'rules-out') mark.against |= 1 << bit
      if (say === 'proves') mark.proves |= 1 << bit
      marks.set(id, mark)
    }
  })
  return marks
}

function namedBy(
  { about, options }: Evidence,
  partOf: ReadonlyMap<SuspectId, Suspect>,
): readonly (readonly SuspectId[])[] {
  return options.map(({ says }) => {
    const proven = Object.entries(says).flatMap(([id, say]) => (say === 'proves' ? [id] : []))
    if (proven.length > 0) return proven
    const speaksFor = Object.entries(says).filter(([, say]) => say === 'for')
    const ofPart = speaksFor.some(([id]) => partOf.get(id)?.part === about)
    return ofPart ? speaksFor.map(([id]) => id) : []
  })
}

/** The index of a table, made once for each table. */
export function indexOf(table: Table): Index {
  const found = known.get(table)
  if (found !== undefined) return found
  const suspectById = new Map(table.suspects.map((each) => [each.id, each]))
  const made: Index = {
    evidenceById: new Map(table.evidence.map((each) => [each.id, each])),
    suspectById,
    named: new Map(table.evidence.map((each) => [each.id, namedBy(each, suspectById)])),
    rank: new Map(table.suspects.map((each, index) => [each.id, index])),
    marks: new Map(table.evidence.map((each) => [each.id, marksOf(each)])),
  }
  known.set(table, made)
  return made
}

/** The reading with this id, or undefined. */
export const readingOf = (evidence: Evidence, option: string | undefined): Reading | undefined =>
  evidence.options.find(({ id }) => id === option)

/** The options still to be expected: those that name nobody, or somebody who is left. */
export function expected(index: Index, { id, options }: Evidence, left: ReadonlySet<SuspectId>): readonly Reading[] {
  const named = index.named.get(id)
  return options.filter((option, at) => {
    const names = named?.[at] ?? []
    return option.retired !== true && (names.length === 0 || names.some((name) => left.has(name)))
  })
}
