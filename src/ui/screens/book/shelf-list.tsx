import type { ShelfRoom } from '../../../guide/book/shelves.ts'
import type { BookPage } from '../../../guide/book/types.ts'
import { hashOf } from '../../../state/router.ts'
import { Icon } from '../../parts/icon.tsx'
import { Head } from '../../shell/head.tsx'

/** All pages of a shelf in its own order. */
export function ShelfList({ shelf, pages }: { readonly shelf: ShelfRoom; readonly pages: readonly BookPage[] }) {
  return (
    <>
      <Head title={shelf.title}>
        <a class="up" href="#/notes">
          <Icon name="back" />
          Book
        </a>
        <p class="muted">{shelf.inShort}</p>
      </Head>
      <ul class="rows" aria-label={shelf.title}>
        {pages.map(({ id, title, inShort }) => (
          <li key={id}>
            <a href={hashOf('notes', id)}>
              <span>
                <strong>{title}</strong>
                {inShort !== '' && <span class="row-note">{inShort}</span>}
              </span>
              <Icon name="go" />
            </a>
          </li>
        ))}
      </ul>
    </>
  )
}
