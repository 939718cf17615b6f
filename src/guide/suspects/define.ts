/** Short forms for writing suspects down. */
import type { Source } from '../../calc/types.ts'
import type { SourceId } from '../../reference/sources.ts'
import type { Suspect, SymptomId } from '../investigation.ts'

const PRACTICE: Source = { id: 'practice', standing: 'practice' }

/** A suspect as written in a table; lists are words. */
export type Written = Omit<Suspect, 'part' | 'shows' | 'paths' | 'alone' | 'sources'> & {
  readonly shows: string
  readonly paths?: string
  readonly alone?: string
  readonly read?: readonly SourceId[]
}

/** The words of a list. */
export const words = (text: string): readonly string[] => text.split(' ').filter((word) => word !== '')

/** A row of a table as data. Documents named in `read` were read; the rest is practice. */
export function suspectsOf(part: Suspect['part'], rows: readonly Written[]): readonly Suspect[] {
  return rows.map(({ shows, paths, alone, read = [], ...row }) => ({
    ...row,
    part,
    shows: words(shows) as readonly SymptomId[],
    ...(paths === undefined ? {} : { paths: words(paths) }),
    ...(alone === undefined ? {} : { alone: words(alone) as readonly SymptomId[] }),
    sources: [...read.map((id): Source => ({ id, standing: 'read' })), PRACTICE] as unknown as Suspect['sources'],
  }))
}
