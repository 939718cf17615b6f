/**
 * A pair solved with both its wires, the plate they share and everything between them, against the one leg its loss is
 * worked out on. In common mode both wires are tied at either end; in differential mode one is driven against the other.
 */
import { expect, it } from 'vitest'
import { axesOf, boxOf, type Fitted, fittedAt, NOTHING_THERE, placesOf } from './support/box.ts'
import { lineOf, type WindowFacts } from './support/facts.ts'
import { admittance, begin, CHASSIS, impedance, solve, voltsOf } from './support/nodes.ts'
import { coil, lossDb, ORDER } from './support/noise.ts'
import { randomWindow } from './support/random-window.ts'

const WINDOWS = 1500

/** Volts of the load for 1 V of the source, with the filter or without. */
function loadVolts(facts: WindowFacts, fitted: Fitted, hz: number, sourceOhm: number, withFilter: boolean): number {
  const w = 2 * Math.PI * hz
  const isCommon = facts.mode === 'common'
  const order = withFilter ? ORDER[fitted.topology] : []
  const steps = order.filter((part) => part[0] === 'l').length
  const last = order.findLast((part) => part[0] === 'c')
  /** both wires after so many coils: one node at the tied ends of common mode */
  const wires = (step: number): readonly [number, number] =>
    isCommon && (step === 0 || step === steps) ? [2 * step, 2 * step] : [2 * step, 2 * step + 1]
  const isTied = facts.bondOhm === 0 && facts.bondH === 0
  const nodes = 2 * (steps + 1)
  const plate = isTied ? CHASSIS : nodes

  begin(isTied ? nodes : nodes + 1)
  // A node nothing stands at is held, and so is a pair with no other way to chassis.
  if (isCommon) for (const end of new Set([0, steps])) admittance(2 * end + 1, CHASSIS, 1, 0)
  const isHeld = isCommon || (withFilter && (last !== undefined || fitted.suppressorAt !== 'nowhere'))
  if (!isHeld) admittance(1, CHASSIS, 1, 0)
  if (!isTied) impedance(plate, CHASSIS, facts.bondOhm, w * facts.bondH)
  let step = 0
  for (const part of order) {
    const here = wires(step)
    if (part === 'l1' || part === 'l2') {
      const there = wires(step + 1)
      for (const wire of [0, 1] as const)
        coil(here[wire], there[wire], part === 'l1' ? fitted.l1H : fitted.l2H, facts, w)
      step++
      continue
    }
    const crossF = part === last && !isCommon ? 2 * facts.crossF * fitted.crossShare : 0
    const farads = (part === 'c1' ? fitted.c1F : fitted.c2F) + crossF
    if (farads > 0) for (const wire of here) impedance(wire, plate, facts.esrOhm, w * facts.eslH - 1 / (w * farads))
  }
  if (withFilter && fitted.suppressorAt !== 'nowhere')
    for (const wire of wires(fitted.suppressorAt === 'source' ? 0 : steps))
      admittance(wire, CHASSIS, 0, w * facts.suppressorF * fitted.suppressorShare)
  if (fitted.existingAt !== 'nowhere') {
    const [first, second] = wires(fitted.existingAt === 'source' ? 0 : steps)
    if (first !== second) admittance(first, second, 0, w * facts.existingF)
  }
  const [first, second] = wires(steps)
  admittance(first, isCommon ? CHASSIS : second, 1 / facts.loadOhm, w * facts.loadF - 1 / (w * facts.loadH))
  const [driven, against] = wires(0)
  solve(driven, sourceOhm, w * facts.sourceH, isCommon ? CHASSIS : against)
  const [re, im] = voltsOf(first)
  const [reBack, imBack] = isCommon ? [0, 0] : voltsOf(second)
  return Math.hypot(re - reBack, im - imBack)
}

it('one leg loses what the whole pair loses, in either mode', () => {
  const seen = { common: 0, differential: 0 }
  for (let index = 0; index < WINDOWS; index++) {
    const { facts, next } = randomWindow(11, index)
    if (!lineOf(facts).isPair) continue
    const topology = facts.topology ?? 'PI'
    const box = boxOf(facts, topology, 10 ** (-12 + 4 * next()))
    const places = placesOf(facts)
    const fitted = fittedAt(box, axesOf(box).map(next), places[Math.floor(next() * places.length)] ?? NOTHING_THERE)
    for (const { hz } of facts.needs)
      for (const sourceOhm of facts.sourceOhm) {
        const whole = [false, true].map((withFilter) => loadVolts(facts, fitted, hz, sourceOhm, withFilter))
        const lost = 20 * Math.log10((whole[0] ?? 0) / (whole[1] ?? 0))
        expect(lost, JSON.stringify({ facts, fitted, hz, sourceOhm })).toBeCloseTo(
          lossDb(facts, fitted, hz, sourceOhm),
          4,
        )
        seen[facts.mode]++
      }
  }
  expect(Math.min(seen.common, seen.differential)).toBeGreaterThan(300)
})
