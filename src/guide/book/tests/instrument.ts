/** What an instrument page holds. */
import type { Source } from '../../../calc/types.ts'
import type { SafetyId } from '../../../reference/safety.ts'
import type { DrawingId } from '../../drawing-ids.ts'
import type { BookDrawingId } from '../../drawings/book-ids.ts'
import type { Tool } from '../../investigation.ts'
import type { Block, BookLink } from '../types.ts'

export type Instrument = {
  readonly tools: readonly Tool[]
  readonly id: string
  readonly title: string
  readonly inShort: string
  readonly words: readonly string[]
  readonly set: readonly (readonly [label: string, text: string])[]
  readonly pictures: readonly Block[]
  readonly fools: readonly string[]
  readonly never?: readonly string[]
  /** cautions of the reference, shown first */
  readonly cautions: readonly SafetyId[]
  /** of figures that are neither practice nor worked out */
  readonly sources?: readonly Source[]
  readonly links: readonly BookLink[]
}

export const waveform = (one: Extract<Block, { is: 'waveform' }>['waveform']): Block => ({
  is: 'waveform',
  waveform: one,
})
export const drawing = (id: DrawingId | BookDrawingId): Block => ({ is: 'drawing', drawing: id })
