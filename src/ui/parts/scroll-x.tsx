import type { ComponentChildren } from 'preact'

/** A region that scrolls takes focus, so that arrow keys can scroll it. */
const REACHABLE = { tabIndex: 0 }

/** What may be wider than the screen scrolls inside this, never the page. */
export function ScrollX({ label, children }: { readonly label: string; readonly children: ComponentChildren }) {
  return (
    <section class="scroll-x" aria-label={label} {...REACHABLE}>
      {children}
    </section>
  )
}
