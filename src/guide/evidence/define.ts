/** Short forms for writing readings down. */
import type { Source } from '../../calc/types.ts'
import type { SourceId } from '../../reference/sources.ts'
import type { Part, Reading, Say, SuspectId } from '../investigation.ts'
import { words } from '../suspects/define.ts'
import { SUSPECTS } from '../suspects/suspects.ts'

/** A reading as written in a table. The lists name suspects; `othersAgainst`: of these parts, every suspect not named. */
export type Written = Omit<Reading, 'says' | 'cites'> & {
  readonly proves?: string
  readonly for?: string
  readonly against?: string
  readonly out?: string
  /** suspects this reading leaves alone although `othersAgainst` would take them */
  readonly open?: string
  readonly othersAgainst?: readonly Part[]
  /** what was read about a cell; every other cell is practice */
  readonly read?: Readonly<Record<SuspectId, SourceId>>
}

const SAYS: readonly { readonly list: 'proves' | 'for' | 'against' | 'out'; readonly say: Say }[] = [
  { list: 'proves', say: 'proves' },
  { list: 'for', say: 'for' },
  { list: 'against', say: 'against' },
  { list: 'out', say: 'rules-out' },
]

/** A row of a table as data. */
export function reading(row: Written): Reading {
  const { proves: _p, for: _f, against: _a, out: _o, open = '', othersAgainst = [], read, ...rest } = row
  const says: Record<SuspectId, Say> = {}
  for (const { list, say } of SAYS) for (const id of words(row[list] ?? '')) says[id] = say
  const free = new Set(words(open))
  for (const { id, part } of SUSPECTS) if (othersAgainst.includes(part) && !free.has(id)) says[id] ??= 'against'
  if (read === undefined) return { ...rest, says }
  const cites: Record<SuspectId, Source> = {}
  for (const [id, source] of Object.entries(read)) cites[id] = { id: source, standing: 'read' }
  return { ...rest, says, cites }
}

/** The answer that every item has. */
export const DONT_KNOW: Reading = {
  id: 'dont-know',
  label: "Don't know",
  says: {},
  means: 'It stays open; another item may settle it.',
}

/** Readings of a table, with "don't know" at the end unless the table has its own. */
export function readings(...rows: readonly Written[]): readonly Reading[] {
  const made = rows.map(reading)
  return made.some(({ id }) => id === 'dont-know') ? made : [...made, DONT_KNOW]
}
