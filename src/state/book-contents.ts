/** The contents of the book, worked out when the app is built. */
import { CHECKS } from '../calc/registry.ts'
import { contentsOf } from '../guide/book/contents.ts'
import { SHELVES } from '../guide/book/shelves.ts'
import { GUIDE } from '../guide/guide.ts'

const shelves = await Promise.all(SHELVES.map(async ({ load }) => (await load?.())?.() ?? []))

export const built = contentsOf({ pages: shelves.flat(), guide: GUIDE, checks: CHECKS })
