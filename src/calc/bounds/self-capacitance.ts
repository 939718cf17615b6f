/**
 * Coils with any self-capacitance up to what was entered: what is entered is the most it is. Below its resonance such a coil
 * is a larger inductance and nothing else, L/(1 − ω²·L·C), whatever stands across it; so that from L alone to that with all
 * of the capacitance lie all of them. Source: derived.
 */
import { hasInductor } from '../network/circuit.ts'
import type { Marked } from './layout.ts'
import type { Need, Surroundings } from './surroundings.ts'

/** A coil this near to its resonance is no inductance any more. */
const NEAR_RESONANCE = 1e-3

/** A bead is known by its resistance and reactance, whatever makes them. */
const hasCoil = ({ topology, bead }: Surroundings): boolean => hasInductor(topology) && bead === undefined

export const hasSelfCapacitance = (around: Surroundings): boolean =>
  (around.choke?.part.parallelF ?? 0) > 0 || (hasCoil(around) && (around.inductorParallelF ?? 0) > 0)

/** That share of it. */
export function withSelfCapacitance(around: Surroundings, share: number): Surroundings {
  const { choke, inductorParallelF } = around
  return {
    ...around,
    ...(inductorParallelF === undefined ? {} : { inductorParallelF: share * inductorParallelF }),
    ...(choke === undefined
      ? {}
      : { choke: { ...choke, part: { ...choke.part, parallelF: share * choke.part.parallelF } } }),
  }
}

/** The box of all of them at one need; undefined where a coil may be at its resonance or past it. */
export function withAnySelfCapacitance(
  around: Surroundings,
  need: Need,
  markedShare: Marked,
  marked: number,
): { readonly around: Surroundings; readonly markedShare: Marked } | undefined {
  const omegaSquare = (2 * Math.PI * need.hz) ** 2
  /** how many times an inductance looks larger */
  const growth = (henries: number, farads: number): number | undefined => {
    const left = 1 - omegaSquare * henries * farads
    return left > NEAR_RESONANCE ? 1 / left : undefined
  }
  const { inductancesH, inductances2H, topology } = around
  const coilF = hasCoil(around) ? (around.inductorParallelF ?? 0) : 0
  const single = topology === 'L' ? growth(markedShare.most * marked, coilF) : 1
  const first = growth(Math.max(...inductancesH), coilF)
  const second = growth(Math.max(...(inductances2H ?? inductancesH)), coilF)
  const wound = growth(around.choke?.spanH.most ?? 0, around.choke?.part.parallelF ?? 0)
  if (single === undefined || first === undefined || second === undefined || wound === undefined) return undefined
  const upTo = (henries: readonly number[], times: number) => [Math.min(...henries), times * Math.max(...henries)]
  const { choke, ...bare } = withSelfCapacitance(around, 0)
  return {
    around: {
      ...bare,
      needs: [need],
      inductancesH: upTo(inductancesH, first),
      ...(inductances2H === undefined ? {} : { inductances2H: upTo(inductances2H, second) }),
      ...(choke && { choke: { ...choke, spanH: { ...choke.spanH, most: wound * choke.spanH.most } } }),
    },
    markedShare: { least: markedShare.least, most: single * markedShare.most },
  }
}
