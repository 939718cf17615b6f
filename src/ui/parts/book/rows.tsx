import type { Source } from '../../../calc/types.ts'
import type { BookRow } from '../../../guide/book/types.ts'
import { SOURCES } from '../../../reference/sources.ts'
import { STANDING_WORDS } from '../../../reference/standing.ts'
import { Text } from './terms.tsx'

/** Practice and derivation are no documents: without a clause the standing says it all. */
function nameOf({ id, clause }: Source): string {
  if (clause === undefined) return id === 'practice' || id === 'derived' ? '' : SOURCES[id].title
  return `${SOURCES[id].title}, ${clause}`
}

/** What is known of a thing, label by label; a row whose source is not the page's names it. */
export function Rows({ rows }: { readonly rows: readonly BookRow[] }) {
  return (
    <dl class="book-rows">
      {rows.map(({ label, text, source }) => (
        <div key={`${label}${text}`}>
          <dt>
            <Text of={label} />
          </dt>
          <dd>
            <Text of={text} />
            {source && (
              <span class="row-note">
                {nameOf(source)}
                <span class="standing">{STANDING_WORDS[source.standing]}</span>
              </span>
            )}
          </dd>
        </div>
      ))}
    </dl>
  )
}
