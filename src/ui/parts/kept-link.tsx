import { useEffect, useRef } from 'preact/hooks'
import { hashOf } from '../../state/router.ts'
import { Icon } from './icon.tsx'

/** Takes the place of the Keep button; when that happened just now, focus comes along. */
export function KeptLink({ id, isFresh = false }: { readonly id: string; readonly isFresh?: boolean }) {
  const link = useRef<HTMLAnchorElement>(null)
  useEffect(() => {
    if (isFresh) link.current?.focus()
  }, [isFresh])
  return (
    <a ref={link} class="button strong" href={hashOf('log', id)}>
      <Icon name="ok" />
      Kept: open it in the log
    </a>
  )
}
