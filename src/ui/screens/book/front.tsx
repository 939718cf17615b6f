import { filledShelves } from '../../../state/book.ts'
import { hashOf } from '../../../state/router.ts'
import { Icon } from '../../parts/icon.tsx'
import { Head } from '../../shell/head.tsx'
import { SearchBox } from '../search-box.tsx'

/** The front of the book: one search over everything, and its shelves. */
export function Front() {
  return (
    <>
      <Head title="Book">
        <p class="muted">What to know at the aircraft, with its source.</p>
      </Head>
      <SearchBox />
      <ul class="rows" aria-label="Shelves">
        {filledShelves.map(({ shelf, count }) => (
          <li key={shelf.id}>
            <a href={hashOf('notes', shelf.id)}>
              <span>
                <strong>{shelf.title}</strong>
                <span class="row-note">{shelf.inShort}</span>
              </span>
              <span class="count">
                {count}
                <span class="unseen"> pages</span>
              </span>
              <Icon name="go" />
            </a>
          </li>
        ))}
        <li>
          <a href={hashOf('notes', 'glossary')}>
            <span>
              <strong>Glossary</strong>
              <span class="row-note">Words of the trade and short forms, one line each</span>
            </span>
            <Icon name="go" />
          </a>
        </li>
      </ul>
    </>
  )
}
