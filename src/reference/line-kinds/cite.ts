/** Short forms for the citations that repeat in the line-kind tables. */
import type { SourceId } from '../sources.ts'
import type { Citation } from './types.ts'

export const PRACTICE: Citation = { id: 'practice', standing: 'practice' }
export const DERIVED: Citation = { id: 'derived', standing: 'derived' }

/** A source seen, perhaps only in part or in a secondary copy (sources.ts says which). */
export const read = (id: SourceId, clause?: string): Citation =>
  clause === undefined ? { id, standing: 'read' } : { id, clause, standing: 'read' }

/** A source recalled, not opened. */
export const memory = (id: SourceId, clause?: string): Citation =>
  clause === undefined ? { id, standing: 'memory' } : { id, clause, standing: 'memory' }

/** Common practice that somebody wrote down: the source tells it, no document asks for it. */
export const practice = (id: SourceId, clause: string): Citation => ({ id, clause, standing: 'practice' })
