import type { ComponentChildren } from 'preact'
import { useLayoutEffect } from 'preact/hooks'
import { Icon } from '../parts/icon.tsx'

let bars = 0

/** How many there are stands at the root, for styles of what lies under them; gives what takes it off again. */
function count(more: number): () => void {
  bars += more
  document.documentElement.dataset['bars'] = `${bars}`
  return () => void count(-more)
}

/** One notice above the places. */
export function Bar({
  children,
  role = 'status',
}: {
  readonly children: ComponentChildren
  readonly role?: 'status' | 'alert'
}) {
  useLayoutEffect(() => count(1), [])
  return (
    <div class="bar" role={role}>
      {children}
    </div>
  )
}

/** Every notice can be closed. */
export function PutAway({ onTap }: { readonly onTap: () => void }) {
  return (
    <button type="button" class="icon-button" onClick={onTap}>
      <Icon name="close" />
      <span class="unseen">Put this notice away</span>
    </button>
  )
}
