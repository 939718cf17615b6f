/** The parts of a filter in the order of their values: what stands where, and over what range each can be. */
import { type BeadOhms, beadOhms } from '../network/bead.ts'
import type { Stage } from '../network/cleared.ts'
import type { Topology } from '../types.ts'
import type { Span, Surroundings } from './surroundings.ts'

/**
 * A part that is `marked·scale + fixed`, scale and fixed each from least to most. Farads or henries; resistance and
 * reactance of a bead, and the resistor of a damper, in ohms.
 */
export type PartRange = { readonly scale: Span; readonly fixed: Span }

/** What the marked figure stands for: shares of a capacitor, or of a single inductor, that a part can have. */
export type Marked = Span

export const NOTHING: Span = { least: 0, most: 0 }

/** Places of the parts among the values, −1 = none. A bead takes two places, resistance and reactance; so does a damper, capacitor and resistor. */
export type LaidOut = {
  readonly stages: readonly Stage[]
  readonly ranges: readonly PartRange[]
  readonly isBead: boolean
  readonly shunt1: number
  readonly shunt2: number
  readonly coil1: number
  readonly coil2: number
  readonly damper: number
  readonly cross: number
  readonly choke: number
  readonly bond: number
}

type Slot = 'c1' | 'c2' | 'l1' | 'l2'

/** Source to load. */
const ORDER: Readonly<Record<Topology, readonly Slot[]>> = {
  C: ['c1'],
  L: ['l1'],
  LC: ['l1', 'c1'],
  CL: ['c1', 'l1'],
  PI: ['c1', 'l1', 'c2'],
  T: ['l1', 'c1', 'l2'],
}

type StageParts = { readonly ohmPart?: number; readonly leadPart?: number }

const staged = (
  isSeries: boolean,
  part: number,
  of: Stage['of'],
  { ohmPart = -1, leadPart = -1 }: StageParts = {},
): Stage => ({ isSeries, part, of, ohmPart, leadPart })

/** The inductance of lead and bond: just what was entered, or anything up to that, each a part of its own. */
export type Leads = 'as-entered' | 'up-to'

/** `beadHz`: where a bead is looked at; the capacitors (or the single inductor) come first among the parts. */
export function layOut(around: Surroundings, marked: Marked, beadHz: number | undefined, leads: Leads): LaidOut {
  const { topology, damper, crossF, choke } = around
  const slots = ORDER[topology]
  const capacitors = slots.filter((slot) => slot[0] === 'c').length
  const ranges: PartRange[] = capacitorRanges(around, marked, capacitors)
  const fixed = (span: Span): number => ranges.push({ scale: NOTHING, fixed: span }) - 1
  const bead = beadHz === undefined ? undefined : beadOver(around, beadHz)
  const coil = (henries: readonly number[]): number => {
    if (bead !== undefined) {
      const at = fixed(bead.ohm)
      fixed(bead.reactanceOhm)
      return at
    }
    return topology === 'L' ? ranges.push({ scale: marked, fixed: NOTHING }) - 1 : fixed(spanOf(henries))
  }
  const coil1 = slots.includes('l1') ? coil(around.inductancesH) : -1
  const coil2 = slots.includes('l2') ? coil(around.inductances2H ?? around.inductancesH) : coil1
  const isDamped = damper !== undefined && capacitors > 0
  const damperAt = isDamped ? fixed(damper.farads) : -1
  if (isDamped) fixed(damper.ohm)
  const crossAt = crossF !== undefined && crossF.most > 0 ? fixed(crossF) : -1
  const chokeAt = choke === undefined ? -1 : fixed(choke.spanH)
  const upTo = (henries: number): number => (leads === 'up-to' && henries > 0 ? fixed({ least: 0, most: henries }) : -1)
  const shunt = (part: number, of: Stage['of'], ohmPart = -1): Stage =>
    staged(false, part, of, { ohmPart, leadPart: upTo(around.eslH) })
  const at = { c1: 0, c2: 1, l1: coil1, l2: coil2 }
  /** what stands across the last capacitor, or before the load where there is none */
  const beside = [
    ...(isDamped ? [shunt(damperAt, 'damper', damperAt + 1)] : []),
    ...(crossAt < 0 ? [] : [shunt(crossAt, 'cross')]),
  ]
  const last = slots.findLast((slot) => slot[0] === 'c')
  const own = slots.flatMap((slot): readonly Stage[] => {
    if (slot[0] === 'c') return [shunt(at[slot], 'own'), ...(slot === last ? beside : [])]
    return bead === undefined
      ? [staged(true, at[slot], 'own')]
      : [staged(true, at[slot], 'ohm'), staged(true, at[slot] + 1, 'reactance')]
  })
  const filter = last === undefined ? [...own, ...beside] : own
  const through = chokeAt < 0 ? [] : [staged(true, chokeAt, 'choke')]
  return {
    stages: choke?.side === 'source' ? [...through, ...filter] : [...filter, ...through],
    ranges,
    isBead: bead !== undefined,
    shunt1: capacitors > 0 ? 0 : -1,
    shunt2: capacitors > 1 ? 1 : capacitors > 0 ? 0 : -1,
    coil1,
    coil2,
    damper: damperAt,
    cross: crossAt,
    choke: chokeAt,
    bond: upTo(around.bondH),
  }
}

const spanOf = (values: readonly number[]): Span => ({ least: Math.min(...values), most: Math.max(...values) })

/** The load side of a Pi may be a share of its source side. */
function capacitorRanges({ shunt2Share = 1 }: Surroundings, marked: Marked, count: number): PartRange[] {
  const one: PartRange = { scale: marked, fixed: NOTHING }
  const behind: PartRange = {
    scale: { least: shunt2Share * marked.least, most: shunt2Share * marked.most },
    fixed: NOTHING,
  }
  return [one, behind].slice(0, count)
}

const NO_OHMS: BeadOhms = { ohm: NOTHING, reactanceOhm: NOTHING }

/** A bead earns nothing where it is not known. */
const beadOver = ({ bead }: Surroundings, hz: number): BeadOhms | undefined =>
  bead === undefined ? undefined : (beadOhms(bead, hz) ?? NO_OHMS)
