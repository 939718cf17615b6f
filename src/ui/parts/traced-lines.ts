import type { Line } from '../../calc/types.ts'
import { useFormer } from './former.ts'

/**
 * The lines as they were when one came, went, or had a fact changed: all that a stored trace is held against. A key in
 * a name reads nothing anew.
 */
export const useTracedLines = (lines: readonly Line[]): readonly Line[] => useFormer(lines, areTracedAlike)

const areTracedAlike = (former: readonly Line[], now: readonly Line[]): boolean =>
  now.length === former.length && now.every(({ id, facts }, at) => isOf(former[at], id, facts))

const isOf = (was: Line | undefined, id: string, facts: Line['facts']): boolean => was?.id === id && was.facts === facts
