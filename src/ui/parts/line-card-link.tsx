import { lineCardId } from '../../guide/book/lines/line-card-id.ts'
import { lineKindById } from '../../reference/line-kinds.ts'
import { hashOf } from '../../state/router.ts'

/** From a kind of line to its card in the field book. Nothing where none is chosen. */
export function LineCardLink({ kind }: { readonly kind: string }) {
  const known = lineKindById(kind)
  if (known === undefined) return null
  return (
    <p class="small">
      <a class="link" href={hashOf('notes', lineCardId(known.id))}>
        Line card: {known.name}
      </a>
    </p>
  )
}
