/** The common-mode choke that the fields of the filter check describe, and what a pair makes of the ends. */
import { lineKindById } from '../../../reference/line-kinds.ts'
import { bondFactor, legFactor, loadPerLeg, type NoiseMode, sourcePerLeg } from '../../bounds/legs.ts'
import { type Choke, type ChokeCurrent, chokeSpanH, leakageSpanH } from '../../network/choke.ts'
import type { NoiseLoad, NoiseSource } from '../../network/circuit.ts'
import type { Issue } from '../../types.ts'
import { chokeIssues } from '../choke-issues.ts'
import type { FilterGiven } from './inputs.ts'

export type FilterChoke = {
  /** as entered; a leakage that is not stated at the end that attenuates less */
  readonly choke: Choke
  readonly current: ChokeCurrent
  readonly side: 'source' | 'load'
  /** inductance a leg sees, over the tolerance */
  readonly spanH: { readonly least: number; readonly most: number }
  readonly isLeakageStated: boolean
}

export const hasChoke = ({ chokeH }: FilterGiven): boolean => chokeH !== undefined && chokeH > 0

/** One wire through the core is asked for by name; every wire is what makes it a choke. */
const isOneWire = ({ chokeWires }: FilterGiven): boolean => chokeWires === 'one'

const isPairLine = ({ lineKind }: FilterGiven): boolean => lineKindById(lineKind ?? '')?.isPair ?? false

/**
 * A choke works in one mode or the other: without the mode there is nothing to compute. On a pair the ends of a leg are half
 * or twice those entered, by the mode: without it no need can be judged.
 */
export const needsMode = (given: FilterGiven): boolean =>
  given.mode === undefined &&
  ((hasChoke(given) && !isOneWire(given)) || (isPairLine(given) && given.neededDb !== undefined))

export function chokeOf(given: FilterGiven): FilterChoke | undefined {
  const { chokeH: windingH, chokeLeakageH, toleranceFrac: tolerance } = given
  if (windingH === undefined || windingH === 0) return undefined
  const current: ChokeCurrent = isOneWire(given)
    ? 'one-wire'
    : given.mode === 'differential'
      ? 'differential'
      : 'common'
  const growth = (1 + tolerance.highFrac) / (1 - tolerance.lowFrac)
  const size = { windingH, leakageH: chokeLeakageH, growth }
  const usual = leakageSpanH({ ...size, growth: 1 })
  const leakageH = chokeLeakageH ?? (current === 'differential' ? usual.least : usual.most)
  return {
    choke: {
      windingH,
      leakageH,
      windingOhm: given.chokeOhm,
      acrossF: given.chokeF,
      mismatchFrac: given.chokeMismatchFrac ?? 0,
    },
    current,
    side: given.chokeSide === 'load' ? 'load' : 'source',
    spanH: chokeSpanH(size, current),
    isLeakageStated: chokeLeakageH !== undefined,
  }
}

/** Windings that cannot be wound so. */
export function issuesOfChoke(given: FilterGiven): readonly Issue[] {
  const found = chokeOf(given)
  return found === undefined ? [] : chokeIssues(found.choke)
}

/** The mode in which the ends are those of a pair; undefined = one wire, its ends as entered. */
export function pairMode(given: FilterGiven): NoiseMode | undefined {
  if (given.mode === undefined) return undefined
  if (!isPairLine(given) && !(hasChoke(given) && !isOneWire(given))) return undefined
  return given.mode === 'differential' ? 'differential' : 'common'
}

export const sourceOfLeg = (source: NoiseSource, mode: NoiseMode | undefined): NoiseSource =>
  mode === undefined ? source : sourcePerLeg(source, legFactor(true, mode))

export const loadOfLeg = (load: NoiseLoad, mode: NoiseMode | undefined): NoiseLoad =>
  mode === undefined ? load : loadPerLeg(load, legFactor(true, mode))

/** How often one leg sees the bond entered. */
export const bondShare = (mode: NoiseMode | undefined): number => (mode === undefined ? 1 : bondFactor(true, mode))
