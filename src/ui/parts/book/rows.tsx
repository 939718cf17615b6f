import type { BookRow } from '../../../guide/book/types.ts'
import { SOURCES } from '../../../reference/sources.ts'
import { STANDING_WORDS } from '../../../reference/standing.ts'

/** What is known of a thing, label by label; a row whose source is not the page's names it. */
export function Rows({ rows }: { readonly rows: readonly BookRow[] }) {
  return (
    <dl class="book-rows">
      {rows.map(({ label, text, source }) => (
        <div key={`${label}${text}`}>
          <dt>{label}</dt>
          <dd>
            {text}
            {source && (
              <span class="row-note">
                {SOURCES[source.id].title}
                {source.clause ? `, ${source.clause}` : ''}
                <span class="standing">{STANDING_WORDS[source.standing]}</span>
              </span>
            )}
          </dd>
        </div>
      ))}
    </dl>
  )
}
