/** An honest answerer: it knows the truth and answers anything that does not contradict it. */
import type { Evidence, Part, Reading, Suspect, SymptomId } from '../../../src/guide/investigation.ts'

/** What is really the case: a source with its way in, or a fault of the victim, and what the caller sees. */
export type Truth = { readonly members: readonly Suspect[]; readonly symptom: SymptomId }

/** Every truth: sources with each way that goes together with them, faults of the victim, each symptom they can show. */
export function truths(suspects: readonly Suspect[]): readonly Truth[] {
  const byId = new Map(suspects.map((each) => [each.id, each]))
  const found: Truth[] = []
  const add = (...members: readonly Suspect[]) => {
    const [first, ...rest] = members
    for (const symptom of first?.shows ?? [])
      if (rest.every(({ shows }) => shows.includes(symptom))) found.push({ members, symptom })
  }
  for (const suspect of suspects) {
    if (suspect.part === 'victim') add(suspect)
    for (const symptom of suspect.alone ?? []) found.push({ members: [suspect], symptom })
    if (suspect.part !== 'source') continue
    const paths = (suspect.paths ?? []).flatMap((id) => byId.get(id) ?? [])
    if (paths.length === 0) add(suspect)
    for (const path of paths) add(suspect, path)
  }
  return found
}

/** The suspects whose repair is the cheapest of a truth. */
export function rightCures({ members }: Truth): readonly string[] {
  const least = Math.min(...members.map(({ effort }) => effort))
  return members.filter(({ effort }) => effort === least).map(({ id }) => id)
}

const speaksFor = (reading: Reading): readonly string[] =>
  Object.entries(reading.says).flatMap(([id, say]) => (say === 'for' || say === 'proves' ? [id] : []))

/**
 * Whether a reading can be seen when this is the truth: it speaks against no member of it, proves nothing else, and
 * what it says for the part the item is about includes the truth's own member of that part.
 */
export function isPossible(
  item: Evidence,
  reading: Reading,
  { members }: Truth,
  partOf: ReadonlyMap<string, Part>,
): boolean {
  const ids = new Set(members.map(({ id }) => id))
  const says = Object.entries(reading.says)
  if (says.some(([id, say]) => ids.has(id) && (say === 'rules-out' || say === 'against'))) return false
  if (says.some(([id, say]) => say === 'proves' && !ids.has(id))) return false
  const named = speaksFor(reading)
  const ofPart = named.filter((id) => partOf.get(id) === item.about)
  return ofPart.length === 0 || named.some((id) => ids.has(id))
}

/** What only two faults at once can show; a truth here has one. */
const OF_TWO_FAULTS = 'less'

/** The readings of an item that are possible; "don't know" is not among them. */
export function possible(item: Evidence, truth: Truth, partOf: ReadonlyMap<string, Part>): readonly Reading[] {
  return item.options.filter(
    (each) =>
      each.id !== 'dont-know' &&
      each.id !== OF_TWO_FAULTS &&
      each.retired !== true &&
      isPossible(item, each, truth, partOf),
  )
}
