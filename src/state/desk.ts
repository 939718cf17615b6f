/**
 * What a check works on: one Line, with a way to write a fact of it and the addresses of the other checks on it.
 *
 * `scratchDesk`             the Line under way of the quick checks
 * `keptDesk(id, lineId)`    a Line of a complaint: every step is saved there
 * `triageDesk`              the Line of the triage; in the complaint it is kept in, else it becomes the one under way
 *
 * The Line of a triage that was opened in the quick checks is one Line under both names: its id is the same.
 */
import { computed, type ReadonlySignal } from '@preact/signals'
import type { CheckId, FactKey } from '../calc/ids.ts'
import { withFact } from '../calc/line/with-fact.ts'
import type { Fact, Line } from '../calc/types.ts'
import { newLine } from '../store/line.ts'
import { complaints, writeLineFact } from './complaints.ts'
import { hashOf, hashOfKept } from './router.ts'
import { openScratch, scratch, setTriageLine, triage, writeScratchFact } from './session.ts'

export type Write = (fact: FactKey, next: Fact | undefined) => void

export type Desk = {
  readonly line: ReadonlySignal<Line>
  readonly write: Write
  /** where a check of the same Line is */
  readonly addressOf: (check: CheckId) => string
  /** makes those addresses lead to this Line; called before one is followed */
  readonly enter: () => void
}

const isOfTriage = (line: Line): boolean => line.id === triage.value.line.id

export const scratchDesk: Desk = {
  line: computed(() => (isOfTriage(scratch.value) ? triage.value.line : scratch.value)),
  write: (fact, next) => {
    writeScratchFact(fact, next)
    if (isOfTriage(scratch.peek())) setTriageLine(withFact(triage.peek().line, fact, next))
  },
  addressOf: (check) => hashOf('check', check),
  enter: () => undefined,
}

/** A Line of a complaint, or undefined. */
export function keptLine(complaintId: string, lineId: string): Line | undefined {
  return complaints.value?.find(({ id }) => id === complaintId)?.lines.find(({ id }) => id === lineId)
}

export function keptDesk(complaintId: string, lineId: string): Desk {
  // A line deleted while its check is open stays on the screen until that is left.
  let last: Line = newLine()
  const line = computed(() => {
    last = keptLine(complaintId, lineId) ?? last
    return last
  })
  return {
    line,
    write: (fact, next) => {
      writeLineFact(complaintId, lineId, fact, next)
      const { complaintId: attached, line: ofTriage } = triage.peek()
      if (attached === complaintId && ofTriage.id === lineId) setTriageLine(line.peek())
    },
    addressOf: (check) => hashOfKept(complaintId, lineId, check),
    enter: () => undefined,
  }
}

/** The complaint the triage is kept in, if it is there and holds the Line of the triage. */
function keptIn(): string | undefined {
  const { complaintId, line } = triage.value
  return complaintId !== undefined && keptLine(complaintId, line.id) !== undefined ? complaintId : undefined
}

export const triageDesk: Desk = {
  line: computed(() => triage.value.line),
  write: (fact, next) => {
    setTriageLine(withFact(triage.peek().line, fact, next))
    if (isOfTriage(scratch.peek())) writeScratchFact(fact, next)
  },
  addressOf: (check) => {
    const complaintId = keptIn()
    return complaintId === undefined ? hashOf('check', check) : hashOfKept(complaintId, triage.value.line.id, check)
  },
  enter: () => {
    if (keptIn() === undefined && !isOfTriage(scratch.peek())) openScratch(triage.peek().line)
  },
}
