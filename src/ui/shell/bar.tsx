import type { ComponentChildren } from 'preact'
import { Icon } from '../parts/icon.tsx'
import { useRootMark } from '../parts/root-mark.ts'

/** One notice above the places. */
export function Bar({
  children,
  role = 'status',
}: {
  readonly children: ComponentChildren
  readonly role?: 'status' | 'alert'
}) {
  useRootMark('bar')
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
