import type { Linked as Link } from '../../../state/book.ts'
import { Icon } from '../icon.tsx'

/** What leads on, one tap away: the screen is about something else. */
export function FoldedLinks({ links, label }: { readonly links: readonly Link[]; readonly label: string }) {
  if (links.length === 0) return null
  return (
    <details class="fold">
      <summary>{label}</summary>
      <LinkRows links={links} />
    </details>
  )
}

/** Rows that lead on: of what kind each is, and what it is about. */
export function LinkRows({ links }: { readonly links: readonly Link[] }) {
  return (
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
  )
}
