/** The parts a contact may take instead of the one proposed: values of its window, then of the other topologies. */

import { E6, E12 } from '../../reference/preferred-values.ts'
import { valuesInside } from '../bounds/preferred.ts'
import { type WindowRow, windowRow } from '../checks/window/row.ts'
import { sideVerdict } from '../checks/window/signal-side.ts'
import { hasCapacitor, hasInductor, TOPOLOGIES } from '../network/circuit.ts'
import type { OpenAnswer } from './contact-line.ts'
import type { ContactPart } from './contact-row.ts'

/** Values looked at in one window, nearest to its proposal first. */
const MOST_VALUES = 10

/**
 * Worked out one by one, since most are never asked for: the own topology first, then the others, simplest first; those
 * with an inductor only where one was entered.
 * `undefined` stands for a row that took its time.
 */
export function* otherParts(open: OpenAnswer): Generator<ContactPart | undefined> {
  yield* valuesOf(open, open.row)
  if (open.wasAsked) return
  for (const topology of TOPOLOGIES) {
    if (topology === open.row.topology || (hasInductor(topology) && !open.hasCoil)) continue
    const row = open.rows.find((one) => one.topology === topology) ?? windowRow(topology, open.setup)
    yield undefined
    if (row.verdict !== 'fails') yield* valuesOf(open, row)
  }
}

/** Standard values of one row that do the signal no harm. */
export function* valuesOf({ setup }: OpenAnswer, row: WindowRow): Generator<ContactPart> {
  const { topology, least, upper, proposal } = row
  const coil = hasInductor(topology) ? { inductanceH: setup.enteredH } : {}
  if (!hasCapacitor(topology)) {
    if (row.verdict !== 'fails') yield { topology, ...coil }
    return
  }
  const targetF = proposal?.valueF ?? least?.markedF
  if (targetF === undefined || least === undefined || !(targetF > 0)) return
  const leastF = Math.max(least.markedF, 1e-12)
  const mostF = upper?.markedF ?? Number.POSITIVE_INFINITY
  const found = [
    ...new Set([...valuesInside(E6, targetF, leastF, mostF), ...valuesInside(E12, targetF, leastF, mostF)]),
  ]
  for (const valueF of found.slice(0, MOST_VALUES))
    if (sideVerdict(setup, topology, valueF) !== 'fails') yield { topology, valueF, ...coil }
}
