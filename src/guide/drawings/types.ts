/** A drawing as data: marks on a sheet 320 units wide, so that it can be linted, printed and themed. */
import type { DrawingId } from '../drawing-ids.ts'
import type { BookDrawingId } from './book-ids.ts'

export const SHEET_WIDTH = 320

/** `wire`: thin. `bar`: metal, thick. `shield`: braid. `open`: dashed, not connected yet. `path`: what flows, with a head. */
export type LineLook = 'wire' | 'bar' | 'shield' | 'open' | 'path'
/** `case`: a box. `metal`: structure. `part`: a thing that is added. */
export type BoxLook = 'case' | 'metal' | 'part'

type Point = readonly [x: number, y: number]

/** One mark. Points in units of the sheet, y down. */
export type Mark =
  | { readonly line: readonly [Point, Point, ...Point[]]; readonly look?: LineLook }
  | { readonly box: readonly [x: number, y: number, width: number, height: number]; readonly look?: BoxLook }
  /** letters; `bold` for the name of a figure in a drawing of two */
  | { readonly text: string; readonly at: Point; readonly anchor?: 'middle' | 'end'; readonly bold?: true }
  /** a coil in a wire, to the right */
  | { readonly coil: Point }
  /** a capacitor down from a wire to metal, 40 units */
  | { readonly capacitor: Point }
  /** a suppressor down from a wire to metal, 40 units */
  | { readonly suppressor: Point }
  /** a resistor down, 40 units */
  | { readonly resistor: Point }
  /** a clamp around wires */
  | { readonly ring: readonly [x: number, y: number, rx: number, ry: number] }
  | { readonly dot: Point }

export type Drawing = {
  readonly id: DrawingId | BookDrawingId
  readonly title: string
  /** all that the picture tells, for those who do not see it */
  readonly said: string
  readonly height: number
  readonly marks: readonly Mark[]
}
