/**
 * Every contact starts with the part it would have alone; all of them then meet in one bond. A part that loses its need
 * there takes another value of its window, which changes the sums for the others: again, until nothing changes, five
 * rounds at most.
 */
import { within } from '../../surge/progress.ts'
import type { Progress } from '../../types.ts'
import type { ContactPart } from '../contact-row.ts'
import { type BondParts, bondAt } from './bond.ts'
import { glance, judge, type Together } from './judge.ts'
import { type Member, matesOf } from './member.ts'
import { othersThan, type Plate, plateOf } from './plate.ts'

export const MOST_ROUNDS = 5

/** A part that keeps no more than this beyond what sits there now is no better, dB. */
const BETTER_DB = 0.05

export type Seat = {
  readonly member: Member
  readonly part: ContactPart
  /** other parts it may take, best first; empty where the user chose; undefined where looking for one took its time */
  readonly others: () => Iterable<{ readonly part: ContactPart; readonly member: Member } | undefined>
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

export function* bondRounds(seats: readonly Seat[], bond: BondParts): Generator<Progress, RoundsOutcome> {
  const sitting: Sitting[] = seats.map(({ part, member }) => ({ part, member, together: undefined }))
  for (let round = 1; ; round++) {
    const plates = yield* platesOf(sitting, bond, round)
    const next: (Sitting | undefined)[] = []
    for (const [i, seat] of seats.entries()) {
      const now = sitting[i] as Sitting
      const around: Around = { plates, i, mates: matesOf(seats, i) }
      now.together = judged(now.member, around)
      const isMet = now.together === undefined || now.together.is === 'met'
      const progress = { doneFrac: (round - 1 + i / seats.length) / MOST_ROUNDS }
      yield progress
      if (isMet) {
        next.push(undefined)
        continue
      }
      const looking = better(seat, now, around)
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

type Around = {
  readonly plates: ReadonlyMap<number, Plate>
  readonly mates: readonly number[]
  readonly i: number
}

/** The plate with all contacts on it at every frequency that is asked about. */
function* platesOf(sitting: readonly Sitting[], bond: BondParts, round: number): Generator<Progress, Around['plates']> {
  const contacts = sitting.map(({ member }) => member.plated)
  const plates = new Map<number, Plate>()
  for (const { member } of sitting)
    for (const { hz } of member.needs) {
      if (plates.has(hz)) continue
      const doneFrac = (round - 1) / MOST_ROUNDS
      plates.set(hz, yield* within(plateOf(contacts, hz, bondAt(bond, hz)), doneFrac, doneFrac))
      yield { doneFrac }
    }
  return plates
}

/** Its worst need with the others as they sit, a no before what is not known; undefined where none is asked of it. */
function judged({ plated, needs }: Member, { plates, i, mates }: Around): Together | undefined {
  let worst: Together | undefined
  for (const need of needs) {
    const one = judge(plates.get(need.hz) as Plate, { i, plated, need, mates })
    if (worst === undefined || isWorse(one, worst)) worst = one
  }
  return worst
}

/** A need that is short is a no whatever another would be, were its bead known. */
const isWorse = (one: Together, other: Together): boolean =>
  (one.is === 'short') === (other.is === 'short') ? marginOf(one) < marginOf(other) : one.is === 'short'

/** A first look at a part: dB over its worst need, on the corners of its box. */
const promised = ({ plated, needs }: Member, { plates, i }: Around): number =>
  Math.min(...needs.map((need) => glance(plated, need, othersThan(plates.get(need.hz) as Plate, i))))

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
    const promisedDb = promised(member, around)
    if (promisedDb < 0 && promisedDb <= bestDb + BETTER_DB) continue
    const together = judged(member, around)
    const db = marginOf(together)
    if (together === undefined || together.is === 'met') return { part, member, together }
    if (db > bestDb + BETTER_DB) {
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
