/** Which items of evidence send the reader to a note, so that the note can send back. */
import { EVIDENCE } from './evidence/evidence.ts'
import type { Evidence } from './investigation.ts'

/** The items whose card or question names this note, in list order. */
export const usesOf = (noteId: string): readonly Evidence[] => EVIDENCE.filter(({ note }) => note === noteId)
