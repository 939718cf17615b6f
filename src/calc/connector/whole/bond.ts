/** The bond of a connector, contact by contact: what each loses alone, with all others, and receives while quiet. */
import type { Need } from '../../bounds/surroundings.ts'
import { ROUNDING_DB } from '../../checks/window/row-need.ts'
import type { Express } from '../../line/fields.ts'
import { within } from '../../surge/progress.ts'
import type { Progress } from '../../types.ts'
import type { DecidedContact } from '../decided.ts'
import { bondAt, type TypedBond, typedBond } from '../plate/bond.ts'
import { boxesAt, type Cell } from '../plate/cells.ts'
import { judge } from '../plate/judge.ts'
import { FLOOR_DB } from '../plate/loss.ts'
import { matesOf } from '../plate/member.ts'
import { othersThan, type Plate, plateOf, RESTING } from '../plate/plate.ts'
import { boundTogether, keeps } from '../plate/together.ts'
import type { Connector } from '../types.ts'
import { firstLostIn } from './first-lost.ts'
import { type Marked, markedLosses } from './marked.ts'
import { bareOn, type OnPlate, onPlate } from './plate-contact.ts'

/** One contact at one of its noise frequencies. */
export type BondRow = {
  readonly id: string
  readonly hz: number
  readonly neededDb: number
  readonly aloneDb: number
  /** all driven alike: as marked, certain over all tolerances, and the least found where that is less than needed */
  readonly markedDb: number
  readonly certainDb: number
  readonly foundDb?: number
  /** while quiet, all others driven: at most over all tolerances, and with every part as marked */
  readonly receivedDb: number
  readonly receivedAsMarkedDb: number
  readonly isBare: boolean
  /** driven in differential mode: the plate's noise is common to both legs of the pair and added to neither signal */
  readonly isDifferential: boolean
}

export type Bond = TypedBond & {
  readonly rows: readonly BondRow[]
  /** filtered contacts whose noise, or what they do to it, is not known: what is tried for them proves nothing */
  readonly uncounted: readonly string[]
  /** frequencies of which nothing is said: the contacts whose bead is not known there */
  readonly unknownBeads: readonly { readonly hz: number; readonly ids: readonly string[] }[]
  /** contacts whose need is not certain even with no bond at all: no bond cures them */
  readonly shortAnyhow: readonly string[]
  /** largest inductance with which every other need is certain to be met; absent where all are, or nothing is needed */
  readonly mostBondH?: number
}

const MOST_BOND_H = 1e-6
const ROWS_PER_SLICE = 4

/** Every contact of a line: with a part on the plate, or bare and asked for attenuation. */
type Counted = { readonly id: string; readonly on?: OnPlate; readonly bareNeeds: readonly Need[] }

/** In slices. Every filtered contact is driven alike, in common mode; the schedule asks its needs of the same pieces. */
export function* bondOf(
  connector: Connector,
  decided: readonly DecidedContact[],
  express?: Express,
): Generator<Progress, Bond> {
  const bond = typedBond(connector.shared, express)
  const counted: Counted[] = []
  const uncounted: string[] = []
  for (const [i, contact] of decided.entries()) {
    if (i % ROWS_PER_SLICE === 0) yield { doneFrac: 0 }
    if (contact.type !== 'line') continue
    const { id } = contact
    const on = onPlate(contact, express)
    if (on !== undefined) counted.push({ id, on, bareNeeds: [] })
    else if (contact.part === undefined) counted.push({ id, bareNeeds: bareOn(contact, express)?.needs ?? [] })
    if (contact.part !== undefined && on?.own === undefined) uncounted.push(id)
  }
  const seats = counted.flatMap(({ on }) => (on === undefined ? [] : [on]))
  const contacts = seats.map(({ member }) => member.plated)
  const needs = counted.flatMap(({ on, bareNeeds }) => on?.needs ?? bareNeeds)
  const frequencies = [...new Set(needs.map(({ hz }) => hz))].sort((a, b) => a - b)
  const rows: BondRow[] = []
  const unknownBeads: Bond['unknownBeads'][number][] = []
  for (const [i, hz] of frequencies.entries()) {
    const from = i / (frequencies.length + 1)
    const plate = yield* within(plateOf(contacts, hz, bondAt(bond, hz)), from, from)
    const ids = plate.unknownBeads.map((at) => (seats[at] as OnPlate).id)
    if (ids.length > 0) unknownBeads.push({ hz, ids })
    else rows.push(...(yield* within(rowsAt(counted, seats, plate), from, from)))
  }
  // no bond can be said to do where nothing is known of one of the frequencies
  const would =
    unknownBeads.length === 0 && rows.some((row) => !isMet(row))
      ? yield* mostOf(seats, frequencies, bond.bondOhm)
      : undefined
  return {
    ...bond,
    rows,
    uncounted,
    unknownBeads,
    shortAnyhow: would?.shortAnyhow ?? [],
    ...(would?.mostBondH === undefined ? {} : { mostBondH: would.mostBondH }),
  }
}

/** A need that is certain to be met; a bare contact has nothing that could. */
export const isMet = ({ certainDb: certain, neededDb, isBare }: BondRow): boolean =>
  isBare || certain >= neededDb - ROUNDING_DB

function* rowsAt(
  counted: readonly Counted[],
  seats: readonly OnPlate[],
  plate: Plate,
): Generator<Progress, readonly BondRow[]> {
  const marked = markedLosses(
    seats.map(({ member }) => member.plated),
    plate,
  )
  const rows: BondRow[] = []
  for (const { id, on, bareNeeds } of counted) {
    for (const need of (on?.needs ?? bareNeeds).filter(({ hz }) => hz === plate.hz)) {
      rows.push(on === undefined ? bareRow(id, need) : rowOf(on, need, { seats, plate, marked }))
      yield { doneFrac: 0 }
    }
  }
  return rows
}

/** Nothing arrives through the plate, and nothing is kept from it. */
const bareRow = (id: string, { hz, db }: Need): BondRow => ({
  id,
  hz,
  neededDb: db,
  aloneDb: 0,
  markedDb: 0,
  certainDb: 0,
  receivedDb: FLOOR_DB,
  receivedAsMarkedDb: FLOOR_DB,
  isBare: true,
  isDifferential: false,
})

type Among = {
  readonly seats: readonly OnPlate[]
  readonly plate: Plate
  readonly marked: readonly Marked[]
}

function rowOf(on: OnPlate, need: Need, { seats, plate, marked }: Among): BondRow {
  const i = seats.indexOf(on)
  const { id, own, member, isDifferential } = on
  const { hz, db: neededDb } = need
  const boxes = boxesAt(member.plated, hz) ?? []
  const { togetherDb: markedDb, receivedDb: receivedAsMarkedDb } = marked[i] as Marked
  const receivedDb = -boundTogether(boxes, othersThan(plate, i), { isQuiet: true }).leastDb
  const common = { id, hz, neededDb, receivedDb, receivedAsMarkedDb, isBare: false, isDifferential }
  if (isDifferential) {
    const { leastDb } = boundTogether(boxesAt(own ?? member.plated, hz) ?? [], RESTING, { needDb: neededDb })
    return { ...common, aloneDb: leastDb, markedDb: leastDb, certainDb: leastDb }
  }
  const mates = matesOf(seats, i)
  const { leastDb: certainDb, aloneDb, foundDb } = judge(plate, { i, plated: member.plated, need, mates })
  return { ...common, aloneDb, markedDb, certainDb, ...(foundDb === undefined ? {} : { foundDb }) }
}

type Would = { readonly shortAnyhow: readonly string[]; readonly mostBondH?: number }

/**
 * The largest bond inductance with which everything is certain that is with no bond; 0 = none, `Infinity` = up to 1 µH;
 * absent where nothing is left.
 */
function* mostOf(
  seats: readonly OnPlate[],
  frequencies: readonly number[],
  bondOhm: number,
): Generator<Progress, Would> {
  const contacts = seats.map(({ member }) => member.plated)
  const shortAnyhow = new Set<string>()
  let most = MOST_BOND_H
  let isAny = false
  for (const hz of frequencies) {
    const needing = seats.flatMap(({ id, needs, isDifferential }, i) => {
      const need = isDifferential ? undefined : needs.find((one) => one.hz === hz)
      return need === undefined ? [] : [{ i, id, db: need.db }]
    })
    const isHeld = ({ i, db }: (typeof needing)[number], plate: Plate) =>
      keeps(plate.boxes[i] as readonly Cell[], othersThan(plate, i), db - ROUNDING_DB)
    const none = yield* plateOf(contacts, hz, [0, 0])
    const curable: typeof needing = []
    for (const one of needing) {
      if (isHeld(one, none)) curable.push(one)
      else shortAnyhow.add(one.id)
      yield { doneFrac: 0 }
    }
    if (curable.length === 0) continue
    isAny = true
    const holds = function* (henries: number): Generator<Progress, boolean> {
      const plate = yield* plateOf(contacts, hz, bondAt({ bondOhm, bondH: henries }, hz))
      for (const [k, one] of curable.entries()) {
        yield { doneFrac: 0 }
        if (isHeld(one, plate)) continue
        // the one that fails first is asked first next time
        curable.splice(k, 1)
        curable.unshift(one)
        return false
      }
      return true
    }
    most = yield* firstLostIn(holds, most)
    if (most === 0) break
  }
  const mostBondH = most < MOST_BOND_H ? most : Number.POSITIVE_INFINITY
  return { shortAnyhow: [...shortAnyhow], ...(isAny ? { mostBondH } : {}) }
}
