/** Every drawing by its id. */
import type { DrawingId } from '../drawing-ids.ts'
import type { BookDrawingId } from './book-ids.ts'
import { FINDING_DRAWINGS } from './finding.ts'
import { FITTING_DRAWINGS } from './fitting.ts'
import { INSTRUMENT_DRAWINGS } from './instruments.ts'
import { MEASURING_DRAWINGS } from './measuring.ts'
import type { Drawing } from './types.ts'

export const DRAWINGS: readonly Drawing[] = [
  ...MEASURING_DRAWINGS,
  ...FINDING_DRAWINGS,
  ...FITTING_DRAWINGS,
  ...INSTRUMENT_DRAWINGS,
]

export const drawingById = (id: DrawingId | BookDrawingId): Drawing | undefined =>
  DRAWINGS.find((each) => each.id === id)
