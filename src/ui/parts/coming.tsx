import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import { useTurns } from '../turns.ts'
import { useSliced } from './sliced.ts'
import { KnownWidth } from './width.ts'

/** Stands where something is still to come. */
export const COMING = <span hidden aria-busy="true" />

/** Inside of something folded: whether it is in sight, so that all of it is drawn at once. Undefined outside of any. */
export const IsUnfolded = createContext<boolean | undefined>(undefined)

/**
 * How many of `count` parts of a picture, behind what is drawn of it at first, are drawn by now, so that no turn takes as
 * long as all of them: on a first screen in turns, folded whenever the browser has a moment; on a sheet all at once.
 */
export function usePartsDrawn(count: number): number {
  const isUnfolded = useContext(IsUnfolded)
  const isOnSheet = useContext(KnownWidth) !== undefined
  const isFolded = isUnfolded !== undefined
  const turns = useTurns(isFolded || isOnSheet ? 0 : count)
  const slices = useSliced(isFolded ? count : 0, isUnfolded === true)
  if (isOnSheet) return count
  return isFolded ? slices : turns
}
