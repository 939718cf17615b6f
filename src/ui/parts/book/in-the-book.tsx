import type { End } from '../../../guide/book/contents.ts'
import { linkedTo } from '../../../state/book.ts'
import { FoldedLinks } from './linked.tsx'

/** Pages of the book that have to do with a check, or with a question or an outcome of the guide. */
export function InTheBook({ end }: { readonly end: End }) {
  return <FoldedLinks links={linkedTo(end).filter(({ kind }) => kind === 'Book')} label="In the book" />
}
