/** Bead, damping and the inductance left at the line current, as the filter check takes them. */
import { lineKindById } from '../../../reference/line-kinds.ts'
import type { Topology } from '../../types.ts'
import { spreadOf } from '../dielectric.ts'
import { type Elements, elementsOf } from '../elements.ts'
import type { FilterGiven } from './inputs.ts'

export type FilterElements = Elements & {
  /** left of the inductance entered, both coils of a T alike */
  readonly leftFrac: number
}

export function filterElements(given: FilterGiven): FilterElements {
  const elements = elementsOf(given, {
    kind: lineKindById(given.lineKind ?? ''),
    spread: spreadOf(given),
    inductanceH: 1,
    loadW: undefined,
    needHz: given.frequencyHz ?? [],
    bandHz: 0,
  })
  return { ...elements, leftFrac: elements.inductanceH.least }
}

/** Whether the inductor of this topology is known well enough for a verdict. */
export const lacksOf = (given: FilterGiven, topology: Topology): Elements['lacks'] =>
  topology === 'C' ? [] : filterElements(given).lacks
