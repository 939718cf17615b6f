/**
 * How much of the common mode stands between the wires of a pair whose legs are not alike: both wires, their plate and all
 * that couples them, by node admittances. Each leg has a source and a load of its own, twice those of the pair.
 */
import type { Topology } from '../../../src/calc/types.ts'
import { type Box, boxOf, type Fitted, fittedAt, KEYS, NOTHING_THERE } from './box.ts'
import { hasChoke, isTwoWire, type WindowFacts } from './facts.ts'
import type { Effort } from './judge.ts'
import { admittance, begin, CHASSIS, impedance, solve, voltsOf, windings } from './nodes.ts'
import { coil, type Part, partsOf } from './noise.ts'

/** Whether the question has an answer: noise that both wires carry alike. */
export const hasConversion = (facts: WindowFacts): boolean => isTwoWire(facts) && facts.mode === 'common'

const isInLine = (part: Part): boolean => part === 'l1' || part === 'l2' || part === 'choke'
/** A source of nothing still has to be a branch. */
const LEAST_OHM = 1e-9

/** dB of the volts between the wires over the common mode at the load without the filter; `larger` winding first or second. */
export function conversionDb(
  facts: WindowFacts,
  legs: readonly [Fitted, Fitted],
  hz: number,
  sourceOhm: number,
  larger: 1 | -1,
): number {
  const w = 2 * Math.PI * hz
  const order = partsOf(facts, legs[0])
  const steps = order.filter(isInLine).length
  const isTied = facts.bondOhm === 0 && facts.bondH === 0
  const drive = 2 * (steps + 1)
  const plate = isTied ? CHASSIS : drive + 1
  const wires = (step: number): readonly [number, number] => [2 * step, 2 * step + 1]
  const [zRe, zIm] = [Math.max(LEAST_OHM, 2 * sourceOhm), 2 * w * facts.sourceH]
  const [yRe, yIm] = [1 / (2 * facts.loadOhm), (w * facts.loadF) / 2 - 1 / (2 * w * facts.loadH)]
  begin(drive + (isTied ? 1 : 2))
  for (const wire of wires(0)) impedance(drive, wire, zRe, zIm)
  if (!isTied) impedance(plate, CHASSIS, facts.bondOhm, w * facts.bondH)
  let step = 0
  for (const part of order) {
    const here = wires(step)
    if (part === 'cross') {
      const crossF = facts.crossF * legs[0].crossShare
      if (crossF > 0) impedance(...here, facts.esrOhm, w * facts.eslH - 1 / (w * crossF))
      continue
    }
    if (!isInLine(part)) {
      for (const [i, wire] of here.entries()) {
        const farads = part === 'c1' ? (legs[i] as Fitted).c1F : (legs[i] as Fitted).c2F
        if (farads > 0) impedance(wire, plate, facts.esrOhm, w * facts.eslH - 1 / (w * farads))
      }
      continue
    }
    const there = wires(step + 1)
    if (part === 'choke') {
      const { windingH, leakageH } = legs[0]
      const apart = (larger * facts.chokeMismatch) / 2
      const both = {
        firstH: windingH * (1 + apart),
        secondH: windingH * (1 - apart),
        mutualH: windingH - leakageH / 2,
        ohm: facts.chokeOhm,
        farads: facts.chokeF,
      }
      windings([here[0], there[0]], [here[1], there[1]], both, w)
    } else
      for (const [i, wire] of here.entries()) {
        const leg = legs[i] as Fitted
        coil(wire, there[i] as number, part === 'l1' ? leg.l1H : leg.l2H, facts, w)
      }
    step++
  }
  const ends = wires(steps)
  for (const wire of ends) admittance(wire, CHASSIS, yRe, yIm)
  solve(drive, 0, 0)
  const [a, b] = [voltsOf(ends[0]), voltsOf(ends[1])]
  const bare = Math.hypot(1 + zRe * yRe - zIm * yIm, zRe * yIm + zIm * yRe)
  return 20 * Math.log10(Math.hypot(a[0] - b[0], a[1] - b[1]) * bare)
}

/** Worst over both legs, each anywhere in the box; the choke is one. */
export function worstConversionDb(
  facts: WindowFacts,
  topology: Topology,
  markedF: number,
  effort: Effort,
  next: () => number,
  lowest: (
    axes: number,
    variants: number,
    valueAt: (at: readonly number[], variant: number) => number,
    effort: Effort,
    next: () => number,
  ) => number,
): number {
  const box = boxOf({ ...facts, suppressorF: 0 }, topology, markedF)
  const shared = KEYS.filter((key) => isOfBoth(key) && box[key].most > box[key].least).length
  const own = KEYS.filter((key) => !isOfBoth(key) && box[key].most > box[key].least).length
  const variants = facts.needs.flatMap(({ hz }) =>
    facts.sourceOhm.flatMap((ohm) =>
      (hasChoke(facts) && facts.chokeMismatch > 0 ? ([1, -1] as const) : ([1] as const)).map((larger) => ({
        hz,
        ohm,
        larger,
      })),
    ),
  )
  const valueAt = (at: readonly number[], variant: number): number => {
    const { hz, ohm, larger } = variants[variant] as (typeof variants)[number]
    const rest = at.slice(2 * own)
    const first = placed(box, [...at.slice(0, own), ...rest])
    const second = placed(box, [...at.slice(own, 2 * own), ...rest])
    return -conversionDb(facts, [first, second], hz, ohm, larger)
  }
  return -lowest(2 * own + shared, variants.length, valueAt, effort, next)
}

/** The core of a choke and a line-to-line capacitor belong to both legs. */
const isOfBoth = (key: (typeof KEYS)[number]): boolean =>
  key === 'windingH' || key === 'leakageH' || key === 'crossShare' || key === 'suppressorShare'

const placed = (box: Box, at: readonly number[]): Fitted => fittedAt(box, at, NOTHING_THERE)
