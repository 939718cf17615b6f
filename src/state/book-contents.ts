/** The contents of the book, worked out when the app is built. */
import { CHECKS } from '../calc/registry.ts'
import { contentsOf } from '../guide/book/contents.ts'
import { readBook } from '../guide/book/read-book.ts'
import { GUIDE } from '../guide/guide.ts'

export const built = contentsOf({ pages: readBook(), guide: GUIDE, checks: CHECKS })
