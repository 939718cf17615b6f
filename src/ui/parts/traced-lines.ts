import { useRef } from 'preact/hooks'
import type { Line } from '../../calc/types.ts'

/**
 * The lines as they were when one came, went, or had a fact changed: all that a stored trace is held against. A key in
 * a name reads nothing anew.
 */
export function useTracedLines(lines: readonly Line[]): readonly Line[] {
  const kept = useRef(lines)
  const was = kept.current
  const isSame = lines.length === was.length && lines.every(({ id, facts }, at) => isOf(was[at], id, facts))
  if (!isSame) kept.current = lines
  return kept.current
}

const isOf = (was: Line | undefined, id: string, facts: Line['facts']): boolean => was?.id === id && was.facts === facts
