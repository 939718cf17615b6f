/** The shelves of the field book in the order of its front, and how the pages of each are fetched: a shelf is one room. */
import type { BookPage, Shelf } from './types.ts'

export type ShelfRoom = {
  readonly id: Shelf
  readonly title: string
  /** one line on the front */
  readonly inShort: string
  /** how the ids of its pages start; only the notes have bare ones */
  readonly prefix: string
  /** fetches the room. A shelf that nothing stands on yet has none, and is listed nowhere. */
  readonly load?: () => Promise<() => readonly BookPage[]>
}

export const SHELVES: readonly ShelfRoom[] = [
  {
    id: 'lines',
    title: 'Line cards',
    inShort: 'What each kind of line carries, what it stands, and how it looks when it is good',
    prefix: 'line-',
    load: async () => (await import('./lines/lines.ts')).pages,
  },
  {
    id: 'sounds',
    title: 'Sounds and signatures',
    inShort: 'How each noise sounds and looks, and what it is taken for',
    prefix: 'sound-',
    load: async () => (await import('./sounds/sounds.ts')).pages,
  },
  {
    id: 'tests',
    title: 'Tests',
    inShort: 'How each test is set up, and what fools people',
    prefix: 'test-',
    load: async () => (await import('./tests/tests.ts')).pages,
  },
  {
    id: 'notes',
    title: 'Notes',
    inShort: 'What to know at the aircraft',
    prefix: '',
    load: async () => (await import('./notes/notes.ts')).pages,
  },
  {
    id: 'drawings',
    title: 'Drawings',
    inShort: 'Filters, shields, bonds, loops and couplings, drawn',
    prefix: 'drawing-',
    load: async () => (await import('./drawings/drawings.ts')).pages,
  },
  {
    id: 'tables',
    title: 'Tables',
    inShort: 'Limits, classes, codes and conversions, each with its source',
    prefix: 'table-',
    load: async () => (await import('./tables/tables.ts')).pages,
  },
  {
    id: 'cases',
    title: 'Cases',
    inShort: 'What happened elsewhere: complaint, tests, cause, cure',
    prefix: 'case-',
    load: async () => (await import('./cases/cases.ts')).pages,
  },
]

/** What stands on a shelf, its figures worked out anew. */
export const readShelf = async ({ load }: ShelfRoom): Promise<readonly BookPage[]> => (await load?.())?.() ?? []

/** Every page of the book, shelf by shelf. */
export const readBook = async (): Promise<readonly BookPage[]> => (await Promise.all(SHELVES.map(readShelf))).flat()

/** The shelf that a page of this id stands on, by how the id starts. */
export const shelfOfId = (id: string): ShelfRoom | undefined =>
  SHELVES.find(({ prefix }) => prefix !== '' && id.startsWith(prefix)) ?? SHELVES.find(({ prefix }) => prefix === '')
