/** Sizes of circular-connector contacts, the wires they take, and the current one alone may carry. From memory. */
import { memory } from './line-kinds/cite.ts'
import type { Citation } from './line-kinds/types.ts'

export type ContactSize = {
  readonly size: string
  /** thickest and thinnest wire, American wire gauge */
  readonly wire: readonly [thick: number, thin: number]
  readonly mostA: number
  readonly source: Citation
}

const source = memory('mil-dtl-38999', 'contact current rating; one contact alone, in free air')

export const CONTACT_SIZES: readonly ContactSize[] = [
  { size: '22D', wire: [22, 28], mostA: 5, source },
  { size: '20', wire: [20, 24], mostA: 7.5, source },
  { size: '16', wire: [16, 20], mostA: 13, source },
  { size: '12', wire: [12, 14], mostA: 23, source },
  { size: '8', wire: [8, 10], mostA: 46, source },
]
