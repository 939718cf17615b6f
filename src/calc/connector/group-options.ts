/** What each contact could carry instead, for grouping: its window in every topology it may have, or what the user chose. */

import { E12 } from '../../reference/preferred-values.ts'
import { valuesInside } from '../bounds/preferred.ts'
import { type WindowRow, windowRow } from '../checks/window/row.ts'
import { hasCapacitor, hasInductor, TOPOLOGIES } from '../network/circuit.ts'
import type { Topology } from '../types.ts'
import type { OpenAnswer } from './contact-line.ts'
import type { Asked } from './contact-row.ts'
import type { ContactOption } from './grouping.ts'
import type { DielectricClass, PlaneChoice } from './planes.ts'

/** Values that are looked at, F: every E12 value of these decades. E6 is among them. */
const FROM_F = 1e-12
const TO_F = 100e-6

/** The E12 values of every decade a contact part has, ascending, and those that were chosen. */
export function groupValues(choices: readonly PlaneChoice[]): readonly number[] {
  const own = choices.flatMap(({ options }) =>
    options.flatMap(({ leastF, only }) => (leastF === 0 ? (only ?? []).map(([valueF]) => valueF) : [])),
  )
  return [...new Set([...valuesInside(E12, FROM_F, FROM_F, TO_F), ...own])].sort((a, b) => a - b)
}

export type Grouped = PlaneChoice & {
  readonly open: OpenAnswer
  /** the part it has by itself */
  readonly topology: Topology
  readonly valueF: number
}

/** Contacts that carry a capacitor, with all they could carry; steps, since most rows were never worked out. */
export function* groupedOf(asked: readonly Asked[]): Generator<undefined, readonly Grouped[]> {
  const found: Grouped[] = []
  for (const { row, open, judged } of asked) {
    const { part } = row.decided
    const answer = judged ?? open
    if (part === undefined || answer === undefined || part.capacitanceF <= 0) continue
    const isChosen = row.choice?.valueF !== undefined
    // what the shared bond asked for stays, as long as it does what it was asked for
    const isMoved = row.aloneF !== undefined && row.together?.is === 'met'
    const fixed = isChosen || isMoved ? part.capacitanceF : undefined
    const options: readonly ContactOption[] =
      fixed === undefined
        ? yield* everyOption(answer)
        : [{ topology: part.topology, leastF: 0, mostF: Number.POSITIVE_INFINITY, only: [[fixed, fixed]] }]
    yield
    found.push({
      id: row.contact.id,
      dielectric: classOf(answer),
      options,
      open: answer,
      topology: part.topology,
      valueF: part.capacitanceF,
    })
  }
  return found
}

/** Class 1 where its window was worked out with it; everything else is class 2. */
export const classOf = ({ given: { dielectric } }: OpenAnswer): DielectricClass =>
  dielectric === 'c0g' ? 'class-1' : 'class-2'

function* everyOption(answer: OpenAnswer): Generator<undefined, readonly ContactOption[]> {
  const { row: own, rows, setup, wasAsked, hasCoil } = answer
  const options: ContactOption[] = []
  for (const topology of TOPOLOGIES) {
    if (!hasCapacitor(topology) || (wasAsked && topology !== own.topology)) continue
    if (topology !== own.topology && hasInductor(topology) && !hasCoil) continue
    const known = topology === own.topology ? own : rows.find((row) => row.topology === topology)
    const row = known ?? windowRow(topology, setup)
    if (known === undefined) yield
    options.push(...optionOf(row))
  }
  return options
}

/**
 * A row that is no "no" and has a least. Where nobody knows what its signal stands, nothing above what it would have by
 * itself is offered for the sake of the others.
 */
function optionOf({ topology, verdict, least, upper, need, proposal }: WindowRow): readonly ContactOption[] {
  if (verdict === 'fails' || need.is !== 'found' || least === undefined || !(least.markedF > 0)) return []
  const leastF = least.markedF
  if (upper !== undefined) return [{ topology, leastF, mostF: upper.markedF }]
  const topF = proposal?.valueF ?? leastF
  return [{ topology, leastF, mostF: Number.POSITIVE_INFINITY, only: [[leastF, topF]] }]
}
