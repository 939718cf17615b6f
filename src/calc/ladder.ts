/** Which volts that come stand above volts that should hold against them. Numbers only. */
import type { RungFigure, RungRole } from './types.ts'

/** The rail each role stands on: what comes, or what holds. */
export const RAIL: Readonly<Record<RungRole, 'comes' | 'holds'>> = {
  'working-peak': 'comes',
  'bus-surge': 'comes',
  clamp: 'comes',
  'ring-up': 'comes',
  inrush: 'comes',
  'stand-off': 'holds',
  breakdown: 'holds',
  'circuit-withstand': 'holds',
  'capacitor-withstand': 'holds',
}

/** A rung that comes above the lowest one it is held against: ids, and the volts of both. */
export type LadderFault = {
  readonly comesId: string
  readonly comesV: number
  readonly holdsId: string
  readonly holdsV: number
}

/** Whether what comes is judged against what holds; default: every pair. */
export type Against = (comes: RungFigure, holds: RungFigure) => boolean

/** Compares the most that comes with the least that holds, in volts; rungs in any order. */
export function ladderFaults(rungs: readonly RungFigure[], against: Against = () => true): readonly LadderFault[] {
  const holding = rungs.filter(({ role }) => RAIL[role] === 'holds')
  return rungs
    .filter(({ role }) => RAIL[role] === 'comes')
    .flatMap((comes): readonly LadderFault[] => {
      const over = holding
        .filter((holds) => comes.maxV > holds.minV && against(comes, holds))
        .sort((a, b) => a.minV - b.minV)[0]
      return over === undefined ? [] : [{ comesId: comes.id, comesV: comes.maxV, holdsId: over.id, holdsV: over.minV }]
    })
}
