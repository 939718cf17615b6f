/** Windings that cannot be wound so: refused in the same words by every check that counts a choke. */
import { TOO_MUCH_LEAKAGE, UNLIKE_WINDINGS } from '../explain/choke.ts'
import { type Choke, isPossible } from '../network/choke.ts'
import type { Issue } from '../types.ts'

/** Which field asks for the impossible; empty for windings that can be. */
export function chokeIssues(choke: Choke): readonly Issue[] {
  if (isPossible(choke)) return []
  return isPossible({ ...choke, mismatchFrac: 0 })
    ? [{ key: 'chokeMismatchFrac', code: 'impossible', message: UNLIKE_WINDINGS }]
    : [{ key: 'chokeLeakageH', code: 'impossible', message: TOO_MUCH_LEAKAGE }]
}
