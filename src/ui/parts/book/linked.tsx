import type { Linked as Link } from '../../../state/book.ts'
import { Icon } from '../icon.tsx'

/** Rows that lead on: of what kind each is, and what it is about. */
export function Linked({ links, label }: { readonly links: readonly Link[]; readonly label: string }) {
  if (links.length === 0) return null
  return (
    <section aria-label={label}>
      <h2>{label}</h2>
      <ul class="rows">
        {links.map(({ hash, kind, title }) => (
          <li key={hash}>
            <a href={hash}>
              <span>
                <span class="tag">{kind}</span> {title}
              </span>
              <Icon name="go" />
            </a>
          </li>
        ))}
      </ul>
    </section>
  )
}
