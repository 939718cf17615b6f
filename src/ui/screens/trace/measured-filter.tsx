import type { Desk } from '../../../state/desk.ts'

export function MeasuredFilter({ desk }: { readonly desk: Desk }) {
  return desk ? null : null
}
