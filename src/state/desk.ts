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
import type { Fact, Line, Trial } from '../calc/types.ts'
import { newLine } from '../store/line.ts'
import { changeLine, complaints, takeLineText, writeLineFact } from './complaints.ts'
import { hashOf, hashOfKept } from './router.ts'
import { openScratch, scratch, setTriageLine, takeScratchText, triage, writeScratchFact } from './session.ts'

/** `base`: the text of the fact that the field showed before; another one that stands there by then is kept beside it. */
export type Write = (fact: FactKey, next: Fact | undefined, base?: string) => void

export type Desk = {
  readonly line: ReadonlySignal<Line>
  readonly write: Write
  /** takes one of several texts of a fact, typed in different windows; those that were seen (`left`) go */
  readonly takeText: (fact: FactKey, text: string, left: readonly string[]) => void
  /** where a check of the same Line is */
  readonly addressOf: (check: CheckId) => string
  /** makes those addresses lead to this Line; called before one is followed */
  readonly enter: () => void
  /** changes the trials that were put away on a kept Line; absent where a Line is not kept */
  readonly keepTrials?: (change: (trials: readonly Trial[]) => readonly Trial[]) => void
}

/** A Line of a complaint, or undefined. */
export function keptLine(complaintId: string, lineId: string): Line | undefined {
  return complaints.value?.find(({ id }) => id === complaintId)?.lines.find(({ id }) => id === lineId)
}

/** The complaint the triage is kept in, if it is there and holds the Line of the triage. */
function keptIn(): string | undefined {
  const { complaintId, line } = triage.value
  return complaintId !== undefined && keptLine(complaintId, line.id) !== undefined ? complaintId : undefined
}

const triageLine = computed((): Line => {
  const { complaintId, line } = triage.value
  return (complaintId === undefined ? undefined : keptLine(complaintId, line.id)) ?? line
})

const isOfTriage = (line: Line): boolean => line.id === triage.value.line.id

/** After a change of the kept Line: the triage that goes on with it has it too. */
function followKept(complaintId: string, lineId: string): void {
  const line = keptLine(complaintId, lineId)
  if (line !== undefined && triage.peek().complaintId === complaintId && isOfTriage(line)) setTriageLine(line)
}

export const triageDesk: Desk = {
  line: triageLine,
  write: (fact, next, base) => {
    const complaintId = keptIn()
    if (complaintId === undefined) setTriageLine(withFact(triageLine.peek(), fact, next))
    else writeLineFact(complaintId, triageLine.peek().id, fact, next, base)
    if (complaintId !== undefined) followKept(complaintId, triageLine.peek().id)
    if (isOfTriage(scratch.peek())) writeScratchFact(fact, next)
  },
  takeText: (fact, text, left) => {
    const complaintId = keptIn()
    if (complaintId !== undefined) takeLineText(complaintId, triageLine.peek().id, fact, text, left)
    if (complaintId !== undefined) followKept(complaintId, triageLine.peek().id)
    else setTriageLine(withFact(triageLine.peek(), fact, { text, origin: { by: 'user' } }))
    if (isOfTriage(scratch.peek())) takeScratchText(fact, text, left)
  },
  addressOf: (check) => {
    const complaintId = keptIn()
    return complaintId === undefined ? hashOf('check', check) : hashOfKept(complaintId, triageLine.value.id, check)
  },
  enter: () => {
    if (keptIn() === undefined && !isOfTriage(scratch.peek())) openScratch(triageLine.peek())
  },
}

export const scratchDesk: Desk = {
  line: computed(() => (isOfTriage(scratch.value) ? triageLine.value : scratch.value)),
  write: (fact, next, base) => {
    if (isOfTriage(scratch.peek())) triageDesk.write(fact, next, base)
    else writeScratchFact(fact, next, base)
  },
  takeText: (fact, text, left) => {
    if (isOfTriage(scratch.peek())) triageDesk.takeText(fact, text, left)
    else takeScratchText(fact, text, left)
  },
  addressOf: (check) => hashOf('check', check),
  enter: () => undefined,
}

export function keptDesk(complaintId: string, lineId: string): Desk {
  // A line deleted while its check is open stays on the screen until that is left.
  let last: Line = newLine()
  return {
    line: computed(() => {
      last = keptLine(complaintId, lineId) ?? last
      return last
    }),
    write: (fact, next, base) => {
      writeLineFact(complaintId, lineId, fact, next, base)
      followKept(complaintId, lineId)
    },
    takeText: (fact, text, left) => {
      takeLineText(complaintId, lineId, fact, text, left)
      followKept(complaintId, lineId)
    },
    addressOf: (check) => hashOfKept(complaintId, lineId, check),
    enter: () => undefined,
    keepTrials: (change) => {
      const { trials } = keptLine(complaintId, lineId) ?? last
      changeLine(complaintId, lineId, { trials: change(trials) })
      followKept(complaintId, lineId)
    },
  }
}
