/** What stands on the shelves of the book, its figures worked out: each shelf is one room. */
import { pages as cases } from './cases/cases.ts'
import { pages as drawings } from './drawings/drawings.ts'
import { pages as lines } from './lines/lines.ts'
import { pages as notes } from './notes/notes.ts'
import { SHELVES } from './shelves.ts'
import { pages as sounds } from './sounds/sounds.ts'
import { pages as tables } from './tables/tables.ts'
import { pages as tests } from './tests/tests.ts'
import type { BookPage, Shelf } from './types.ts'

const ROOMS: Readonly<Record<Shelf, () => readonly BookPage[]>> = {
  lines,
  sounds,
  tests,
  notes,
  drawings,
  tables,
  cases,
}

/** Every page of the book, shelf by shelf. */
export const readBook = (): readonly BookPage[] => SHELVES.flatMap(({ id }) => ROOMS[id]())
