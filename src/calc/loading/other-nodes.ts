/** What the other nodes of a bus put on it, each at what its document allows one node. Numbers only. */
import type { LineKind } from '../../reference/line-kinds.ts'

/**
 * Farads the nodes of a bus beside this one may add: between the wires of a pair, to chassis on a single line.
 *   (n − 1)·(C_between + C_leg/2) on a pair, (n − 1)·C_leg on a single line
 * Undefined where no document says what one node may have. nodeCount counts this node too, from 1.
 * Source: the figures a node is allowed in `permitted` of the kind; C_dm = C/2 for equal legs (derived).
 */
export function otherNodesF(kind: LineKind, nodeCount: number): number | undefined {
  const figures = kind.permitted.flatMap(({ nodeF, counts }) =>
    nodeF === undefined ? [] : [counts === 'leg' && kind.isPair ? nodeF / 2 : nodeF],
  )
  if (figures.length === 0) return undefined
  return (nodeCount - 1) * figures.reduce((sum, each) => sum + each, 0)
}
