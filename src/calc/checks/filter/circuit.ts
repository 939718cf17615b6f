/** The circuit that the fields of the filter check describe. */
import { beadPart } from '../../network/bead.ts'
import { chokePart } from '../../network/choke.ts'
import { type FilterCircuit, hasCapacitor, NO_SERIES, NO_SHUNT } from '../../network/circuit.ts'
import { acrossCoilF } from '../../network/self-resonance.ts'
import type { Topology } from '../../types.ts'
import { bondShare, chokeOf, pairMode } from './choke.ts'
import { filterElements } from './elements.ts'
import type { FilterGiven } from './inputs.ts'

/** Parts as one leg sees them. Parts that the topology does not have count as nothing; the second of two is as the first where it was left empty. */
export function circuitOf(given: FilterGiven, topology: Topology): FilterCircuit {
  const shunt = { ...NO_SHUNT, esrOhm: given.esrOhm, eslH: given.eslH }
  const coil = {
    ...NO_SERIES,
    dcrOhm: given.dcrOhm,
    parallelOhm: given.inductorParallelOhm ?? NO_SERIES.parallelOhm,
    parallelF: acrossCoilF({
      inductanceH: given.inductanceH ?? 0,
      resonanceHz: given.inductorResonanceHz,
      parallelF: given.inductorParallelF,
    }),
  }
  const capacitanceF = given.capacitanceF ?? 0
  const { bead, damper, leftFrac } = filterElements(given)
  const inductanceH = leftFrac * (given.inductanceH ?? 0)
  const choke = chokeOf(given)
  const bond = bondShare(pairMode(given))
  return {
    topology,
    shunt1: { ...shunt, capacitanceF },
    shunt2: { ...shunt, capacitanceF: given.capacitance2F ?? capacitanceF },
    series1: bead ? beadPart(bead, 1) : { ...coil, inductanceH },
    series2: bead
      ? beadPart(bead, 1)
      : { ...coil, inductanceH: given.inductance2H === undefined ? inductanceH : leftFrac * given.inductance2H },
    bondOhm: bond * given.bondOhm,
    bondH: bond * given.bondH,
    ...(damper === undefined || !hasCapacitor(topology)
      ? {}
      : { damper: { capacitanceF: given.dampF ?? 0, esrOhm: given.dampOhm ?? 0, eslH: given.eslH } }),
    ...(choke === undefined ? {} : { choke: { part: chokePart(choke.choke, choke.current), side: choke.side } }),
  }
}
