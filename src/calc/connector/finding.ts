/** What is said of a whole connector, or of some of its contacts beside the others. */
import type { Basis, Verdict } from '../types.ts'

export type ConnectorFinding = {
  readonly id: string
  /** absent: it is told, and decides nothing */
  readonly verdict?: Verdict
  readonly sentence: string
  /** names of the contacts it is about; empty = all of them */
  readonly contacts: readonly string[]
  readonly basis?: Basis
}
