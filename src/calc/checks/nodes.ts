/** The nodes of a bus as the checks count them. */
import type { LineKind } from '../../reference/line-kinds.ts'
import { otherNodesF } from '../loading/other-nodes.ts'
import type { Issue } from '../types.ts'

/** What is on the line with the other nodes counted. */
export function onLine(
  kind: LineKind | undefined,
  { existingF, nodeCount }: { readonly existingF: number; readonly nodeCount: number | undefined },
): { readonly existingF: number; readonly otherNodesF: number } {
  const nodesF = kind === undefined || nodeCount === undefined ? 0 : (otherNodesF(kind, nodeCount) ?? 0)
  return { existingF: existingF + nodesF, otherNodesF: nodesF }
}

/** Nodes cannot be counted where nobody says what one of them may have: a count would then take nothing, which is no answer. */
export function nodeIssues(kind: LineKind | undefined, nodeCount: number | undefined): readonly Issue[] {
  if (kind === undefined || nodeCount === undefined || nodeCount === 1) return []
  if (otherNodesF(kind, nodeCount) !== undefined) return []
  const message =
    'No document says what one node of this line may have: leave this empty, and enter what the other nodes add under “Already on the line”.'
  return [{ key: 'nodeCount', code: 'no-figure', message }]
}
