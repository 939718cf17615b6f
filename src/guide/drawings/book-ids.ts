/** Drawings that stand in the field book alone; permanent ids. No guide stores them, so that they may grow freely. */
export const BOOK_DRAWING_IDS = ['probe-readings', 'receiver-walk', 'spectrum-shapes'] as const

export type BookDrawingId = (typeof BOOK_DRAWING_IDS)[number]
