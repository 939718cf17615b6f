/** The shelves of the field book in the order of its front. */
import type { Shelf } from './types.ts'

export type ShelfRoom = {
  readonly id: Shelf
  readonly title: string
  /** one line on the front */
  readonly inShort: string
  /** how the ids of its pages start; only the notes have bare ones */
  readonly prefix: string
}

export const SHELVES: readonly ShelfRoom[] = [
  {
    id: 'lines',
    title: 'Line cards',
    inShort: 'What each kind of line carries, what it stands, and how it looks when it is good',
    prefix: 'line-',
  },
  {
    id: 'sounds',
    title: 'Sounds and signatures',
    inShort: 'How each noise sounds and looks, and what it is taken for',
    prefix: 'sound-',
  },
  {
    id: 'tests',
    title: 'Tests',
    inShort: 'How each test is set up, and what fools people',
    prefix: 'test-',
  },
  {
    id: 'notes',
    title: 'Notes',
    inShort: 'What to know at the aircraft',
    prefix: '',
  },
  {
    id: 'drawings',
    title: 'Drawings',
    inShort: 'Filters, shields, bonds, loops and couplings, drawn',
    prefix: 'drawing-',
  },
  {
    id: 'tables',
    title: 'Tables',
    inShort: 'Limits, classes, codes and conversions, each with its source',
    prefix: 'table-',
  },
  {
    id: 'cases',
    title: 'Cases',
    inShort: 'What happened elsewhere: complaint, tests, cause, cure',
    prefix: 'case-',
  },
]

/** The shelf that a page of this id stands on, by how the id starts. */
export const shelfOfId = (id: string): ShelfRoom | undefined =>
  SHELVES.find(({ prefix }) => prefix !== '' && id.startsWith(prefix)) ?? SHELVES.find(({ prefix }) => prefix === '')
