/** What is decided for one contact, in numbers: what the sums over a whole connector read. SI units; absent = not known. */
import type { Figures, Line, LineKindId, Topology } from '../types.ts'
import type { ContactType } from './types.ts'

export type DecidedContact = {
  readonly id: string
  readonly type: ContactType
  readonly line?: Line
  readonly leg?: 'a' | 'b'
  readonly kind?: LineKindId
  /** who decided: the user, the bounds, or nobody yet; barred = the safety gate allows nothing here */
  readonly by: 'user' | 'proposed' | 'nobody' | 'barred'
  /** absent = bare */
  readonly part?: {
    readonly topology: Topology
    /** as marked, of one capacitor; a Pi has two */
    readonly capacitanceF: number
    readonly inductanceH?: number
    /** least and most of the marked value over the box of tolerances */
    readonly leastFrac: number
    readonly mostFrac: number
  }
  readonly mode: 'common' | 'differential'
  /** noise impedances of one leg to chassis */
  readonly sourceOhm: readonly number[]
  readonly loadOhm?: number
  readonly noiseHz: readonly number[]
  readonly neededDb?: number
  /** figures of the window of its Line, with the bond of the line alone */
  readonly window?: Figures
}
