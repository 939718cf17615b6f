import type { VNode } from 'preact'
import { useContext } from 'preact/hooks'
import { COMING, IsUnfolded } from './coming.tsx'
import { useSliced } from './sliced.ts'

/** A row may hold the whole working of a figure. */
const ROWS_A_SLICE = 3

/** Rows of something folded, drawn a few at a time, so that no turn takes as long as all of them. */
export function RowSlices({
  rows,
  atATime = ROWS_A_SLICE,
}: {
  readonly rows: readonly VNode[]
  readonly atATime?: number
}) {
  const slices = Math.ceil(rows.length / atATime)
  const drawn = useSliced(slices, useContext(IsUnfolded) === true)
  return (
    <>
      {rows.slice(0, drawn * atATime)}
      {drawn < slices && COMING}
    </>
  )
}
