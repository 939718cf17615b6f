/** The drawings that stand on cards and notes; permanent ids. What they show is loaded with the first one shown. */
export const DRAWING_IDS = [
  'bond-four-wire',
  'shield-ends',
  'clamp-places',
  'audio-ground',
  'battery-test',
  'breaker-matrix',
  'bus-ohms',
  'way-round',
  'suppressor-side',
  'placements',
  'dummy-load',
] as const

export type DrawingId = (typeof DRAWING_IDS)[number]
