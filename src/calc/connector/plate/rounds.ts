/**
 * Every contact starts with the part it would have alone; all of them then meet in one bond. A part that loses its need
 * there takes another value of its window, which changes the sums for the others: again, until nothing changes, five
 * rounds at most.
 */
import type { Need } from '../../bounds/surroundings.ts'
import { hasInductor } from '../../network/circuit.ts'
import type { Progress } from '../../types.ts'
import type { Complex } from '../complex.ts'
import type { ContactPart } from '../contact-row.ts'
import { closerTo } from './box.ts'
import { lookAt, lookCloser, type Member } from './member.ts'
import { addReach, emptyReach, type Reach } from './reach.ts'
import { boundTogether, metTogether } from './together.ts'

export const MOST_ROUNDS = 5

/** How closely the points of a box stand for the box, dB; a need met to within this is not called met. */
const GUARD_DB = 0.05
/**
 * The same beside a sharp resonance, where the points of a part with an inductor were found up to 0.30 dB above a point
 * of its box (7,195 contacts on random plates): a yes needs more room there.
 */
const COIL_GUARD_DB = 0.5
const guardOf = ({ plated }: Member): number =>
  plated.placed.some(({ topology }) => topology !== undefined && hasInductor(topology)) ? COIL_GUARD_DB : GUARD_DB
/** A loss short by no more than this is not short: that of the box of one part. */
const SHORT_DB = 0.005

/** The bond of the plate: Rb + jωLb. Ω and H, ≥ 0. */
export type Bond = { readonly ohm: number; readonly henries: number }

export type Seat = {
  readonly member: Member
  readonly part: ContactPart
  /** other parts it may take, best first; empty where the user chose; undefined where looking for one took its time */
  readonly others: () => Iterable<{ readonly part: ContactPart; readonly member: Member } | undefined>
}

export type Together = {
  readonly need: Need
  /** no point of all boxes loses less */
  readonly leastDb: number
  readonly aloneDb: number
  /** `met`: proved; `short`: a point was found that fails; `open`: neither */
  readonly is: 'met' | 'short' | 'open'
}

export type RoundsOutcome = {
  readonly rounds: number
  readonly isStable: boolean
  /** by seat: the part at the end and its worst need, absent where none is asked of it; `isMoving`: it would still change */
  readonly seats: readonly {
    readonly part: ContactPart
    readonly member: Member
    readonly together?: Together
    readonly isMoving: boolean
  }[]
}

type Sitting = { part: ContactPart; member: Member; together: Together | undefined }

export function* bondRounds(seats: readonly Seat[], bond: Bond): Generator<Progress, RoundsOutcome> {
  const sitting: Sitting[] = seats.map(({ part, member }) => ({ part, member, together: undefined }))
  for (let round = 1; ; round++) {
    const sums = yield* sumsOf(sitting, round)
    const next: (Sitting | undefined)[] = []
    for (const [i, seat] of seats.entries()) {
      const now = sitting[i] as Sitting
      now.together = judged(now.member, { sums, sitting, i, bond })
      const isMet = now.together === undefined || now.together.is === 'met'
      const progress = { doneFrac: (round - 1 + i / seats.length) / MOST_ROUNDS }
      yield progress
      if (isMet) {
        next.push(undefined)
        continue
      }
      const looking = better(seat, now, { sums, sitting, i, bond })
      let step = looking.next()
      while (!step.done) {
        yield progress
        step = looking.next()
      }
      next.push(step.value)
    }
    const isStable = next.every((one) => one === undefined)
    if (isStable || round === MOST_ROUNDS)
      return { rounds: round, isStable, seats: sitting.map((one, i) => seatOf(one, next[i] !== undefined)) }
    next.forEach((one, i) => {
      if (one !== undefined) sitting[i] = one
    })
  }
}

const seatOf = ({ part, member, together }: Sitting, isMoving: boolean) => ({
  part,
  member,
  isMoving,
  ...(together === undefined ? {} : { together }),
})

type Sums = ReadonlyMap<number, Reach>

/** The reach of all contacts together at every frequency that is asked about. */
function* sumsOf(sitting: readonly Sitting[], round: number): Generator<Progress, Sums> {
  const sums = new Map<number, Reach>()
  for (const { member } of sitting)
    for (const { hz } of member.needs) {
      if (sums.has(hz)) continue
      const sum = emptyReach()
      for (const [j, other] of sitting.entries()) {
        addReach(sum, lookAt(other.member, hz).reach)
        if (j % 8 === 7) yield { doneFrac: (round - 1) / MOST_ROUNDS }
      }
      sums.set(hz, sum)
      yield { doneFrac: (round - 1) / MOST_ROUNDS }
    }
  return sums
}

/** Its worst need with the others as they sit; undefined where none is asked of it. */
function judged(member: Member, around: Around): Together | undefined {
  let worst: Together | undefined
  for (const need of member.needs) {
    const one = judgedAt(member, need, around)
    if (worst === undefined || one.leastDb - one.need.db < worst.leastDb - worst.need.db) worst = one
  }
  return worst
}

type Around = { readonly sums: Sums; readonly sitting: readonly Sitting[]; readonly i: number; readonly bond: Bond }

function judgedAt(member: Member, need: Need, around: Around): Together {
  const { sitting, i, bond } = around
  const bondOhm = bondAt(bond, need.hz)
  const closer = (point: number) => closerTo(member.plated, need.hz, point)
  const bounded = boundTogether(lookCloser(member, need.hz), othersAt(need.hz, around), bondOhm, closer)
  const { leastDb, aloneDb } = bounded
  if (leastDb >= need.db + guardOf(member)) return { need, leastDb, aloneDb, is: 'met' }
  const rest = sitting.flatMap((other, j) => (j === i ? [] : [lookAt(other.member, need.hz).points]))
  const occursDb = metTogether(bounded, rest, bondOhm)
  return { need, leastDb, aloneDb, is: occursDb < need.db - SHORT_DB ? 'short' : 'open' }
}

const bondAt = ({ ohm, henries }: Bond, hz: number): Complex => [ohm, 2 * Math.PI * hz * henries]

/** The reach of everybody else. */
function othersAt(hz: number, { sums, sitting, i }: Around): Reach {
  const others = emptyReach()
  addReach(others, sums.get(hz) as Reach)
  addReach(others, lookAt((sitting[i] as Sitting).member, hz).reach, -1)
  return others
}

/** A first look at a part, on the few points the others see of it: dB over its worst need. */
function glance(member: Member, around: Around): number {
  return Math.min(
    ...member.needs.map(({ hz, db }) => {
      const { points } = lookAt(member, hz)
      return boundTogether(points, othersAt(hz, around), bondAt(around.bond, hz)).leastDb - db
    }),
  )
}

/** Parts whose first look promises to meet the need and that are then looked at closely; more would only cost time. */
const MOST_CLOSE_LOOKS = 4

/** The first other part that meets its needs as the others sit, else the one that comes nearest, if nearer than now. */
function* better(seat: Seat, now: Sitting, around: Around): Generator<undefined, Sitting | undefined> {
  let best: Sitting | undefined
  let bestDb = marginOf(now.together)
  let looks = 0
  for (const other of seat.others()) {
    yield
    if (other === undefined || samePart(other.part, now.part)) continue
    const { part, member } = other
    const promisedDb = glance(member, around)
    if (promisedDb <= bestDb + GUARD_DB && promisedDb < GUARD_DB) continue
    const together = judged(member, around)
    const db = marginOf(together)
    if (together === undefined || together.is === 'met') return { part, member, together }
    if (db > bestDb + GUARD_DB) {
      best = { part, member, together }
      bestDb = db
    }
    looks += 1
    if (looks === MOST_CLOSE_LOOKS) break
  }
  return best
}

const marginOf = (together: Together | undefined): number =>
  together === undefined ? Number.POSITIVE_INFINITY : together.leastDb - together.need.db

const samePart = (a: ContactPart, b: ContactPart): boolean =>
  a.topology === b.topology && a.valueF === b.valueF && a.inductanceH === b.inductanceH
