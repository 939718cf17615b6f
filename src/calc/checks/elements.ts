/** The inductor, the bead and the damping that the fields describe, over their spread; and what is missing of them. */
import type { LineKind } from '../../reference/line-kinds.ts'
import { leastShare, mostShare, type Spread } from '../bounds/worst-case.ts'
import { type Bead, type BeadPoint, beadRangeHz, type Span } from '../network/bead.ts'
import type { ElementLack } from '../network/lacks.ts'
import { leftAtCurrent, supplyPeakA } from '../network/saturation.ts'
import type { Given, Issue } from '../types.ts'
import type { elementInputs } from './element-inputs.ts'

export type ElementGiven = Given<typeof elementInputs>

/** A resistor and a capacitor in series, in service. */
export type Damper = {
  readonly farads: Span
  readonly ohm: Span
  readonly marked: { readonly ohm: number; readonly farads: number }
}

export type Elements = {
  /** least and most inductance at the current of the line; without a bead */
  readonly inductanceH: Span
  readonly bead: Bead | undefined
  readonly damper: Damper | undefined
  /** facts without which a row with an inductor cannot be judged */
  readonly lacks: readonly ElementLack[]
}

type Around = {
  readonly kind: LineKind | undefined
  readonly spread: Spread
  /** as entered, its least */
  readonly inductanceH: number
  readonly loadW: number | undefined
  readonly needHz: readonly number[]
  /** the signal reaches up to there; 0 = no signal, or not known */
  readonly bandHz: number
}

export function elementsOf(given: ElementGiven, around: Around): Elements {
  const { spread, inductanceH } = around
  const growth = (1 + spread.tolerance.highFrac) / (1 - spread.tolerance.lowFrac)
  const left = leftAtCurrent({
    lostFrac: given.saturationFrac,
    saturationA: given.saturationA,
    lineA: given.lineA ?? supplyA(around),
  })
  const isLeftKnown = typeof left === 'number'
  const bead = hasBead(given) ? beadOf(given, spread) : undefined
  const isBeadKnown = typeof bead === 'object'
  return {
    inductanceH: { least: inductanceH * (isLeftKnown ? left : AS_RATED), most: inductanceH * growth },
    bead: isBeadKnown ? bead : undefined,
    damper: damperOf(given, spread),
    lacks: hasBead(given) ? beadLacks(bead, around) : isLeftKnown ? [] : [left],
  }
}

function beadLacks(bead: Bead | ElementLack | undefined, { needHz, bandHz }: Around): readonly ElementLack[] {
  if (typeof bead !== 'object') return bead === undefined ? [] : [bead]
  const { least, most } = beadRangeHz(bead)
  return [
    ...(needHz.some((hz) => hz < least || hz > most) ? (['bead-range'] as const) : []),
    ...(bandHz > most ? (['bead-band'] as const) : []),
  ]
}

/** What is not known is computed as rated, and judged as unknown. */
const AS_RATED = 1

function supplyA({ kind, loadW }: Around): number | undefined {
  const supply = kind?.supply
  if (supply === undefined || loadW === undefined) return undefined
  return supplyPeakA({ loadW, nominalRmsV: supply.nominalRmsV, isAc: supply.nominalHz > 0 })
}

export const hasBead = ({ beadHz, beadOhm, beadReactanceOhm, beadImpedanceOhm }: ElementGiven): boolean =>
  [beadHz, beadOhm, beadReactanceOhm, beadImpedanceOhm].some((list) => list !== undefined)

/** The bead as entered; or what is missing of it. Lists were compared before: `elementIssues`. */
function beadOf(given: ElementGiven, { tolerance }: Spread): Bead | ElementLack {
  const { beadHz, beadOhm, beadReactanceOhm, beadImpedanceOhm, beadBiasFrac } = given
  if (beadHz === undefined || beadHz.length < LEAST_POINTS) return 'bead-frequencies'
  if (beadOhm === undefined) return 'bead-resistance'
  const spans = reactances(beadOhm, beadReactanceOhm, beadImpedanceOhm)
  if (spans === undefined) return 'bead-reactance'
  const points = beadHz.map((hz, i): BeadPoint => ({ hz, ohm: beadOhm[i] as number, reactanceOhm: spans[i] as Span }))
  return {
    points,
    share: { least: (1 - tolerance.lowFrac) * (1 - beadBiasFrac), most: 1 + tolerance.highFrac },
  }
}

const LEAST_POINTS = 3

/** X as entered; from |Z| its size, inductive below the largest |Z|, of either sign from there on. */
function reactances(
  ohm: readonly number[],
  reactanceOhm: readonly number[] | undefined,
  impedanceOhm: readonly number[] | undefined,
): readonly Span[] | undefined {
  if (reactanceOhm !== undefined) return reactanceOhm.map((x) => ({ least: x, most: x }))
  if (impedanceOhm === undefined) return undefined
  const top = impedanceOhm.indexOf(Math.max(...impedanceOhm))
  return impedanceOhm.map((z, i) => {
    const size = Math.sqrt(Math.max(0, z * z - (ohm[i] as number) ** 2))
    return { least: i < top ? size : -size, most: size }
  })
}

/** Resistors are taken within 5 %. Common practice. */
const RESISTOR_FRAC = 0.05

function damperOf({ dampOhm, dampF }: ElementGiven, spread: Spread): Damper | undefined {
  if (dampOhm === undefined || dampF === undefined || dampF === 0) return undefined
  return damper({ ohm: dampOhm, farads: dampF }, spread)
}

/** A damping branch as marked, over its spread. */
export const damper = (marked: { readonly ohm: number; readonly farads: number }, spread: Spread): Damper => ({
  farads: { least: leastShare(spread) * marked.farads, most: mostShare(spread) * marked.farads },
  ohm: { least: (1 - RESISTOR_FRAC) * marked.ohm, most: (1 + RESISTOR_FRAC) * marked.ohm },
  marked,
})

/** What of these fields cannot be, each with what would be right. */
export function elementIssues(given: ElementGiven): readonly Issue[] {
  return [...beadIssues(given), ...dampingIssues(given)]
}

function dampingIssues({ dampOhm, dampF }: ElementGiven): readonly Issue[] {
  if (dampOhm !== undefined && dampF === undefined)
    return [
      issue(
        'dampF',
        'A damping resistor stands in series with a capacitor: enter that too, at least four times the filter’s.',
      ),
    ]
  if (dampF !== undefined && dampF > 0 && dampOhm === undefined)
    return [issue('dampOhm', 'A damping capacitor stands in series with a resistor: enter that too, about √(L/C).')]
  return []
}

function beadIssues(given: ElementGiven): readonly Issue[] {
  const { beadHz, beadOhm, beadReactanceOhm, beadImpedanceOhm } = given
  const lists = [
    ['beadOhm', beadOhm],
    ['beadReactanceOhm', beadReactanceOhm],
    ['beadImpedanceOhm', beadImpedanceOhm],
  ] as const
  const said = lists.flatMap(([key, list]) =>
    beadHz !== undefined && list !== undefined && list.length !== beadHz.length
      ? [
          issue(
            key,
            `${list.length} of these for ${beadHz.length} bead frequencies; give one for each, separated by “;”.`,
          ),
        ]
      : [],
  )
  if (beadHz?.some((hz, i) => i > 0 && hz <= (beadHz[i - 1] as number)))
    said.push(issue('beadHz', 'Give the bead frequencies rising, each once: 1M;25M;100M.'))
  if (beadOhm?.some((ohm) => ohm <= 0))
    said.push(issue('beadOhm', 'The resistance of a bead is above 0 Ω at every frequency; read it from its curve.'))
  if (said.length > 0 || beadOhm === undefined) return said
  if (beadReactanceOhm !== undefined && (beadReactanceOhm[0] as number) <= 0)
    return [
      issue(
        'beadReactanceOhm',
        'At its first frequency a bead is inductive: give an X above 0 Ω there, or a lower first frequency.',
      ),
    ]
  if (beadImpedanceOhm?.some((z, i) => z < (beadOhm[i] ?? 0) || (i === 0 && z === beadOhm[0])))
    return [
      issue(
        'beadImpedanceOhm',
        '|Z| cannot be below R, and at the first frequency it lies above: give R and |Z| of the same frequency.',
      ),
    ]
  if (
    beadReactanceOhm === undefined &&
    beadImpedanceOhm !== undefined &&
    // one point shows no curve yet: what is missing is said of it, not what is wrong
    beadImpedanceOhm.length > 1 &&
    (beadImpedanceOhm[0] as number) >= Math.max(...beadImpedanceOhm)
  )
    return [
      issue(
        'beadImpedanceOhm',
        'The first |Z| is the largest: give a lower first frequency, where the bead is inductive.',
      ),
    ]
  return []
}

const issue = (key: string, message: string): Issue => ({ key, code: 'impossible', message })
