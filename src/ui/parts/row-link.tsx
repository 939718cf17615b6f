import type { ComponentChildren } from 'preact'
import { Icon } from './icon.tsx'

type Words = { readonly title: string; readonly children: ComponentChildren }

/** What a row that leads on says: its title, and a note under it. */
export function RowWords({ title, children }: Words) {
  return (
    <>
      <span>
        <strong>{title}</strong>
        <span class="row-note">{children}</span>
      </span>
      <Icon name="go" />
    </>
  )
}

type Given = Words & { readonly href: string; readonly onClick?: (() => void) | undefined }

/** A row that leads on to another place. */
export function RowLink({ href, onClick, ...words }: Given) {
  return (
    <a href={href} onClick={onClick}>
      <RowWords {...words} />
    </a>
  )
}
