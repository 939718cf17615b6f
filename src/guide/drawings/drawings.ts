/** Every drawing by its id. */
import type { DrawingId } from '../drawing-ids.ts'
import type { BookDrawingId } from './book-ids.ts'
import { CIRCUIT_DRAWINGS } from './circuits.ts'
import { COUPLING_DRAWINGS } from './coupling.ts'
import { EXPLAINED_DRAWINGS } from './explained.ts'
import { FINDING_DRAWINGS } from './finding.ts'
import { FITTING_DRAWINGS } from './fitting.ts'
import { HARDWARE_DRAWINGS } from './hardware.ts'
import { INSTRUMENT_DRAWINGS } from './instruments.ts'
import { MEASURING_DRAWINGS } from './measuring.ts'
import type { Drawing } from './types.ts'

export const DRAWINGS: readonly Drawing[] = [
  ...CIRCUIT_DRAWINGS,
  ...COUPLING_DRAWINGS,
  ...FITTING_DRAWINGS,
  ...HARDWARE_DRAWINGS,
  ...MEASURING_DRAWINGS,
  ...FINDING_DRAWINGS,
  ...INSTRUMENT_DRAWINGS,
  ...EXPLAINED_DRAWINGS,
]

export const drawingById = (id: DrawingId | BookDrawingId): Drawing | undefined =>
  DRAWINGS.find((each) => each.id === id)
