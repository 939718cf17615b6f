/** Drawings that stand in the field book alone; permanent ids. No guide stores them, so that they may grow freely. */
export const BOOK_DRAWING_IDS = [
  'six-topologies',
  'lead-and-bond',
  'lc-ringing',
  'two-modes',
  'bond-path',
  'harness-coupling',
  'planar-contact',
  'rack-tray',
  'strip-explained',
  'ladder-explained',
  'probe-readings',
  'receiver-walk',
  'spectrum-shapes',
] as const

export type BookDrawingId = (typeof BOOK_DRAWING_IDS)[number]
