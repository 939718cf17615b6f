/** Insertion loss of what was fitted, per leg to chassis, by its nodes. */
import type { Topology } from '../../../src/calc/types.ts'
import type { Fitted } from './box.ts'
import { type BeadFacts, hasChoke, hasCrossOnSingle, isTwoWire, lineOf, type WindowFacts } from './facts.ts'
import { admittance, begin, CHASSIS, impedance, voltsAt } from './nodes.ts'

/** The order parts stand in from the noise source to its load. */
export const ORDER: Readonly<Record<Topology, readonly ('c1' | 'c2' | 'l1' | 'l2')[]>> = {
  C: ['c1'],
  L: ['l1'],
  LC: ['l1', 'c1'],
  CL: ['c1', 'l1'],
  PI: ['c1', 'l1', 'c2'],
  T: ['l1', 'c1', 'l2'],
}

/** A coil as it is: winding in series with inductance, self-capacitance and loss beside each other. */
export function coil(from: number, to: number, henries: number, facts: WindowFacts, w: number): void {
  const yRe = 1 / facts.inductorParallelOhm
  const yIm = w * facts.inductorParallelF - 1 / (w * henries)
  // y/(1 + R·y): nothing to divide by at a resonance without loss
  const nRe = 1 + facts.dcrOhm * yRe
  const nIm = facts.dcrOhm * yIm
  const square = nRe * nRe + nIm * nIm
  admittance(from, to, (yRe * nRe + yIm * nIm) / square, (yIm * nRe - yRe * nIm) / square)
}

/**
 * A bead between two nodes, its curve read on straight lines: the logarithm of R, and X, over the logarithm of f. Below its
 * first point what measures so there as R beside L. `legs` in a row; shares of R and of X.
 */
export function beadBetween(
  from: number,
  to: number,
  bead: BeadFacts,
  w: number,
  [rShare, xShare]: readonly [number, number],
  legs = 1,
): void {
  const f = w / (2 * Math.PI)
  const [first = 0] = bead.hz
  const r = bead.ohm
  const x = bead.reactanceOhm
  if (f < first) {
    const square = ((r[0] ?? 0) * rShare) ** 2 + ((x[0] ?? 0) * xShare) ** 2
    const conductance = ((r[0] ?? 0) * rShare) / square
    const susceptance = ((x[0] ?? 0) * xShare * first) / (square * f)
    admittance(from, to, conductance / legs, -susceptance / legs)
    return
  }
  const i = Math.max(
    0,
    bead.hz.findLastIndex((hz, k) => hz <= f && k < bead.hz.length - 1),
  )
  const [low = 1, high = 1] = [bead.hz[i], bead.hz[i + 1]]
  const t = Math.log(f / low) / Math.log(high / low)
  const ohm = (r[i] ?? 0) ** (1 - t) * (r[i + 1] ?? 0) ** t
  const reactance = (x[i] ?? 0) * (1 - t) + (x[i + 1] ?? 0) * t
  impedance(from, to, legs * rShare * ohm, legs * xShare * reactance)
}

/** One winding as a leg meets it: what is left of the coupled coils in this mode, its capacitance across, its resistance before. */
export function winding(from: number, to: number, henries: number, facts: WindowFacts, w: number, legs = 1): void {
  const yIm = (w * facts.chokeF) / legs - 1 / (w * henries)
  // y/(1 + R·y)
  const nIm = legs * facts.chokeOhm * yIm
  const square = 1 + nIm * nIm
  admittance(from, to, (yIm * nIm) / square, yIm / square)
}

/**
 * dB by which the volts at the noise load fall once the filter is fitted. Two wires in common mode: both legs in parallel,
 * so each sees twice the source, the load and the bond both flow through; differential: half of each and no bond, what
 * lies between the wires twice per leg.
 */
export function lossDb(facts: WindowFacts, fitted: Fitted, hz: number, sourceOhm: number): number {
  const w = 2 * Math.PI * hz
  const isPair = isTwoWire(facts)
  const isCommon = facts.mode === 'common'
  const z = !isPair ? 1 : isCommon ? 2 : 0.5
  const crossF = isPair && !isCommon && !hasCrossOnSingle(facts) ? 2 * facts.crossF * fitted.crossShare : 0
  // What is already on a pair lies between its wires, on any other line to chassis.
  const across = lineOf(facts).isPair !== true ? 1 : isCommon ? 0 : 2
  const bond = !isPair ? 1 : isCommon ? 2 : 0
  const zRe = z * sourceOhm
  const zIm = z * w * facts.sourceH
  const yLoadRe = 1 / (z * facts.loadOhm)
  const yLoadIm = (w * facts.loadF) / z - 1 / (w * z * facts.loadH)
  const existingF = across * facts.existingF
  const suppressorF = facts.suppressorF * fitted.suppressorShare
  const at = (place: Fitted['existingAt'], wanted: Fitted['existingAt'], farads: number) =>
    place === wanted ? w * farads : 0

  begin(1)
  admittance(0, CHASSIS, yLoadRe, yLoadIm + (fitted.existingAt === 'nowhere' ? 0 : w * existingF))
  const [bareRe, bareIm] = voltsAt(0, 0, zRe, zIm)

  const order = partsOf(facts, fitted)
  const bondRe = bond * facts.bondOhm
  const bondIm = bond * w * facts.bondH
  const series = order.filter((part) => part !== 'c1' && part !== 'c2' && part !== 'cross' && part !== 'damper').length
  const isTied = bondRe === 0 && bondIm === 0
  const plate = isTied ? CHASSIS : series + 1
  begin(series + (isTied ? 1 : 2))
  if (!isTied) impedance(plate, CHASSIS, bondRe, bondIm)
  admittance(0, CHASSIS, 0, at(fitted.existingAt, 'source', existingF) + at(fitted.suppressorAt, 'source', suppressorF))
  let node = 0
  for (const part of order) {
    if (part === 'l1' || part === 'l2') {
      const shares =
        part === 'l1' ? ([fitted.r1Share, fitted.x1Share] as const) : ([fitted.r2Share, fitted.x2Share] as const)
      if (facts.bead) beadBetween(node, node + 1, facts.bead, w, shares)
      else coil(node, node + 1, part === 'l1' ? fitted.l1H : fitted.l2H, facts, w)
      node++
    } else if (part === 'damper') {
      impedance(node, plate, fitted.dampOhm, w * facts.eslH - 1 / (w * fitted.dampF))
    } else if (part === 'choke') {
      winding(node, node + 1, legHenries(fitted, isCommon), facts, w)
      node++
    } else if (part === 'cross') {
      // Half of a capacitor between the wires: twice its farads, half its lead.
      if (crossF > 0) impedance(node, CHASSIS, facts.esrOhm / 2, (w * facts.eslH) / 2 - 1 / (w * crossF))
    } else {
      const farads = part === 'c1' ? fitted.c1F : fitted.c2F
      if (farads > 0) impedance(node, plate, facts.esrOhm, w * facts.eslH - 1 / (w * farads))
    }
  }
  const behind = at(fitted.existingAt, 'load', existingF) + at(fitted.suppressorAt, 'load', suppressorF)
  admittance(node, CHASSIS, yLoadRe, yLoadIm + behind)
  const [re, im] = voltsAt(node, 0, zRe, zIm)
  return 10 * Math.log10((bareRe * bareRe + bareIm * bareIm) / (re * re + im * im))
}

/** Both currents magnetise the core alike in common mode and cancel in differential mode. */
const legHenries = ({ windingH, leakageH }: Fitted, isCommon: boolean): number =>
  isCommon ? 2 * windingH - leakageH / 2 : leakageH / 2

export type Part = 'c1' | 'c2' | 'l1' | 'l2' | 'cross' | 'choke' | 'damper'

/** Every part from the noise source to its load: a line-to-line capacitor stands beside the last one to chassis, or behind it all. */
export function partsOf(facts: WindowFacts, { topology }: Pick<Fitted, 'topology'>): readonly Part[] {
  const own = ORDER[topology]
  const last = own.findLastIndex((part) => part[0] === 'c')
  const at = last < 0 ? own.length : last + 1
  const damper: readonly Part[] = facts.damper !== undefined && last >= 0 ? ['damper'] : []
  const crossed: readonly Part[] = [...own.slice(0, at), ...damper, 'cross', ...own.slice(at)]
  if (!hasChoke(facts)) return crossed
  return facts.chokeSide === 'source' ? ['choke', ...crossed] : [...crossed, 'choke']
}
