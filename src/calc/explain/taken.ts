/** What a ceiling is by itself, what is already taken of it, and what is left: one sentence for every strip. */
import { perLegF, roomUnderF, type Taken } from '../bounds/room.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Bound } from '../types.ts'

const farads = (si: number) => formatQuantity(si, 'capacitance', 3)

export type TakenShare = {
  /** the ceiling with nothing taken, farads of each leg (of the line, where it is single) */
  readonly ownF: number
  readonly leftF: number
  readonly sentence: string
}

/** Undefined where nothing is taken: the ceiling and what is left are one. */
export function takenShare(bound: Bound, taken: Taken): TakenShare | undefined {
  const ownF = perLegF(bound, taken.isPair)
  const leftF = Math.max(0, roomUnderF(bound, taken))
  const counts = bound.per === 'pair' || !taken.isPair
  const twice = taken.isPair ? 2 : 1
  const nodesF = bound.nature === 'permitted' ? 0 : (taken.otherNodesF ?? 0)
  const onLineF = taken.existingF - (taken.otherNodesF ?? 0)
  const across = taken.isPair ? ' (twice what lies between the wires)' : ''
  const shares = [
    taken.suppressorF > 0 ? `the suppressor takes ${farads(taken.suppressorF)}` : undefined,
    counts && onLineF > 0 ? `what is already on the line ${farads(twice * onLineF)}${across}` : undefined,
    counts && nodesF > 0 ? `the other nodes ${farads(twice * nodesF)}${across}` : undefined,
    counts && taken.isPair && taken.crossF > 0
      ? `the line-to-line capacitor ${farads(2 * taken.crossF)}${across}`
      : undefined,
  ].filter((share) => share !== undefined)
  if (shares.length === 0) return undefined
  const left = leftF > 0 ? `${farads(leftF)} are left` : 'nothing is left'
  return {
    ownF,
    leftF,
    sentence: `The line itself stands ${farads(ownF)}${taken.isPair ? ' on each leg' : ''}: ${shares.join(', ')}, ${left}. What is taken earns no attenuation.`,
  }
}
