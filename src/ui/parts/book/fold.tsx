import type { ComponentChildren } from 'preact'
import { Icon } from '../icon.tsx'

/** Folds side by side, by their names; one that is opened takes the whole width. */
export const Names = ({ children }: { readonly children: ComponentChildren }) => <div class="names">{children}</div>

/** One tap away, by its name; on paper it is open. */
export function Fold(given: {
  readonly name: string
  readonly isOpen?: boolean
  readonly isNever?: boolean
  /** its name is no more than what stands in it says */
  readonly isRepeated?: boolean
  readonly children: ComponentChildren
}) {
  const { name, isOpen = false, isNever = false, isRepeated = false, children } = given
  return (
    <details class={`fold${isNever ? ' never-fold' : ''}${isRepeated ? ' repeated' : ''}`} open={isOpen}>
      <summary>
        {isNever && <Icon name="fails" />}
        <h2>{name}</h2>
      </summary>
      <div class="stack">{children}</div>
    </details>
  )
}
