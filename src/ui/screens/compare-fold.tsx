import { useState } from 'preact/hooks'
import type { CheckModel } from '../../state/check.ts'
import { lazy } from '../lazy.tsx'

const Compare = lazy(async () => (await import('./compare.tsx')).Compare)

/** Variants stand open where the address or the Log brings some. */
export function CompareFold({ model }: { readonly model: CheckModel }) {
  const [isOpen, setOpen] = useState(() => Object.keys(model.variants.peek()).length > 0)
  return (
    <details class="fold" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Compare with variants</summary>
      {isOpen && <Compare model={model} />}
    </details>
  )
}
